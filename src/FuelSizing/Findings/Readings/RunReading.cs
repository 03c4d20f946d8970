using FuelSizing.Engines;
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

    /// <summary>Manifold gauge pressure over which a row counts as on boost, Pa; of an engine without compressor as near full load.</summary>
    protected double LoadedFrom => Check.Plan.Demand.Induction.Drive == CompressorDrive.None ? -OnBoost : OnBoost;

    /// <summary>Where such rows lie, in words.</summary>
    protected string Load => LoadedFrom > 0 ? "on boost" : "near full load";

    private const double OnBoost = 5e3;

    /// <summary>Rows at which the mixture matters most: the engine turns, burns, and is on boost.</summary>
    /// <returns>True; false where it is not so; null where the row does not hold manifold pressure to tell.</returns>
    protected bool? IsLoaded(int row)
    {
        // Without a pulse there is no fuel, and without fuel no mixture to be lean.
        if (!Columns.IsTurning(row) || Columns.At(Channel.InjectorPulse, row) == 0)
        {
            return false;
        }

        double boost = Columns.At(Channel.ManifoldAbsolute, row) - Run.Atmosphere.Pascals;
        return double.IsNaN(boost) ? null : boost > LoadedFrom;
    }

    /// <summary>Where a gathered point begins.</summary>
    protected RunPlace PlaceOf(int point) => Place(Model.Points.FirstRows[point]);

    /// <summary>Where a row stands.</summary>
    protected RunPlace Place(int row) => new(
        Run.RowAt(row).Line,
        Columns.At(Channel.Time, row),
        Columns.At(Channel.Speed, row),
        Columns.At(Channel.ManifoldAbsolute, row) - Run.Atmosphere.Pascals);
}
