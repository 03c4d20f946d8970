using FuelSizing.Checks;
using FuelSizing.Engines;
using FuelSizing.Fuels;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Uncertainty;

/// <summary>A fuel system at one operating point or along a boost line, of which some inputs are not known exactly: how sure is the answer?</summary>
/// <remarks>
/// Each sample draws every input by its inverse cumulative distribution, rebuilds the system and solves it, so nothing is
/// linearised. Along a boost line a sample holds where it holds at every speed looked at, and each output is the worst of the line: the highest
/// duty cycle, fuel flow and rail pressure, the leanest lambda, the smallest margin. Inputs are independent, but for those that one experiment has measured together (<see cref="CorrelatedInputs"/>, <c>Calibration.Forecast</c>). Samples that the parts' data does not reach are counted by themselves.
/// </remarks>
/// <example>
/// <code>
/// UncertainSystem unsure = UncertainSystem.Of(
///     system,
///     point,
///     UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(96), Ratio.FromPercent(104))),
///     UncertainInput.SupplyVoltage(Distribution.Triangular(
///         ElectricPotential.FromVolts(12.5), ElectricPotential.FromVolts(13.5), ElectricPotential.FromVolts(14.2))));
/// MonteCarloResult result = unsure.MonteCarlo(Sampling.Of(10_000, seed: 1, threads: 2));
/// Console.WriteLine(result.All);
/// Console.WriteLine(unsure.Sobol(SystemOutput.DutyCycle, Sampling.Of(4_000)).MeasureFirst);
/// </code>
/// </example>
public sealed class UncertainSystem
{
    private readonly EthanolBlend? _blend;
    private readonly uint[][] _streams;
    private readonly Correlated? _correlated;

    private readonly JudgedPlaces _places;

    private UncertainSystem(FuelSystem nominal, JudgedPlaces places, UncertainInput[] inputs, EthanolBlend? blend, Correlated? correlated)
    {
        (Nominal, _places, Inputs, _blend, _correlated) = (nominal, places, Array.AsReadOnly(inputs), blend, correlated);
        _streams = Array.ConvertAll(inputs, input => StreamsOf(input, nominal.Injectors.Count));
        Streams = [.. _streams.SelectMany(streams => streams)];
        NominalResults = Array.AsReadOnly(Array.ConvertAll(places.Of(nominal.Demand, Perturbation.None), nominal.Solve));
        NominalResult = NominalResults.MinBy(result => result.Margins.Min(Urgency.Order)!, Urgency.Order)!;
    }

    /// <summary>The system as described.</summary>
    public FuelSystem Nominal { get; }

    /// <summary>Where it is judged; along a boost line, the place at which the nominal system's margin is tightest.</summary>
    public OperatingPoint Point => NominalResult.Point;

    /// <summary>The boost line along which it is judged; none at an operating point.</summary>
    public BoostLine? Line => _places.Line;

    /// <summary>Where it is judged, in words: at a point, or along a boost line.</summary>
    public Statement Where => _places.Text;

    /// <summary>The inputs that are not known exactly.</summary>
    public IReadOnlyList<UncertainInput> Inputs { get; }

    /// <summary>The nominal system solved wherever it is judged, speeds rising.</summary>
    public IReadOnlyList<OperatingResult> NominalResults { get; }

    /// <summary>The nominal system solved at <see cref="Point"/>.</summary>
    public OperatingResult NominalResult { get; }

    /// <summary>The random stream of each coordinate of the unit cube: as many for an input as it has numbers.</summary>
    internal uint[] Streams { get; }

    /// <summary>Describes what is not known.</summary>
    /// <param name="nominal">The system as described.</param>
    /// <param name="point">Where it is judged, within the engine's tables.</param>
    /// <param name="inputs">One or more, each kind once.</param>
    /// <returns>The uncertain system.</returns>
    /// <exception cref="ArgumentException">
    /// There is no input or one is there twice, or an input does not belong to the system: ethanol content with another
    /// fuel, drivetrain loss with power measured at the crank.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The point lies outside the engine's tables, or an input takes the system out of its range: BSFC to a brake efficiency
    /// over 50 %, the regulator to under 10 kPa, ambient pressure and boost together to a manifold under 10 kPa absolute.
    /// </exception>
    public static UncertainSystem Of(FuelSystem nominal, OperatingPoint point, params UncertainInput[] inputs) =>
        Joined(nominal, point, null, inputs);

    /// <summary>Describes what is not known, two inputs of it measured together.</summary>
    /// <param name="nominal">The system as described.</param>
    /// <param name="point">Where it is judged, within the engine's tables.</param>
    /// <param name="together">Two inputs that one experiment has measured, such as an injector's flow and dead time.</param>
    /// <param name="inputs">The others, each kind once; none where those two are all.</param>
    /// <returns>The uncertain system.</returns>
    /// <exception cref="ArgumentException">An input is there twice, or does not belong to the system.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The point lies outside the engine's tables, or an input takes the system out of its range.</exception>
    public static UncertainSystem Of(FuelSystem nominal, OperatingPoint point, CorrelatedInputs together, params UncertainInput[] inputs)
    {
        ArgumentNullException.ThrowIfNull(together);
        ArgumentNullException.ThrowIfNull(inputs);
        return Joined(nominal, point, together.Factor, [together.One, together.Other, .. inputs]);
    }

    /// <summary>Describes what is not known of a system that is judged along its boost line.</summary>
    /// <param name="nominal">The system as described.</param>
    /// <param name="line">The boost at each speed; belt-driven, it follows the drawn air and engine.</param>
    /// <param name="slowest">Lowest speed, that the line and the engine's tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <param name="inputs">One or more, each kind once.</param>
    /// <returns>The uncertain system.</returns>
    /// <exception cref="ArgumentException">There is no input or one is there twice, an input does not belong to the system, or the engine cannot have such a line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A speed is outside its range or not under the next, or an input takes the system out of its range.
    /// </exception>
    /// <remarks>
    /// Looked at are 25 speeds evenly spaced and every speed at which the nominal system has a kink. A place between them at which a sample
    /// fails by a hair may be missed; <see cref="LineSweep"/> is the one that looks for it, at the nominal system.
    /// </remarks>
    /// <example>
    /// <code>
    /// UncertainSystem unsure = UncertainSystem.Along(
    ///     system,
    ///     HeldBoost.Of(Pressure.FromBars(0.6), RotationalSpeed.FromRevolutionsPerMinute(3000), RotationalSpeed.FromRevolutionsPerMinute(6800)),
    ///     RotationalSpeed.FromRevolutionsPerMinute(3000),
    ///     RotationalSpeed.FromRevolutionsPerMinute(6800),
    ///     Conditions.Default,
    ///     UncertainInput.InjectorFlowFactor(Distribution.Uniform(Ratio.FromPercent(96), Ratio.FromPercent(104))));
    /// Console.WriteLine(unsure.MonteCarlo(Sampling.Of(1_000, seed: 1)).All);
    /// </code>
    /// </example>
    public static UncertainSystem Along(
        FuelSystem nominal,
        BoostLine line,
        RotationalSpeed slowest,
        RotationalSpeed fastest,
        Conditions? conditions,
        params UncertainInput[] inputs) => Along(nominal, line, slowest, fastest, conditions, (Correlated?)null, inputs);

    /// <summary>Describes what is not known of a system that is judged along its boost line, two inputs of it measured together.</summary>
    /// <param name="nominal">The system as described.</param>
    /// <param name="line">The boost at each speed; belt-driven, it follows the drawn air and engine.</param>
    /// <param name="slowest">Lowest speed, that the line and the engine's tables cover.</param>
    /// <param name="fastest">Highest speed.</param>
    /// <param name="conditions">Air, supply voltage, fuel temperature; <see cref="Conditions.Default"/> if not given.</param>
    /// <param name="together">Two inputs that one experiment has measured, such as an injector's flow and dead time.</param>
    /// <param name="inputs">The others, each kind once; none where those two are all.</param>
    /// <returns>The uncertain system.</returns>
    /// <exception cref="ArgumentException">An input is there twice or does not belong to the system, or the engine cannot have such a line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A speed is outside its range or not under the next, or an input takes the system out of its range.</exception>
    public static UncertainSystem Along(
        FuelSystem nominal,
        BoostLine line,
        RotationalSpeed slowest,
        RotationalSpeed fastest,
        Conditions? conditions,
        CorrelatedInputs together,
        params UncertainInput[] inputs)
    {
        ArgumentNullException.ThrowIfNull(together);
        ArgumentNullException.ThrowIfNull(inputs);
        return Along(nominal, line, slowest, fastest, conditions, together.Factor, [together.One, together.Other, .. inputs]);
    }

    private static UncertainSystem Along(
        FuelSystem nominal, BoostLine line, RotationalSpeed slowest, RotationalSpeed fastest, Conditions? conditions, Correlated? correlated, UncertainInput[] inputs)
    {
        ArgumentNullException.ThrowIfNull(nominal);
        ArgumentNullException.ThrowIfNull(line);
        LineSweep.RequireRising(slowest, fastest);
        line.RequireCompressor(nominal.Demand);
        FuelSystem judged = nominal.JudgedBy(new CompressorSpeedCheck(line));
        return Of(judged, JudgedPlaces.Along(judged, line, slowest, fastest, conditions ?? Conditions.Default), correlated, inputs);
    }

    /// <summary>The same, the first inputs correlated.</summary>
    internal static UncertainSystem Joined(FuelSystem nominal, OperatingPoint point, Correlated? correlated, params UncertainInput[] inputs)
    {
        ArgumentNullException.ThrowIfNull(nominal);
        ArgumentNullException.ThrowIfNull(point);
        return Of(nominal, JudgedPlaces.At(point), correlated, inputs);
    }

    private static UncertainSystem Of(FuelSystem nominal, JudgedPlaces places, Correlated? correlated, UncertainInput[] inputs)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        nominal.RequireOneSet(nameof(nominal), "an uncertain system");
        if (inputs.Length == 0)
        {
            throw new ArgumentException("inputs was empty; give at least one input that is not known exactly.", nameof(inputs));
        }

        EthanolBlend? blend = null;
        HashSet<(UncertainQuantity, string)> seen = [];
        foreach (UncertainInput input in inputs)
        {
            ArgumentNullException.ThrowIfNull(input, nameof(inputs));
            if (!seen.Add((input.Quantity, input.Quantity == UncertainQuantity.Own ? input.Name : string.Empty)))
            {
                throw new ArgumentException($"inputs has {input.Name} twice; give each input once.", nameof(inputs));
            }

            Fits(input, nominal, places, nameof(inputs));
            blend = input.Petrol is { } petrol
                ? new EthanolBlend(nominal.Demand.Consumption.Fuel, petrol, nameof(inputs))
                : blend;
        }

        Reaches(nominal, places, inputs);
        return new(nominal, places, [.. inputs], blend, correlated);
    }

    /// <summary>Solves the system for many draws of all inputs.</summary>
    /// <param name="sampling">How many samples, seed, threads.</param>
    /// <param name="progress">Told the share that is done, from whichever thread did it.</param>
    /// <param name="cancellation">Stops the run; what was done until then is kept.</param>
    /// <returns>Probabilities and spreads, of the first so many samples where the run was stopped.</returns>
    /// <exception cref="OperationCanceledException">The run was stopped before a sample was done.</exception>
    public MonteCarloResult MonteCarlo(
        Sampling sampling, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(sampling);
        return MonteCarloRun.Of(this, sampling, progress, cancellation);
    }

    /// <summary>
    /// One at a time: each input at a low and a high percentile with all others as in the nominal system, widest first.
    /// </summary>
    /// <param name="output">What to look at.</param>
    /// <param name="tail">Probability left out at either end, 0.1 to 49 %; 5 % if not given.</param>
    /// <param name="progress">Told the share that is done.</param>
    /// <param name="cancellation">Stops the work; the bars done until then are kept.</param>
    /// <returns>One bar for each input; for the first so many inputs where the work was stopped.</returns>
    /// <exception cref="ArgumentException">The system does not have the output's part.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The tail is outside its range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped before an input was done.</exception>
    /// <remarks>
    /// Of the matching, one injector is taken to its percentiles and the others stay alike. Effects that two inputs have
    /// only together do not show; <see cref="Sobol"/> shows them.
    /// </remarks>
    public TornadoResult Tornado(
        SystemOutput output, Ratio? tail = null, IProgress<Ratio>? progress = null, CancellationToken cancellation = default)
    {
        double low = Guard.Between(
            tail ?? Ratio.FromPercent(5),
            Ratio.FromPercent(0.1),
            Ratio.FromPercent(49),
            "Give the probability left out at either end; 5 % is typical.",
            nameof(tail)).DecimalFractions;
        Belongs(output);
        return TornadoResult.Of(this, output, low, progress, cancellation);
    }

    /// <summary>Variance-based sensitivity: what share of the output's variance comes from which input.</summary>
    /// <param name="output">What to look at.</param>
    /// <param name="sampling">Samples of each set; the system is solved (inputs + 2) times as often.</param>
    /// <param name="progress">Told the share that is done, from whichever thread did it.</param>
    /// <param name="cancellation">Stops the run; what was done until then is kept.</param>
    /// <returns>First-order and total index of each input, the largest total first.</returns>
    /// <exception cref="ArgumentException">The system does not have the output's part.</exception>
    /// <exception cref="InvalidOperationException">Inputs are correlated, as one experiment has measured them: their shares of the variance are not their own.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped before a sample was done.</exception>
    /// <remarks>
    /// Samples A and B, and AB_i with input i from B: S_i = mean((y_B − ȳ)(y_ABi − y_A))/V (Saltelli et al.),
    /// S_Ti = mean((y_A − y_ABi)²)/(2 V) (Jansen); Saltelli et al., Variance based sensitivity analysis of model output,
    /// Computer Physics Communications 181 (2010) 259–270. The matching of all injectors counts as one input.
    /// </remarks>
    public SobolResult Sobol(
        SystemOutput output,
        Sampling sampling,
        IProgress<Ratio>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(sampling);
        Belongs(output);
        if (_correlated is not null)
        {
            throw new InvalidOperationException(
                "Inputs are correlated, as one experiment has measured them, and indices of variance need independent ones. Use Tornado.");
        }

        SobolIndices indices = SobolEstimator.Estimate(
            point => output.Of(At(point)), _streams, sampling, progress, cancellation);
        return new(this, output, sampling, indices);
    }

    /// <summary>How many uncertain inputs, and the point.</summary>
    /// <returns>For instance <c>3 uncertain inputs at 6,000 rev/min, 0.50 bar</c>.</returns>
    public override string ToString() =>
        FormattableString.Invariant($"{Inputs.Count} uncertain inputs {Where}");

    /// <summary>The nominal system, solved as a sample is.</summary>
    internal SampledSystem AtNominal() => Solve(Perturbation.None);

    /// <summary>The system at a point of the unit cube.</summary>
    internal SampledSystem At(ReadOnlySpan<double> point) => Solve(Drawn(point));

    /// <summary>The system with one input at a probability and all others as they are.</summary>
    internal SampledSystem At(UncertainInput input, double probability) => Solve(Drawn(input, probability));

    /// <summary>What is drawn at a point of the unit cube.</summary>
    internal Perturbation Drawn(ReadOnlySpan<double> point)
    {
        Perturbation drawn = Perturbation.None;
        Span<double> own = stackalloc double[point.Length];
        point.CopyTo(own);
        _correlated?.Correlate(own);
        int first = 0;
        for (int input = 0; input < _streams.Length; input++)
        {
            Draw(ref drawn, Inputs[input], own.Slice(first, _streams[input].Length));
            first += _streams[input].Length;
        }

        return drawn;
    }

    /// <summary>What is drawn of one input at a probability.</summary>
    internal Perturbation Drawn(UncertainInput input, double probability)
    {
        Perturbation drawn = Perturbation.None;
        Draw(ref drawn, input, [probability]);
        return drawn;
    }

    /// <summary>Where what is drawn is judged.</summary>
    internal OperatingPoint[] PlacesOf(in Perturbation drawn, SystemParts parts) => _places.Of(parts.Demand, drawn);

    /// <summary>What the nominal system has of an input, in SI.</summary>
    internal double NominalValue(UncertainInput input) => input.Quantity switch
    {
        UncertainQuantity.BrakeSpecificFuelConsumption =>
            Nominal.Demand.Consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule,
        UncertainQuantity.DrivetrainLoss => Nominal.Demand.MeasuredPower.Loss,
        UncertainQuantity.RegulatorOffset or UncertainQuantity.FeedResistance or UncertainQuantity.FilterLoss
            or UncertainQuantity.RegulatorOnset or UncertainQuantity.DeadTime => 0,
        UncertainQuantity.SupplyVoltage => Point.Conditions.SupplyVolts,
        UncertainQuantity.FuelTemperature => Point.Conditions.FuelKelvins,
        UncertainQuantity.AmbientPressure => Point.Conditions.Atmosphere.Pascals,
        UncertainQuantity.AmbientTemperature => Point.Conditions.Atmosphere.Kelvins,
        UncertainQuantity.EthanolContent => _blend!.Content,
        UncertainQuantity.Own => input.Nominal,
        _ => 1,
    };

    private SampledSystem Solve(in Perturbation drawn)
    {
        (ICheck[] checks, SystemParts parts) = drawn.Of(Nominal);
        OperatingPoint[] points = PlacesOf(drawn, parts);
        SampledPoint[] solved = new SampledPoint[points.Length];
        for (int place = 0; place < points.Length; place++)
        {
            solved[place] = SampledPoint.Of(checks, parts, points[place], drawn.Matching);
        }

        return new(solved);
    }

    private void Draw(ref Perturbation drawn, UncertainInput input, ReadOnlySpan<double> probabilities)
    {
        double value = input.Shape.ValueAt(probabilities[0]);
        switch (input.Quantity)
        {
            case UncertainQuantity.BrakeSpecificFuelConsumption:
                drawn.BrakeSpecificFuelConsumption = value;
                break;
            case UncertainQuantity.VolumetricEfficiency:
                drawn.VolumetricEfficiency = value;
                break;
            case UncertainQuantity.DrivetrainLoss:
                drawn.DrivetrainLoss = value;
                break;
            case UncertainQuantity.InjectorFlow:
                drawn.InjectorFlow = value;
                break;
            case UncertainQuantity.InjectorMatching:
                drawn.Matching = new Real[Nominal.Injectors.Count];
                for (int injector = 0; injector < drawn.Matching.Length; injector++)
                {
                    // An injector without a probability of its own is like its kind.
                    drawn.Matching[injector] = injector < probabilities.Length
                        ? input.Shape.ValueAt(probabilities[injector])
                        : 1;
                }

                break;
            case UncertainQuantity.RegulatorOffset:
                drawn.RegulatorOffset = value;
                break;
            case UncertainQuantity.SupplyVoltage:
                drawn.SupplyVolts = value;
                break;
            case UncertainQuantity.FuelTemperature:
                drawn.FuelKelvins = value;
                break;
            case UncertainQuantity.EthanolContent:
                drawn.Fuel = _blend!.At(value);
                break;
            case UncertainQuantity.AmbientPressure:
                drawn.AmbientPascals = value;
                break;
            case UncertainQuantity.AmbientTemperature:
                drawn.AmbientKelvins = value;
                break;
            case UncertainQuantity.Boost:
                drawn.Boost = value;
                break;
            default:
                drawn.Changes = [.. drawn.Changes, (input.Change!, value)];
                break;
        }
    }

    private void Belongs(SystemOutput output)
    {
        ArgumentNullException.ThrowIfNull(output);
        if (output.Part is { } part && NominalResult.Margins.All(margin => margin.Part != part))
        {
            throw new ArgumentException(
                $"output was the {output.Name}, which this system does not have or has no limit for. Choose a part among its margins.",
                nameof(output));
        }
    }

    private static void Fits(UncertainInput input, FuelSystem nominal, JudgedPlaces places, string name)
    {
        if (nominal.Demand.Law is { FollowsEstimate: false } law && input.Quantity
            is UncertainQuantity.BrakeSpecificFuelConsumption or UncertainQuantity.VolumetricEfficiency or UncertainQuantity.DrivetrainLoss or UncertainQuantity.EthanolContent)
        {
            throw new ArgumentException(
                $"{name} has {input.Name}, and the fuel demand is a law of its own that does not follow it ({law.Text}): it would change nothing. Give an input of your own that changes the law (UncertainInput.Of), or leave it out.",
                name);
        }

        switch (input.Quantity)
        {
            case UncertainQuantity.BrakeSpecificFuelConsumption:
                FuelConsumption consumption = nominal.Demand.Consumption;
                BrakeSpecificFuelConsumption minimum =
                    BrakeSpecificFuelConsumption.FromKilogramsPerJoule(input.Shape.Minimum);
                if (consumption.Using(minimum).BrakeEfficiency.DecimalFractions > 0.5)
                {
                    throw Guard.OutOfRange(
                        name,
                        $"{input.Name} down to {Readable.Of(minimum)}",
                        "a brake efficiency of at most 50 %",
                        $"Check that the figure belongs to {consumption.Fuel.Name}.");
                }

                break;
            case UncertainQuantity.DrivetrainLoss when nominal.Demand.MeasuredPower.Loss == 0:
                throw new ArgumentException(
                    $"{name} has a drivetrain loss, but the power curve was given at the crank. Give it by PowerCurve.AtWheels, or leave the loss out.",
                    name);
            case UncertainQuantity.RegulatorOffset:
                Pressure set = Pressure.FromPascals(
                    places.Of(nominal.Demand, Perturbation.None).Min(point => nominal.Regulator.SetPascals(point.Boost.Pascals)) + input.Shape.Minimum);
                Guard.Between(
                    set,
                    MinimumSet,
                    Pressure.FromKilopascals(10_000),
                    $"It is what {input.Name} leaves of the pressure set at this point.",
                    name);
                break;
            case UncertainQuantity.FeedResistance when input.Change is not null && nominal.Pump.Pumps.Any(pump => pump.Feed is null):
                throw new ArgumentException(
                    $"{name} has a {input.Name}, but not every pump of {nominal.Pump.Name} has a feed. Describe the wiring by Pump.WithFeed, or leave it out.", name);
            case UncertainQuantity.RegulatorGain or UncertainQuantity.RegulatorOnset when nominal.Regulator.RisingUnit is null:
                throw new ArgumentException(
                    $"{name} has a {input.Name}, but the regulator has none: {nominal.Regulator.Description}. Give it to a system with a rising-rate unit, or leave it out.",
                    name);
            case UncertainQuantity.RegulatorOnset when nominal.Regulator.RisingUnit is { } unit:
                Guard.Between(
                    unit.Onset + Pressure.FromPascals(input.Shape.Minimum),
                    Pressure.Zero,
                    ManifoldPressure.Maximum,
                    $"It is the onset that {input.Name} leaves of the one described.",
                    name);
                break;
            default:
                break;
        }
    }

    /// <summary>Refuses ends of air and boost at which the library calculates no boost: they are tried together, for boost grows with each.</summary>
    private static void Reaches(FuelSystem nominal, JudgedPlaces places, UncertainInput[] inputs)
    {
        UncertainInput[] breathing = [.. inputs.Where(input => input.Quantity
            is UncertainQuantity.AmbientPressure or UncertainQuantity.AmbientTemperature
            or UncertainQuantity.Boost or UncertainQuantity.VolumetricEfficiency)];
        // What is wrong with the car as described is no fault of the inputs.
        Requires(nominal.Demand, places, Perturbation.None);
        for (int ends = 0; ends < 1 << breathing.Length; ends++)
        {
            Perturbation drawn = Perturbation.None;
            for (int input = 0; input < breathing.Length; input++)
            {
                Shape shape = breathing[input].Shape;
                double end = (ends & (1 << input)) == 0 ? shape.Minimum : shape.Maximum;
                _ = breathing[input].Quantity switch
                {
                    UncertainQuantity.AmbientPressure => drawn.AmbientPascals = end,
                    UncertainQuantity.AmbientTemperature => drawn.AmbientKelvins = end,
                    UncertainQuantity.Boost => drawn.Boost = end,
                    _ => drawn.VolumetricEfficiency = end,
                };
            }

            try
            {
                Requires(drawn.Of(nominal).Parts.Demand, places, drawn);
            }
            catch (ArgumentOutOfRangeException outside)
            {
                throw new ArgumentOutOfRangeException(
                    $"{nameof(inputs)} has {string.Join(", ", breathing.Select(input => input.Name))} that lead out of what is calculated: {outside.Message}",
                    outside);
            }
        }
    }

    /// <summary>Refuses places that the engine does not have: boost past the library's range, a manifold emptier than any.</summary>
    private static void Requires(FuelDemandModel demand, JudgedPlaces places, in Perturbation drawn)
    {
        foreach (OperatingPoint point in places.Of(demand, drawn))
        {
            _ = demand.InputAt(point.Speed, point.Boost, point.Conditions.Atmosphere);
        }
    }

    /// <summary>A random stream by name, over those of the library's own inputs: the hash of Fowler, Noll and Vo, which is the same in every process.</summary>
    private static uint OwnStream(string name)
    {
        const uint Offset = 2_166_136_261;
        const uint Prime = 16_777_619;
        uint hash = Offset;
        foreach (char letter in name)
        {
            hash = unchecked((hash ^ letter) * Prime);
        }

        return hash | 0x8000_0000;
    }

    private static Pressure MinimumSet { get; } = Pressure.FromKilopascals(10);

    private static uint[] StreamsOf(UncertainInput input, int injectors)
    {
        uint[] streams = new uint[input.Quantity == UncertainQuantity.InjectorMatching ? injectors : 1];
        for (int part = 0; part < streams.Length; part++)
        {
            streams[part] = input.Quantity == UncertainQuantity.Own ? OwnStream(input.Name) : ((uint)input.Quantity << 8) + (uint)part;
        }

        return streams;
    }
}
