using FuelSizing.Logs;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Findings;

/// <summary>Reads what the run lacks.</summary>
/// <param name="check">The plan and its tolerances.</param>
/// <param name="run">The run.</param>
/// <param name="model">Its model.</param>
internal sealed class NoteReading(RunCheck check, RecordedRun run, RunModel model) : RunReading(check, run, model)
{
    /// <summary>What could not be worked out, and what a careful reader should know.</summary>
    public IReadOnlyList<Statement> Notes(Diagnosis? diagnosis, bool isStopped)
    {
        List<Statement> notes = [];
        if (!Run.IsComplete)
        {
            notes.Add(Statement.Of(
                "run.reading-stopped", $"the reading of the run was stopped: these are findings of its first {Run.Count} rows alone"));
        }

        if (isStopped)
        {
            notes.Add(Statement.Of("run.search-stopped", $"the search for faults was stopped, so none is named"));
        }

        Missing(!Run.Has(Channel.ManifoldAbsolute), "manifold pressure", Statement.Of("run.without-manifold-pressure", $"hardly anything can be compared"));
        Missing(!Run.Has(Channel.RailGauge), "rail pressure", Statement.Of("run.without-rail-pressure", $"regulator, pump, filter and wiring cannot be judged"));
        Missing(
            !Run.Has(Channel.InjectorPulse) && !Run.Has(Channel.DutyCycle),
            "pulse or duty cycle",
            Statement.Of("run.without-pulse", $"fuel by the injectors, their size and their duty cycle cannot be told"));
        Missing(
            !Run.Has(Channel.FuelVolumeFlow) && !Run.Has(Channel.FuelMassFlow),
            "fuel flow",
            Statement.Of(
                "run.without-fuel-flow", $"wrong injectors and wrong volumetric efficiency look alike, and dead time cannot be told"));
        Missing(!Run.Has(Channel.Lambda), "lambda", Statement.Of("run.without-lambda", $"air and mixture cannot be judged"));
        Missing(
            !Run.Has(Channel.BatteryVoltage),
            "battery voltage",
            Statement.Of(
                "run.without-voltage", $"the planned {Check.SupplyVoltage} was taken; a low supply voltage may look like a weak pump"));
        Missing(!Run.Has(Channel.Power) && !Run.Has(Channel.Torque), "power or torque", Statement.Of("run.without-power", $"BSFC cannot be told"));
        Missing(
            !Run.Has(Channel.FuelTemperature),
            "fuel temperature",
            Statement.Of("run.without-fuel-temperature", $"{Check.FuelTemperature} was taken"));
        if (Run.Has(Channel.ManifoldAbsolute) && Model.Points.ManifoldAtRest is null)
        {
            notes.Add(Statement.Of(
                "run.not-at-rest", $"no rows with the engine at rest: the manifold sensor's zero could not be checked against the barometer"));
        }

        if (diagnosis is not null && Model.Has(Comparison.Rail))
        {
            double surplus = Enumerable.Range(0, Model.Inputs.Count)
                .Where(i => !double.IsNaN(Model.Inputs[i].Flow))
                .Select(i => Model.RailAt(i, diagnosis.Best.Off).Surplus)
                .DefaultIfEmpty(double.PositiveInfinity)
                .Min();
            if (surplus > 0)
            {
                notes.Add(Statement.Of(
                    "run.pump-never-the-limit",
                    $"the pump was never the limit in this run (it could have held {Pressure.FromPascals(surplus)} more at the tightest point, if it is as planned): its true state, the filter's and the wiring's cannot be told"));
            }
        }

        if (diagnosis is { Lack: > 1.5 })
        {
            notes.Add(Statement.Of(
                "run.scatter",
                $"the run scatters {Math.Sqrt(diagnosis.Lack):0.0} times as much as the stated accuracy allows; evidence was scaled down for it"));
        }

        return notes.AsReadOnly();

        void Missing(bool missing, string channel, Statement consequence)
        {
            if (missing)
            {
                notes.Add(Statement.Of("run.not-recorded", $"{channel} was not recorded: {consequence}"));
            }
        }
    }
}
