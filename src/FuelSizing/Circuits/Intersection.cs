namespace FuelSizing.Circuits;

/// <summary>Where pumps meet what a circuit asks of them.</summary>
/// <param name="Flow">Through the pumps, m³/s.</param>
/// <param name="Losses">On its way to the regulator.</param>
internal readonly record struct Intersection(double Flow, PathLosses Losses);
