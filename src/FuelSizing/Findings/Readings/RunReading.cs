using FuelSizing.Logs;

namespace FuelSizing.Findings;

/// <summary>A run with its plan and its model, to read findings off.</summary>
internal abstract class RunReading
{
    private protected RunReading(RunCheck check, RecordedRun run, RunModel model)
    {
        (Check, Run, Model) = (check, run, model);
        Columns = new(check.Plan, run, check.FuelKelvins);
    }

    /// <summary>The plan and its tolerances.</summary>
    protected RunCheck Check { get; }

    /// <summary>The run.</summary>
    protected RecordedRun Run { get; }

    /// <summary>Its model.</summary>
    protected RunModel Model { get; }

    /// <summary>Its columns.</summary>
    protected RunColumnsRead Columns { get; }

    /// <summary>Where a gathered point begins.</summary>
    protected RunPlace PlaceOf(int point) => Place(Model.Points.FirstRows[point]);

    /// <summary>Where a row stands.</summary>
    protected RunPlace Place(int row) => new(
        Run.RowAt(row).Line,
        Columns.At(Channel.Time, row),
        Columns.At(Channel.Speed, row),
        Columns.At(Channel.ManifoldAbsolute, row) - Run.Atmosphere.Pascals);
}
