using System.Diagnostics.CodeAnalysis;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Circuits;

/// <summary>A second stream of fuel beside the engine's fuel system, from a boost on: methanol, or methanol and water, with its own pump, nozzles and tank.</summary>
/// <remarks>
/// <para>Pressure at the nozzles: held by the stream's own switch or regulator, or where its pump's curve meets the nozzles; where both are given it is the lower
/// of the two. The pump draws from a tank at ambient pressure; lines are not counted. From <see cref="Begin"/> the whole stream flows at once, or, with
/// <see cref="Full"/>, a share that rises in proportion with boost from none there to the whole. Delay, hysteresis and pulsing of the valve are not modelled.</para>
/// <para>The engine's own fuel system is judged without any help of it: as if it might stop at any moment, which it might. Only where
/// <see cref="WithMainFuelTakenBack"/> says that the controller injects less main fuel for it is the main fuel counted as that much less; the mixture is then
/// judged both ways, with the stream and with the stream stopped.</para>
/// </remarks>
/// <example>
/// <code>
/// SecondStream stream = SecondStream.Of(
///     "methanol",
///     StreamFluid.WithWaterByVolume(Fuel.Methanol, Ratio.FromPercent(50)),
///     SprayNozzles.Of(1, VolumeFlow.FromMillilitersPerMinute(390), Pressure.FromKilopascals(700), SprayNozzles.Water),
///     begin: Pressure.FromKilopascals(45),
///     heldPressure: Pressure.FromKilopascals(850));
/// Console.WriteLine(stream);   // methanol: methanol and water, 1 nozzle, 390 mL/min each at 700 kPa, into the manifold, at 850 kPa, from 0.45 bar on
/// </code>
/// </example>
[SuppressMessage("Naming", "CA1711", Justification = "a stream of fuel; no System.IO.Stream is near.")]
public sealed record SecondStream
{
    private static readonly Identity<SecondStream> _identity = new Identity<SecondStream>()
        .Value(stream => stream.Name)
        .Value(stream => stream.Fluid)
        .Value(stream => stream.Nozzles)
        .Value(stream => stream.Pump)
        .Number(stream => stream.HeldPressure?.Pascals)
        .Number(stream => stream.Begin.Pascals)
        .Number(stream => stream.Full?.Pascals)
        .Number(stream => stream.UsableVolume?.CubicMeters)
        .Number(stream => stream.RequiredDuration?.Seconds)
        .Number(stream => stream.EvaporatedShare.DecimalFractions)
        .Number(stream => stream.MainFuelTakenBack.DecimalFractions);

    private SecondStream(
        string name, StreamFluid fluid, SprayNozzles nozzles, Pressure begin, Pressure? heldPressure, PumpAssembly? pump, Pressure? full)
    {
        (Name, Fluid, Nozzles, Pump) = (name, fluid, nozzles, pump);
        (Begin, HeldPressure, Full) = (begin, heldPressure, full);
    }

    /// <summary>The name shown in results.</summary>
    public string Name { get; }

    /// <summary>What it sprays.</summary>
    public StreamFluid Fluid { get; }

    /// <summary>The nozzles.</summary>
    public SprayNozzles Nozzles { get; }

    /// <summary>Its own pump or pumps; none where only the pressure is known that its switch or regulator holds.</summary>
    public PumpAssembly? Pump { get; }

    /// <summary>Gauge pressure that its own switch or regulator holds at the nozzles; none where the pump runs free against them.</summary>
    public Pressure? HeldPressure { get; }

    /// <summary>Boost from which on it flows.</summary>
    public Pressure Begin { get; }

    /// <summary>Boost from which on all of it flows; none where all of it flows from <see cref="Begin"/> on.</summary>
    public Pressure? Full { get; }

    /// <summary>What can be drawn from its full tank; none if that is not given.</summary>
    public Volume? UsableVolume { get; private init; }

    /// <summary>For how long the tank has to last at full flow; none if that is not given.</summary>
    public Duration? RequiredDuration { get; private init; }

    /// <summary>The share of the liquid that evaporates in the charge by the charge's own heat, before the inlet valve closes; zero where none is stated.</summary>
    public Ratio EvaporatedShare { get; private init; }

    /// <summary>The share of the main fuel that the controller takes back while all of the stream flows; zero where it takes none back.</summary>
    public Ratio MainFuelTakenBack { get; private init; }

    /// <summary>Describes a second stream.</summary>
    /// <param name="name">Shown in results; 1 to 80 characters.</param>
    /// <param name="fluid">What it sprays.</param>
    /// <param name="nozzles">The nozzles.</param>
    /// <param name="begin">Boost from which on it flows, 0 to 400 kPa.</param>
    /// <param name="heldPressure">Gauge pressure that its own switch or regulator holds at the nozzles, 50 to 2,000 kPa; none if the pump runs free against them.</param>
    /// <param name="pump">Its own pump or pumps, not switched by boost themselves; needed where no pressure is held.</param>
    /// <param name="full">Boost from which on all of it flows, above <paramref name="begin"/>, up to 400 kPa; all at once if not given.</param>
    /// <returns>The stream.</returns>
    /// <exception cref="ArgumentException">There is neither a pressure nor a pump; or the pump is switched by boost.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static SecondStream Of(
        string name,
        StreamFluid fluid,
        SprayNozzles nozzles,
        Pressure begin,
        Pressure? heldPressure = null,
        PumpAssembly? pump = null,
        Pressure? full = null)
    {
        ArgumentNullException.ThrowIfNull(fluid);
        ArgumentNullException.ThrowIfNull(nozzles);
        if (heldPressure is null && pump is null)
        {
            throw new ArgumentException(
                "pump and heldPressure are both missing: nothing says at which pressure the nozzles spray. Give the pressure that is held, the pump, or both.", nameof(pump));
        }

        if (pump?.Switches.FirstOrDefault() is { } switched)
        {
            throw new ArgumentException(
                $"pump has {switched.Pump.Name}, which is switched by boost; the stream itself begins at a boost. Give the pump without its switch.", nameof(pump));
        }

        return new(
            Guard.Name(name, nameof(name)),
            fluid,
            nozzles,
            Guard.Between(begin, Pressure.Zero, ManifoldPressure.Maximum, "Give the boost, gauge, at which the stream is switched on.", nameof(begin)),
            heldPressure is { } held
                ? Guard.Between(
                    held, Pressure.FromKilopascals(50), Pressure.FromKilopascals(2000), "Give the gauge pressure at the nozzles that the pump's switch or regulator holds.", nameof(heldPressure))
                : null,
            pump,
            full is { } whole
                ? Guard.Above(whole, begin, ManifoldPressure.Maximum, "Give the boost at which all of the stream flows, or leave it out where all of it flows at once.", nameof(full))
                : null);
    }

    /// <summary>The same stream with the size of its tank, and for how long that has to last.</summary>
    /// <param name="usableVolume">What can be drawn from the full tank, 0.1 to 200 L.</param>
    /// <param name="requiredDuration">Time at full flow that it has to last, 1 s to 24 h; not judged if not given.</param>
    /// <returns>The stream.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public SecondStream WithTank(Volume usableVolume, Duration? requiredDuration = null) => this with
    {
        UsableVolume = Guard.Between(
            usableVolume, Volume.FromLiters(0.1), Volume.FromLiters(200), "Give what can be drawn before the pump takes in air.", nameof(usableVolume)),
        RequiredDuration = requiredDuration is { } time
            ? Guard.Between(time, Duration.FromSeconds(1), Duration.FromHours(24), "Give the time at full flow between two fillings.", nameof(requiredDuration))
            : null,
    };

    /// <summary>The same stream, a share of whose liquid evaporates in the charge: the engine draws more air, and needs more main fuel for it.</summary>
    /// <remarks>
    /// Counted where it raises the demand, never where it would help a verdict (<see cref="Engines.FuelDemandModel.WithEvaporation"/>): with the most that the
    /// stream can bring, and not for the mixture without it.
    /// </remarks>
    /// <param name="share">0 to 100 % of the liquid's mass.</param>
    /// <returns>The stream.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    /// <exception cref="ArgumentException">The liquid's heat of vaporisation is not known; or no pressure is held, so that no most is known.</exception>
    public SecondStream WithEvaporation(Ratio share)
    {
        Guard.Between(share, Ratio.Zero, Ratio.FromPercent(100), "Give the share of the liquid that evaporates in the charge before the inlet valve closes.", nameof(share));
        if (share > Ratio.Zero && Fluid.HeatOfVaporisation is null)
        {
            throw new ArgumentException(
                $"{Fluid.Fuel.Name} has no heat of vaporisation, which the evaporated share of {Readable.Of(share)} needs. Give it by Fuel.WithHeatOfVaporisation, or state no share.", nameof(share));
        }

        return share > Ratio.Zero && HeldPressure is null
            ? throw new ArgumentException(
                $"{Name} holds no pressure at its nozzles, so that the most that evaporates is not known beyond its pump's data. Give heldPressure, or state no share.", nameof(share))
            : this with { EvaporatedShare = share };
    }

    /// <summary>The same stream, for which the engine's controller takes main fuel back.</summary>
    /// <remarks>
    /// <para>A caution: should the stream stop (pump, fuse, nozzle, empty tank), the main fuel stays taken back and the engine runs lean at once, on boost. An engine
    /// must not depend on a second stream without a safeguard that takes the boost away when it stops.</para>
    /// <para>Where only a share of the stream flows, the same share of this is taken back.</para>
    /// </remarks>
    /// <param name="share">Of the main fuel that the controller would inject otherwise, 0 to 60 %, while all of the stream flows.</param>
    /// <returns>The stream.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    public SecondStream WithMainFuelTakenBack(Ratio share) => this with
    {
        MainFuelTakenBack = Guard.Between(
            share, Ratio.Zero, Ratio.FromPercent(60), "Give the share by which the controller injects less main fuel while the stream flows.", nameof(share)),
    };

    /// <summary>The share of the whole stream that flows at a boost.</summary>
    /// <param name="boost">Manifold gauge pressure, −95 to 400 kPa.</param>
    /// <returns>0 to 100 %.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The boost is outside its range.</exception>
    public Ratio ShareAt(Pressure boost) => Ratio.FromDecimalFractions(ShareAt(ManifoldPressure.Within(boost, nameof(boost)).Pascals));

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(SecondStream? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    /// <summary>Liquid, nozzles, pressure and begin.</summary>
    /// <returns>For instance <c>methanol: methanol and water, 1 nozzle, 390 mL/min each at 700 kPa, into the manifold, at 850 kPa, from 0.45 bar on</c>.</returns>
    public override string ToString() =>
        $"{Name}: {Fluid.Name}, {Nozzles}, {(HeldPressure is { } held ? $"at {Readable.Of(held)}" : $"fed by {Pump!.Name}")}, from {Readable.Boost(Begin)} on{(Full is { } full ? $", all of it from {Readable.Boost(full)}" : string.Empty)}";

    /// <summary>The same at a boost in Pa.</summary>
    internal double ShareAt(double boost) => boost < Begin.Pascals ? 0
        : Full is { } full ? Math.Min(1, StraightLine.Through<Real>(Begin.Pascals, 0, full.Pascals, 1, boost))
        : 1;

    /// <summary>True if main fuel is taken back for it.</summary>
    internal bool TakesBack => MainFuelTakenBack > Ratio.Zero;
}
