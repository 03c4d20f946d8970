using FuelSizing.Circuits;
using FuelSizing.Fuels;
using FuelSizing.Logs;
using FuelSizing.Systems;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Findings;

/// <summary>
/// Runs that an independent program drives (<c>tests/peer/runs.py</c>, by <c>.ci/peer</c>) without scatter: the plan at each recorded row
/// is the car of that program.
/// </summary>
public class PeerRunsTests(ITestOutputHelper output)
{
    /// <summary>
    /// Both sides calculate the same definitions in double precision; what is left is where the rail sags, for each searches it until its own step is small.
    /// </summary>
    private const double Agreement = 1e-9;

    private readonly Dictionary<string, (double Deviation, string Where)> _largest = [];

    [Fact]
    public void ExactRuns_RowByRow_AreThePlansOwn()
    {
        if (PlantRuns.Folder is { } folder)
        {
            Same(PlantRuns.In(folder), "exact", each => each.Car);
        }
    }

    /// <summary>The truth beside a run says of each part by how much it is off: so the faulty car is that of the library too.</summary>
    [Fact]
    public void RunsOfPartsThatAreOff_RowByRow_AreThoseOfACarWithSuchParts()
    {
        if (PlantRuns.Folder is { } folder)
        {
            Same(PlantRuns.In(Path.Combine(folder, "parts")), "parts", each => each.Car.With(each.Off));
        }
    }

    private void Same(PlantRuns made, string kind, Func<PlantCase, PlantCar> carOf)
    {
        Assert.Equal(kind, made.Kind);
        Assert.True(made.Cases.Count >= 12);
        (int rows, int sagging, int onBoost) = (0, 0, 0);
        foreach (PlantCase each in made.Cases)
        {
            PlantCar car = carOf(each);
            RecordedRun run = each.Run();
            Assert.Empty(run.Problems);
            foreach (RunRow row in run.Rows)
            {
                string where = $"{each.Name}, car {car.Number} ({car.ControlledBy}), line {row.Line}";

                // Starting and at rest the engine is below the first speed of the plan's tables.
                if (car.Check.PlanAt(row, run.Atmosphere) is not { } plan)
                {
                    Assert.True(row.Speed < Wren.Rpm(900), $"{where}: the plan says nothing");
                    continue;
                }

                rows++;
                sagging += plan.Mixture.RailState == RailState.Sagging ? 1 : 0;
                onBoost += plan.Point.Boost > Wren.Kpa(10) ? 1 : 0;
                Compare(plan, row, where);
            }
        }

        output.WriteLine($"{made.Cases.Count} runs, {rows} rows, {onBoost} on boost, {sagging} with a sagging rail");
        foreach ((string name, (double deviation, string where)) in _largest)
        {
            output.WriteLine(FormattableString.Invariant($"{name}: {deviation:0.0e0} ({where})"));
        }

        Assert.True(sagging > 20, $"{sagging} rows with a sagging rail");
        Assert.All(_largest, each => Assert.True(each.Value.Deviation <= Agreement, $"{each.Key}: {each.Value.Deviation}, {each.Value.Where}"));
    }

    private void Compare(OperatingResult plan, RunRow row, string where)
    {
        Fuel fuel = plan.System.Demand.Consumption.Fuel;
        double flow = row.FuelVolumeFlow!.Value.CubicMetersPerSecond;
        double mass = flow * fuel.DensityAt(row.FuelTemperature!.Value).KilogramsPerCubicMeter;
        Note("rail", plan.Mixture.RailGauge.Pascals, row.RailGauge!.Value.Pascals);
        Note("injected flow", plan.Mixture.InjectedFlow!.Value.CubicMetersPerSecond, flow);
        Note("pulse", plan.Mixture.CommandedPulse!.Value.Seconds, row.InjectorPulse!.Value.Seconds);
        Note("lambda", plan.Mixture.Lambda!.Value, row.Lambda!.Value);
        Note("air", plan.Demand.AirMassFlow.KilogramsPerSecond, row.Lambda!.Value * fuel.StoichiometricAirFuelRatio * mass);

        void Note(string name, double ours, double theirs)
        {
            double deviation = Math.Abs(ours - theirs) / Math.Abs(ours);
            if (!(deviation <= _largest.GetValueOrDefault(name).Deviation))
            {
                _largest[name] = (deviation, $"{where}: {ours} here, {theirs} there");
            }
        }
    }
}
