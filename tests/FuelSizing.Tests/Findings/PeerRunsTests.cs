using FuelSizing.Logs;
using FuelSizing.Systems;
using UnitsNet;
using Xunit.Abstractions;

namespace FuelSizing.Tests.Findings;

/// <summary>
/// Runs that an independent program drives (<c>tests/peer/runs.py</c>, by <c>.ci/peer</c>) with nothing off and no scatter: the plan at each recorded row
/// is the car of that program.
/// </summary>
public class PeerRunsTests(ITestOutputHelper output)
{
    /// <summary>
    /// Both sides calculate the same definitions in double precision; what is left is where the rail sags, for each searches it until its own step is small.
    /// </summary>
    private const double Agreement = 1e-9;

    [Fact]
    public void ExactRuns_RowByRow_AreThePlansOwn()
    {
        if (PlantRuns.Folder is null)
        {
            return;
        }

        PlantRuns made = PlantRuns.In(PlantRuns.Folder);
        Assert.Equal("exact", made.Kind);
        Assert.True(made.Cases.Count >= 12);
        Dictionary<string, (double Deviation, string Where)> largest = [];
        (int rows, int sagging, int onBoost) = (0, 0, 0);
        foreach (PlantCase each in made.Cases)
        {
            RecordedRun run = each.Run();
            Assert.Empty(run.Problems);
            double stoichiometric = each.Car.Plan.Demand.Consumption.Fuel.StoichiometricAirFuelRatio;
            foreach (RunRow row in run.Rows)
            {
                // Starting and at rest the engine is below the first speed of the plan's tables.
                if (each.Car.Check.PlanAt(row, run.Atmosphere) is not { } plan)
                {
                    Assert.True(row.Speed < RotationalSpeed.FromRevolutionsPerMinute(900), $"{each.Name}, line {row.Line}: the plan says nothing");
                    continue;
                }

                rows++;
                sagging += plan.Mixture.RailState == FuelSizing.Circuits.RailState.Sagging ? 1 : 0;
                onBoost += plan.Point.Boost > Pressure.FromKilopascals(10) ? 1 : 0;
                double flow = row.FuelVolumeFlow!.Value.CubicMetersPerSecond;
                double density = each.Car.Plan.Demand.Consumption.Fuel.DensityAt(row.FuelTemperature!.Value).KilogramsPerCubicMeter;
                Compare("rail", plan.Mixture.RailGauge.Pascals, row.RailGauge!.Value.Pascals);
                Compare("injected flow", plan.Mixture.InjectedFlow!.Value.CubicMetersPerSecond, flow);
                Compare("pulse", plan.Mixture.CommandedPulse!.Value.Seconds, row.InjectorPulse!.Value.Seconds);
                Compare("lambda", plan.Mixture.Lambda!.Value, row.Lambda!.Value);
                Compare("air", plan.Demand.AirMassFlow.KilogramsPerSecond, row.Lambda!.Value * stoichiometric * density * flow);

                void Compare(string name, double ours, double theirs)
                {
                    double deviation = Math.Abs(ours - theirs) / Math.Abs(ours);
                    if (!(deviation <= largest.GetValueOrDefault(name).Deviation))
                    {
                        largest[name] = (deviation, $"{each.Name}, car {each.Car.Number} ({each.Car.ControlledBy}), line {row.Line}: {ours} here, {theirs} there");
                    }
                }
            }
        }

        output.WriteLine($"{made.Cases.Count} runs, {rows} rows, {onBoost} on boost, {sagging} with a sagging rail");
        foreach ((string name, (double deviation, string where)) in largest)
        {
            output.WriteLine(FormattableString.Invariant($"{name}: {deviation:0.0e0} ({where})"));
        }

        Assert.True(sagging > 20, $"{sagging} rows with a sagging rail");
        Assert.All(largest, each => Assert.True(each.Value.Deviation <= Agreement, $"{each.Key}: {each.Value.Deviation}, {each.Value.Where}"));
    }
}
