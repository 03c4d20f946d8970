using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Engines;

/// <summary>The boost line of a compressor that a belt drives from the crank, at a fixed ratio of speeds; belt slip is not modelled.</summary>
public abstract record BeltDrivenBoost : BoostLine
{
    private const double MinimumRatio = 0.2;
    internal const double MaximumRatio = 20;

    private static readonly RotationalSpeed Slowest = RotationalSpeed.FromRevolutionsPerMinute(1000);
    private static readonly RotationalSpeed Fastest = RotationalSpeed.FromRevolutionsPerMinute(400_000);

    private protected BeltDrivenBoost(double driveRatio) => DriveRatio = driveRatio;

    /// <summary>
    /// Turns of the compressor (of a centrifugal one, of its impeller) to one of the crank: crank pulley ÷ compressor pulley × the step-up of
    /// its own gears.
    /// </summary>
    public double DriveRatio { get; private protected init; }

    /// <summary>The highest speed that the compressor may turn at; none if not given.</summary>
    public RotationalSpeed? MaximumCompressorSpeed { get; private protected init; }

    /// <summary>The engine speed at which the compressor reaches its maximum speed; none if that was not given.</summary>
    public RotationalSpeed? SpeedAtMaximum =>
        MaximumCompressorSpeed is { } maximum ? RotationalSpeed.FromRevolutionsPerSecond(maximum.RevolutionsPerSecond / DriveRatio) : null;

    /// <summary>The compressor's speed.</summary>
    /// <param name="speed">Engine speed, 100 to 25,000 rev/min.</param>
    /// <returns>Engine speed × drive ratio.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is outside its range.</exception>
    public RotationalSpeed CompressorSpeedAt(RotationalSpeed speed) =>
        RotationalSpeed.FromRevolutionsPerSecond(EngineSpeed.Within(speed, nameof(speed)) * DriveRatio);

    /// <summary>The same compressor at another drive ratio.</summary>
    /// <param name="driveRatio">Turns of the compressor to one of the crank, 0.2 to 20.</param>
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is outside its range.</exception>
    public BeltDrivenBoost WithDriveRatio(double driveRatio) => this with { DriveRatio = WithinRatio(driveRatio, nameof(driveRatio)) };

    /// <summary>
    /// The same compressor with another pulley on the compressor, the driven one: a smaller one turns it faster. −12 % divides the drive ratio
    /// by 0.88.
    /// </summary>
    /// <param name="change">Change of the compressor pulley's effective diameter, −50 to 100 %.</param>
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The change is outside its range, or the drive ratio would be.</exception>
    public BeltDrivenBoost WithCompressorPulley(Ratio change) =>
        WithPulley(change, 1 / (1 + Within(change, "compressor", nameof(change))), nameof(change));

    /// <summary>
    /// The same compressor with another pulley on the crank, the driving one: a larger one turns it faster. +12 % multiplies the drive ratio by
    /// 1.12.
    /// </summary>
    /// <param name="change">Change of the crank pulley's effective diameter, −50 to 100 %.</param>
    /// <returns>The line.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The change is outside its range, or the drive ratio would be.</exception>
    public BeltDrivenBoost WithCrankPulley(Ratio change) =>
        WithPulley(change, 1 + Within(change, "crank", nameof(change)), nameof(change));

    /// <summary>The same line of a compressor that may not turn faster.</summary>
    /// <param name="maximum">The compressor's own speed, not the engine's, 1,000 to 400,000 rev/min.</param>
    /// <returns>The line, unchanged: what is past the speed is calculated as before.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is outside its range.</exception>
    public BeltDrivenBoost WithMaximumCompressorSpeed(RotationalSpeed maximum) => this with
    {
        MaximumCompressorSpeed = Guard.Between(
            maximum, Slowest, Fastest, "Give the highest speed that the compressor itself may turn at, of its impeller or rotors.", nameof(maximum)),
    };

    internal override void RequireCompressor(FuelDemandModel demand)
    {
        base.RequireCompressor(demand);
        if (demand.Induction.Drive != CompressorDrive.Belt)
        {
            throw new ArgumentException(
                $"demand is {demand.Engine.Name}, {demand.Induction}; it must be belt-driven to have the boost line of a compressor on a belt. Describe its induction with Induction.BeltDriven.",
                nameof(demand));
        }
    }

    private protected static double WithinRatio(double ratio, string name) => Guard.Number(
        ratio, MinimumRatio, MaximumRatio, "Give the turns of the compressor to one of the crank, the compressor's own gears included.", name);

    private static double Within(Ratio change, string pulley, string name) => Guard.Between(
        change,
        Ratio.FromPercent(-50),
        Ratio.FromPercent(100),
        $"Give how much larger the new {pulley} pulley's effective diameter is, negative for a smaller one.",
        name).DecimalFractions;

    private BeltDrivenBoost WithPulley(Ratio change, double factor, string name)
    {
        double ratio = DriveRatio * factor;
        return ratio is >= MinimumRatio and <= MaximumRatio
            ? this with { DriveRatio = ratio }
            : throw Guard.OutOfRange(
                name,
                Readable.Change(change),
                FormattableString.Invariant($"one that leaves the drive ratio between {MinimumRatio} and {MaximumRatio}"),
                FormattableString.Invariant($"It would be {ratio:0.###}."));
    }
}
