using FuelSizing.Numerics;
using FuelSizing.Systems;

namespace FuelSizing.Benchmarks;

/// <summary>
/// The work of <see cref="SystemSolver.Solve"/> in the invented car without lines, as one would write it for plain doubles:
/// no units, no checks, no choice of parts; every number that a result holds.
/// </summary>
internal sealed class PlainPoint
{
    private const double Gas = 287.05287;
    private const double Heats = 1.4;

    private readonly double[] _efficiency = Table(InventedCar.Demand.VolumetricEfficiency.BySpeed.Pieces);
    private readonly double[] _power = Table(InventedCar.Demand.MeasuredPower.BySpeed.Pieces);
    private readonly double[] _pump = Table(InventedCar.Pump.Flow.Pieces);
    private readonly double[][] _deadTimes = [.. InventedCar.DeadTimes.Select(row => Table(row.Pieces))];
    private readonly double[] _differentials = [.. InventedCar.DeadTimeKilopascals.Select(kpa => kpa * 1000)];
    private readonly double _density15 = InventedCar.Demand.Consumption.Fuel.ReferenceDensity;
    private readonly double _expansion = InventedCar.Demand.Consumption.Fuel.Expansion;
    private readonly double _displacement = 2.4e-3;
    private readonly double _revolutions = 2;
    private readonly double _compressor = 0.72;
    private readonly double _cooler = 0.70;
    private readonly double _coolerLoss = 5e3;
    private readonly double _belt = InventedCar.Demand.Constants.BeltShare;
    private readonly double _drive = 1;
    private readonly double _measuredPressure = InventedCar.Demand.MeasuredPower.MeasuredIn.Pascals;
    private readonly double _measuredTemperature = InventedCar.Demand.MeasuredPower.MeasuredIn.Kelvins;
    private readonly double _friction = InventedCar.Demand.Constants.StatedFriction;
    private readonly double _frictionSpeed = InventedCar.Demand.Constants.StatedSpeed;
    private readonly double _bsfc = 315e-3 / 3.6e6;
    private readonly double _lambda = 0.82;
    private readonly double _airFuel = InventedCar.Demand.Consumption.Fuel.AirFuelRatio;
    private readonly double _base = 300e3;
    private readonly double _gainBelow = 1;
    private readonly double _gain = 2;
    private readonly double _onset = 10e3;
    private readonly double _ceiling = 480e3;
    private readonly double _ratedFlow = InventedCar.Injector.RatedFlow;
    private readonly double _ratedPressure = 300e3;
    private readonly double _testDensity = InventedCar.Injector.TestDensity;
    private readonly double _count = 4;
    private readonly double _injections = 1;
    private readonly double _dutyLimit = InventedCar.System.Limits.DutyCycle.DecimalFractions;

    /// <summary>Works out a point.</summary>
    /// <param name="speed">rev/s.</param>
    /// <param name="boost">Pa.</param>
    /// <param name="ambient">Pa.</param>
    /// <param name="temperature">K.</param>
    /// <param name="volts">V.</param>
    /// <param name="fuelTemperature">K.</param>
    /// <param name="at">Where to write it.</param>
    public void At(
        double speed, double boost, double ambient, double temperature, double volts, double fuelTemperature, ref PlainNumbers at)
    {
        double warming = _expansion * (fuelTemperature - 288.15);
        at.Density = _density15 * Math.Exp(-warming * (1 + (0.8 * warming)));
        at.Manifold = ambient + boost;
        at.Ratio = Math.Max(1, (at.Manifold + _coolerLoss) / ambient);
        at.Outlet = temperature * (1 + ((Math.Exp((Heats - 1) / Heats * Math.Log(at.Ratio)) - 1) / _compressor));
        at.Charge = at.Outlet - (_cooler * (at.Outlet - temperature));
        at.Air = Cubic(_efficiency, speed) * (at.Manifold / (Gas * at.Charge)) * _displacement * speed / _revolutions;
        at.Drive = _belt * (at.Air * (Heats * Gas / (Heats - 1)) * (at.Outlet - temperature) / _drive);
        double dense = at.Manifold / at.Charge * _measuredTemperature / _measuredPressure;
        double measured = Cubic(_power, speed);
        double friction = _friction * speed * Mean(speed) / (_frictionSpeed * Mean(_frictionSpeed));
        double gross = Math.Max(0, ((measured + friction) * dense) - friction);
        at.Brake = Math.Max(0, gross - at.Drive);
        at.FromPower = gross * _bsfc;
        at.FromAir = at.Air / (_lambda * _airFuel);
        at.Injected = Math.Max(at.FromAir, at.FromPower) / at.Density;
        at.Set = Math.Min(
            _ceiling, _base + (_gainBelow * Math.Min(boost, _onset)) + (_gain * Math.Max(0, boost - _onset)));
        at.Delivered = Cubic(_pump, at.Set);
        at.Returned = at.Delivered - at.Injected;
        at.Across = at.Set + ambient - at.Manifold;
        at.StaticFlow = _ratedFlow * Math.Sqrt(Math.Max(0, at.Across) / _ratedPressure * _testDensity / at.Density);
        at.Time = _revolutions / (speed * _injections);
        int row = 1;
        while (row + 1 < _differentials.Length && _differentials[row] < at.Across)
        {
            row++;
        }

        double low = Cubic(_deadTimes[row - 1], volts);
        double high = Cubic(_deadTimes[row], volts);
        at.DeadTime = low
            + ((high - low) * (at.Across - _differentials[row - 1]) / (_differentials[row] - _differentials[row - 1]));
        at.Pulse = at.DeadTime + (at.Injected / _count * at.Time / at.StaticFlow);
        at.Duty = at.Pulse / at.Time;
        at.Capacity = at.StaticFlow * _count * Math.Max(0, (_dutyLimit * at.Time) - at.DeadTime) / at.Time;
    }

    private static double Mean(double speed) => 97e3 + (900 * speed) + (18 * speed * speed);

    // Start, value and the three coefficients of each piece, one piece after another.
    private static double[] Table(ReadOnlySpan<CubicPiece<Real>> pieces)
    {
        double[] table = new double[5 * pieces.Length];
        for (int piece = 0; piece < pieces.Length; piece++)
        {
            CubicPiece<Real> from = pieces[piece];
            (table[5 * piece], table[(5 * piece) + 1]) = (from.Start, from.Value);
            (table[(5 * piece) + 2], table[(5 * piece) + 3], table[(5 * piece) + 4]) = (from.Slope, from.Second, from.Third);
        }

        return table;
    }

    private static double Cubic(double[] table, double x)
    {
        int at = 0;
        while (at + 5 < table.Length && x >= table[at + 5])
        {
            at += 5;
        }

        double s = x - table[at];
        return table[at + 1] + (s * (table[at + 2] + (s * (table[at + 3] + (s * table[at + 4])))));
    }
}
