using FuelSizing.Checks;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Workings;

namespace FuelSizing.Systems;

/// <summary>One solved operating point: every intermediate, each margin, the limiting component.</summary>
/// <remarks>
/// Every number, margins and outcome included, is computed once, when the result is made. Words and the working are written
/// when they are asked for.
/// </remarks>
public sealed class OperatingResult : SolvedPoint, IReadable
{
    private readonly Margin[] _own;

    internal OperatingResult(FuelSystem system, OperatingPoint point, in PointDemand demand, in SolvedCircuit circuit)
        : this(system, point, demand, circuit, system.Parts.InjectionAt(demand, circuit))
    {
    }

    internal OperatingResult(
        FuelSystem system, OperatingPoint point, in PointDemand demand, in SolvedCircuit circuit, (Injection Actual, Injection Judged) injection)
        : this(system, system.Parts, point, demand, circuit, injection)
    {
    }

    private OperatingResult(
        FuelSystem system, SystemParts parts, OperatingPoint point, in PointDemand demand, in SolvedCircuit circuit, (Injection Actual, Injection Judged) injection)
        : base(point, parts, demand, circuit, injection)
    {
        System = system;
        CheckReading<Real>[] readings = PointJudge.Of(system.Applicable, Parts, PointReading.Of(this));
        _own = new Margin[readings.Length];
        for (int check = 0; check < readings.Length; check++)
        {
            _own[check] = new(system.Applicable[check], this, readings[check]);
        }

        Falling = parts.FallingAt(demand.Point.BoostPascals) is { } falling && falling.CircuitAt(demand) is var still
            ? new(system, falling, point, demand, still, falling.InjectionAt(demand, still))
            : null;
        Margin[] margins = Falling is null ? _own : [.. _own.Zip(Falling._own, Worse)];
        Margins = Array.AsReadOnly(margins);
        Limiting = new(margins.Min(Urgency.Order)!);
    }

    /// <summary>The system that was solved.</summary>
    public FuelSystem System { get; }

    /// <summary>How each check came out, in the order of the system's checks.</summary>
    public IReadOnlyList<Margin> Margins { get; }

    /// <summary>
    /// The same point as boost falls, where a switched pump still runs that does not yet run as boost rises, between its switch-off and switch-on
    /// boost; none elsewhere. Figures of this result are those of rising boost; <see cref="Margins"/> are the worse of both.
    /// </summary>
    public OperatingResult? Falling { get; }

    /// <summary>The limiting component here: a failing one before one that cannot be judged before the tightest.</summary>
    public Limit Limiting { get; }

    /// <summary>
    /// The worst outcome of all checks; where they hold, and something was not judged and not waived, that it holds as far as judged.
    /// </summary>
    public Outcome Outcome => System.Whole(Limiting.Margin.Outcome);

    /// <summary>What no check judged, waived or not.</summary>
    public IReadOnlyList<NotJudged> NotJudged => System.NotJudged;

    /// <summary>How the result came about, line by line; written when it is asked for.</summary>
    public Working Working => WorkingIn(TextStyle.Metric);

    /// <summary>The same with figures in a style beside their SI values.</summary>
    /// <param name="style">Units and culture.</param>
    /// <returns>The working.</returns>
    public Working WorkingIn(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return WorkingWriter.Of(this, Margins, style);
    }

    /// <summary>What a careful reader should know about these numbers.</summary>
    public IReadOnlyList<Statement> Notes => [.. ResultNotes.Of(this).Select(note => note.Text)];

    /// <inheritdoc/>
    public string In(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        return $"{Point.In(style)}: {Outcome switch { Outcome.Holds => "holds", Outcome.HoldsAsFarAsJudged => "holds as far as judged", Outcome.Fails => "fails", _ => "cannot be judged" }}; {Limiting.Margin.In(style)}";
    }

    /// <summary>This result, and that of falling boost where it is another.</summary>
    internal IReadOnlyList<OperatingResult> States => Falling is null ? [this] : [this, Falling];

    /// <summary>True if a check fails in this state of the pumps' switches, whatever the other.</summary>
    internal bool FailsBy(Part part) => Array.Exists(_own, margin => margin.Part == part && margin.Outcome == Outcome.Fails);

    private static Margin Worse(Margin rising, Margin falling) => Urgency.Order.Compare(falling, rising) < 0 ? falling : rising;

    /// <summary>Place, outcome and the limiting component.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);
}
