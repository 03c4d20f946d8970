using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;
using FuelSizing.Equations;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Benchmarks;

/// <summary>The open-form chain over the same columns by the batch and by its peers.</summary>
internal sealed unsafe class PointPeers
{
    private const int Pieces = 8;
    private const double Gas = 287.05287;
    private const double Heats = 1.4;

    private static readonly JsonSerializerOptions WithInfinities = new()
    {
        NumberHandling = System.Text.Json.Serialization.JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    private readonly PeerConstants _c;
    private readonly double[] _efficiency;
    private readonly double[] _power;
    private readonly double[] _deadTimes;
    private readonly RotationalSpeed[] _efficiencySpeeds;
    private readonly RotationalSpeed[] _powerSpeeds;
    private readonly Pressure[] _deadPressures;
    private readonly Duration[] _deadDurations;
    private readonly double[] _speeds;
    private readonly double[] _boosts;
    private readonly double[][] _out;
    private readonly PointBatch _batch = PointBatch.Of(InventedCar.System.Parts);

    public PointPeers(int points)
    {
        FuelSystem system = InventedCar.System;
        Conditions usual = Conditions.Default;
        DemandConstants<Real> engine = system.Demand.ConstantsOf<Real>();
        InjectionConstants<Real> injectors = system.Parts.InjectionOf<Real>();
        RailSetting regulator = system.Regulator.Setting!.Value;
        _c = new(
            engine.Displacement,
            engine.RevolutionsPerCycle.Value,
            engine.CompressorEfficiency.Value,
            engine.CoolerEffectiveness,
            engine.CoolerLoss,
            engine.BeltShare,
            engine.DriveEfficiency.Value,
            system.Demand.MeasuredPower.MeasuredIn.Pascals,
            system.Demand.MeasuredPower.MeasuredIn.Kelvins,
            engine.StatedFriction,
            engine.StatedSpeed,
            engine.BrakeSpecificFuelConsumption,
            system.Demand.Consumption.Lambda,
            system.Demand.Consumption.Fuel.AirFuelRatio,
            usual.Atmosphere.Pascals,
            usual.Atmosphere.Kelvins,
            system.Demand.Consumption.Fuel.DensityAtKelvins(usual.FuelKelvins),
            regulator.Base,
            regulator.GainBelowOnset,
            regulator.Gain,
            regulator.Onset,
            regulator.Ceiling,
            injectors.RatedFlow,
            injectors.RatedDifferential.Value,
            injectors.TestFluidDensity,
            injectors.Count.Value,
            injectors.InjectionsPerCycle);
        _efficiency = Table(system.Demand.VolumetricEfficiency.BySpeed.Pieces);
        _power = Table(system.Demand.MeasuredPower.BySpeed.Pieces);
        Injectors.DeadTimeRow row = system.Injectors.Injector.DeadTime.RowAt(usual.SupplyVolts)!;
        _deadTimes = Padded([.. row.Curve!.Points.Select(point => point.X)], [.. row.Curve.Points.Select(point => point.Y)]);
        _efficiencySpeeds = [.. _efficiency[..Pieces].Where(double.IsFinite).Select(speed => RotationalSpeed.FromRevolutionsPerSecond(speed))];
        _powerSpeeds = [.. _power[..Pieces].Where(double.IsFinite).Select(speed => RotationalSpeed.FromRevolutionsPerSecond(speed))];
        _deadPressures = [.. row.Curve.Points.Select(point => Pressure.FromPascals(point.X))];
        _deadDurations = [.. row.Curve.Points.Select(point => Duration.FromSeconds(point.Y))];
        Random random = new(7);
        _speeds = [.. Enumerable.Range(0, points).Select(_ => 14 + (105 * random.NextDouble()))];
        _boosts = [.. Enumerable.Range(0, points).Select(_ => -50e3 + (150e3 * random.NextDouble()))];
        _out = [.. Enumerable.Range(0, 4).Select(_ => new double[points])];
    }

    public int Points => _speeds.Length;

    /// <summary>All outputs, one after another, to see that the peers agree.</summary>
    public double[] Outputs => [.. _out.SelectMany(column => column)];

    public void Batch(int threads = 1) => _batch.Evaluate(
        new() { Speed = _speeds, Boost = _boosts },
        new() { RailGauge = _out[0], FuelFlow = _out[1], StaticFlow = _out[2], DutyCycle = _out[3] },
        threads);

    public void Strict() => Native(&StrictPoints);

    public void Fast() => Native(&FastPoints);

    /// <summary>By hand in plain doubles, one point after the other.</summary>
    public void Plain()
    {
        PeerConstants c = _c;
        for (int i = 0; i < _speeds.Length; i++)
        {
            double speed = _speeds[i];
            double boost = _boosts[i];
            double manifold = c.Ambient + boost;
            double ratio = Math.Max(1, (manifold + c.CoolerLoss) / c.Ambient);
            double outlet = c.Temperature * (1 + ((Math.Exp((Heats - 1) / Heats * Math.Log(ratio)) - 1) / c.Compressor));
            double charge = outlet - (c.Cooler * (outlet - c.Temperature));
            double air = Cubic(_efficiency, speed) * (manifold / (Gas * charge)) * c.Displacement * speed / c.Revolutions;
            double dense = manifold / charge * c.MeasuredTemperature / c.MeasuredPressure;
            double measured = Cubic(_power, speed);
            double friction = c.Friction * speed * MeanFriction(speed) / (c.FrictionSpeed * MeanFriction(c.FrictionSpeed));
            double gross = Math.Max(0, ((measured + friction) * dense) - friction);
            double fuel = Math.Max(air / (c.Lambda * c.AirFuel), gross * c.Bsfc) / c.Density;
            double rail = Math.Min(
                c.Ceiling, c.Base + (c.GainBelow * Math.Min(boost, c.Onset)) + (c.Gain * Math.Max(0, boost - c.Onset)));
            double across = rail + c.Ambient - manifold;
            double flow = c.RatedFlow * Math.Sqrt(Math.Max(0, across) / c.RatedPressure * c.TestDensity / c.Density);
            double time = c.Revolutions / (speed * c.Injections);
            _out[0][i] = rail;
            _out[1][i] = fuel;
            _out[2][i] = flow;
            _out[3][i] = (Straight(_deadTimes, across) + (fuel / c.Count * time / flow)) / time;
        }
    }

    /// <summary>The same with a quantity for every number that has a unit, tables' points included.</summary>
    public void Units()
    {
        PeerConstants c = _c;
        Pressure ambient = Pressure.FromPascals(c.Ambient);
        Temperature outside = Temperature.FromKelvins(c.Temperature);
        Pressure measuredPressure = Pressure.FromPascals(c.MeasuredPressure);
        Density density = Density.FromKilogramsPerCubicMeter(c.Density);
        Density testDensity = Density.FromKilogramsPerCubicMeter(c.TestDensity);
        Pressure rated = Pressure.FromPascals(c.RatedPressure);
        Pressure onset = Pressure.FromPascals(c.Onset);
        Pressure ceiling = Pressure.FromPascals(c.Ceiling);
        Pressure regulator = Pressure.FromPascals(c.Base);
        VolumeFlow ratedFlow = VolumeFlow.FromCubicMetersPerSecond(c.RatedFlow);
        Volume displacement = Volume.FromCubicMeters(c.Displacement);
        BrakeSpecificFuelConsumption bsfc = BrakeSpecificFuelConsumption.FromKilogramsPerJoule(c.Bsfc);
        for (int i = 0; i < _speeds.Length; i++)
        {
            RotationalSpeed speed = RotationalSpeed.FromRevolutionsPerSecond(_speeds[i]);
            Pressure boost = Pressure.FromPascals(_boosts[i]);
            Pressure manifold = ambient + boost;
            Ratio ratio = Ratio.FromDecimalFractions(Math.Max(1, (manifold + Pressure.FromPascals(c.CoolerLoss)) / ambient));
            Temperature outlet = Temperature.FromKelvins(
                outside.Kelvins * (1 + ((Math.Pow(ratio.DecimalFractions, (Heats - 1) / Heats) - 1) / c.Compressor)));
            TemperatureDelta cooled = (outlet - outside) * c.Cooler;
            Temperature charge = outlet - cooled;
            Ratio efficiency = Ratio.FromDecimalFractions(Cubic(_efficiencySpeeds, _efficiency, speed));
            Density inlet = Density.FromKilogramsPerCubicMeter(manifold.Pascals / (Gas * charge.Kelvins));
            VolumeFlow swept = VolumeFlow.FromCubicMetersPerSecond(
                displacement.CubicMeters * speed.RevolutionsPerSecond / c.Revolutions);
            MassFlow air = inlet * swept * efficiency.DecimalFractions;
            Ratio dense = Ratio.FromDecimalFractions(manifold / measuredPressure * (c.MeasuredTemperature / charge.Kelvins));
            Power measured = Power.FromWatts(Cubic(_powerSpeeds, _power, speed));
            Power friction = Power.FromWatts(
                c.Friction * speed.RevolutionsPerSecond * MeanFriction(speed.RevolutionsPerSecond) / (c.FrictionSpeed * MeanFriction(c.FrictionSpeed)));
            Power gross = UnitMath.Max(
                Power.Zero, Power.FromWatts((double)(measured + friction).Watts * dense.DecimalFractions) - friction);
            MassFlow fromPower = bsfc * gross;
            MassFlow fromAir = air / (c.Lambda * c.AirFuel);
            VolumeFlow fuel = UnitMath.Max(fromAir, fromPower) / density;
            Pressure rail = UnitMath.Min(
                ceiling, regulator + (UnitMath.Min(boost, onset) * c.GainBelow) + (UnitMath.Max(Pressure.Zero, boost - onset) * c.Gain));
            Pressure across = rail + ambient - manifold;
            VolumeFlow flow = ratedFlow * Math.Sqrt(UnitMath.Max(Pressure.Zero, across) / rated * (testDensity / density));
            Duration time = Duration.FromSeconds(c.Revolutions / (speed.RevolutionsPerSecond * c.Injections));
            Duration pulse = Straight(_deadPressures, _deadDurations, across)
                + Duration.FromSeconds((fuel / c.Count * time).CubicMeters / flow.CubicMetersPerSecond);
            _out[0][i] = rail.Pascals;
            _out[1][i] = fuel.CubicMetersPerSecond;
            _out[2][i] = flow.CubicMetersPerSecond;
            _out[3][i] = pulse / time;
        }
    }

    /// <summary>Writes what the program in Python reads.</summary>
    public string Written(string folder)
    {
        string columns = Path.Combine(folder, "columns.bin");
        using (FileStream file = File.Create(columns))
        {
            file.Write(MemoryMarshal.AsBytes<double>(_speeds));
            file.Write(MemoryMarshal.AsBytes<double>(_boosts));
        }

        string path = Path.Combine(folder, "points.json");
        File.WriteAllText(path, JsonSerializer.Serialize(
            new { Constants = _c, Points, Columns = columns, Efficiency = _efficiency, Power = _power, DeadTimes = _deadTimes },
            WithInfinities).Replace("\"Infinity\"", "Infinity", StringComparison.Ordinal));
        return path;
    }

    private static double Cubic(double[] table, double x)
    {
        int k = 0;
        while (k + 1 < Pieces && x >= table[k + 1])
        {
            k++;
        }

        double s = x - table[k];
        return table[Pieces + k] + (s * (table[(2 * Pieces) + k] + (s * (table[(3 * Pieces) + k] + (s * table[(4 * Pieces) + k])))));
    }

    private static double MeanFriction(double speed) => 97e3 + (900 * speed) + (18 * speed * speed);

    private static double Straight(double[] table, double x)
    {
        int k = 0;
        while (k + 2 < Pieces && x > table[k + 1])
        {
            k++;
        }

        return table[Pieces + k]
            + ((table[Pieces + k + 1] - table[Pieces + k]) * (x - table[k]) / (table[k + 1] - table[k]));
    }

    private static double Cubic(RotationalSpeed[] starts, double[] table, RotationalSpeed x)
    {
        int k = 0;
        while (k + 1 < starts.Length && x >= starts[k + 1])
        {
            k++;
        }

        double s = (x - starts[k]).RevolutionsPerSecond;
        return table[Pieces + k] + (s * (table[(2 * Pieces) + k] + (s * (table[(3 * Pieces) + k] + (s * table[(4 * Pieces) + k])))));
    }

    private static Duration Straight(Pressure[] pressures, Duration[] times, Pressure x)
    {
        int k = 0;
        while (k + 2 < pressures.Length && x > pressures[k + 1])
        {
            k++;
        }

        return times[k] + ((times[k + 1] - times[k]) * ((x - pressures[k]) / (pressures[k + 1] - pressures[k])));
    }

    private static double[] Table(ReadOnlySpan<CubicPiece<Real>> pieces)
    {
        double[] table = new double[5 * Pieces];
        for (int k = 0; k < Pieces; k++)
        {
            CubicPiece<Real> piece = k < pieces.Length ? pieces[k] : new(double.PositiveInfinity, 0, 0, 0, 0);
            (table[k], table[Pieces + k], table[(2 * Pieces) + k]) = (piece.Start, piece.Value, piece.Slope);
            (table[(3 * Pieces) + k], table[(4 * Pieces) + k]) = (piece.Second, piece.Third);
        }

        return table;
    }

    private static double[] Padded(double[] x, double[] y)
    {
        double[] table = new double[2 * Pieces];
        for (int k = 0; k < Pieces; k++)
        {
            (table[k], table[Pieces + k]) = k < x.Length ? (x[k], y[k]) : (double.PositiveInfinity, y[^1]);
        }

        return table;
    }

    private void Native(delegate*<PeerConstants*, double*, double*, double*, double*, double*, double*, double*, double*, double*, nuint, void> points)
    {
        PeerConstants c = _c;
        fixed (double* efficiency = _efficiency, power = _power, dead = _deadTimes, speed = _speeds, boost = _boosts)
        fixed (double* rail = _out[0], fuel = _out[1], flow = _out[2], duty = _out[3])
        {
            points(&c, efficiency, power, dead, speed, boost, rail, fuel, flow, duty, (nuint)_speeds.Length);
        }
    }

    [DllImport("points-strict", EntryPoint = "points")]
    private static extern void StrictPoints(
        PeerConstants* c, double* efficiency, double* power, double* dead, double* speed, double* boost, double* rail, double* fuel, double* flow, double* duty, nuint n);

    [DllImport("points-fast", EntryPoint = "points")]
    private static extern void FastPoints(
        PeerConstants* c, double* efficiency, double* power, double* dead, double* speed, double* boost, double* rail, double* fuel, double* flow, double* duty, nuint n);

    /// <summary>Finds the libraries that benchmarks/peer/build compiled.</summary>
    public static void FindLibraries() => NativeLibrary.SetDllImportResolver(typeof(PointPeers).Assembly, (name, _, _) =>
    {
        if (!name.StartsWith("points-", StringComparison.Ordinal))
        {
            return 0;
        }

        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string path = Path.Combine(folder.FullName, "artifacts", "peer", string.Create(CultureInfo.InvariantCulture, $"lib{name}.so"));
            if (File.Exists(path))
            {
                return NativeLibrary.Load(path);
            }
        }

        throw new DllNotFoundException($"{name} is not built; run benchmarks/peer/build first.");
    });
}
