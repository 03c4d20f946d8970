namespace FuelSizing.Points;

/// <summary>One solved point in SI numbers, as the result keeps it.</summary>
/// <param name="Demand">What the engine asks for.</param>
/// <param name="Circuit">Pumps, lines and regulator.</param>
/// <param name="Actual">Injection at the pressure in the rail.</param>
/// <param name="Judged">Injection at the pressure at which injectors are judged: as set where the rail sags, else as it is.</param>
internal readonly record struct SolvedPoint(PointDemand Demand, SolvedCircuit Circuit, Injection Actual, Injection Judged);
