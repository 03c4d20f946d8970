using FuelSizing.Engines;
using FuelSizing.Equations;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Numerics;
using FuelSizing.Systems;

namespace FuelSizing.Findings;

/// <summary>One point of a run with what the plan says of it, in SI; NaN where a channel was not recorded.</summary>
internal readonly record struct PointInput
{
    /// <summary>rev/s.</summary>
    public required double Speed { get; init; }

    /// <summary>Manifold gauge pressure as recorded, Pa; less the zero of the sensor where the engine at rest showed it.</summary>
    public required double Boost { get; init; }

    /// <summary>Rail gauge pressure, Pa.</summary>
    public required double Rail { get; init; }

    /// <summary>Supply voltage, V; the planned one where none was recorded.</summary>
    public required double Volts { get; init; }

    /// <summary>Pressure across the injector, Pa; at the planned rail pressure where none was recorded.</summary>
    public required double Differential { get; init; }

    /// <summary>Time between two injections, s.</summary>
    public required double Available { get; init; }

    /// <summary>Pulse less dead time, s.</summary>
    public required double Open { get; init; }

    /// <summary>By the flow meter, m³/s.</summary>
    public required double Meter { get; init; }

    /// <summary>Injected, m³/s: by the flow meter, else by the injectors, else as planned.</summary>
    public required double Flow { get; init; }

    /// <summary>Air–fuel ratio ÷ stoichiometric.</summary>
    public required double Lambda { get; init; }

    /// <summary>At the crank, W.</summary>
    public required double Power { get; init; }

    /// <summary>Density of the fuel, kg/m³.</summary>
    public required double Density { get; init; }

    /// <summary>ln of the fuel that the planned air burns at lambda 1, m³/s.</summary>
    public required double LogStoichiometric { get; init; }

    /// <summary>Change of ln air with manifold pressure, 1/Pa.</summary>
    public required double AirByPressure { get; init; }

    /// <summary>ln of the work in a volume of fuel at the planned BSFC, J/m³.</summary>
    public required double LogWork { get; init; }

    /// <summary>Lost from the tank to the rail at the flow, Pa.</summary>
    public required double Loss { get; init; }

    /// <summary>Change of that loss with ln flow, Pa.</summary>
    public required double LossByFlow { get; init; }

    /// <summary>Of it, lost on the way from the pump to the rail, Pa.</summary>
    public required double SupplyLoss { get; init; }

    /// <summary>Lost by the filters, were they new, Pa.</summary>
    public required double FilterLoss { get; init; }

    /// <summary>True if fuel goes in and the channels say how much.</summary>
    public required bool Injects { get; init; }

    /// <summary>True near full load, where BSFC is a figure of the engine.</summary>
    public required bool FullLoad { get; init; }

    /// <summary>True if the return line may hold the rail over what the regulator asks for.</summary>
    public required bool ReturnFloor { get; init; }

    /// <summary>Of what returns with nothing injected, the share that is injected.</summary>
    public required double InjectedShare { get; init; }

    /// <summary>How fast manifold pressure rises, Pa/s.</summary>
    public required double BoostRate { get; init; }

    /// <summary>How fast rail pressure rises, Pa/s.</summary>
    public required double RailRate { get; init; }

    /// <summary>How fast ln lambda rises, 1/s: as recorded, or where it is read too seldom by the plan's air and the fuel as recorded.</summary>
    public required double LambdaRate { get; init; }

    /// <summary>How fast ln of the metered fuel rises, 1/s.</summary>
    public required double MeterRate { get; init; }

    /// <summary>How far rail pressure moves within the point that the regulator does not explain, Pa.</summary>
    public required double RailUnsteady { get; init; }

    /// <summary>How far ln of the metered fuel moves within the point that the injectors do not explain.</summary>
    public required double FlowUnsteady { get; init; }

    /// <summary>How far ln lambda moves within the point that air and fuel do not explain.</summary>
    public required double LambdaUnsteady { get; init; }

    /// <summary>How far ln power moves within the point that the fuel does not explain.</summary>
    public required double PowerUnsteady { get; init; }

    /// <summary>What the charge's temperature takes of the air, 1/K.</summary>
    public required double AirByTemperature { get; init; }

    /// <summary>Change of the rail's pressure with ln flow where the pump governs, Pa, as a size.</summary>
    public double RiseByFlow(RunCheck check) =>
        Math.Abs(check.Pumps.Rise(Flow * 1.05, Volts, 0) - check.Pumps.Rise(Flow * 0.95, Volts, 0)) / 0.1;

    /// <summary>Readings within a point that show how fast a channel changes.</summary>
    private const int EnoughForRate = 6;

    /// <summary>Works out a point.</summary>
    public static PointInput Of(RunCheck check, RunPoints points, int i, double ambient, Atmosphere atmosphere)
    {
        FuelSystem plan = check.Plan;
        Fuel fuel = plan.Demand.Consumption.Fuel;
        double speed = points.Speed[i];
        double boost = points.Manifold[i] - ambient - (points.ManifoldAtRest ?? 0);
        double kelvins = Math.Clamp(
            double.IsNaN(points.FuelKelvins[i]) ? check.FuelKelvins : points.FuelKelvins[i],
            Fuel.MinimumTemperature.Kelvins,
            Fuel.MaximumTemperature.Kelvins);
        double density = fuel.DensityAtKelvins(kelvins);
        double volts = double.IsNaN(points.Volts[i]) ? check.SupplyVolts : points.Volts[i];
        double rail = points.Rail[i];
        double differential = RailPressure.Differential<Real>(
            double.IsNaN(rail) ? check.Regulator.Set(boost, 0, 0, 0) : rail, ambient, ambient + boost);
        double available = InjectorFlow.AvailableTime<Real>(
            speed, plan.Demand.Engine.RevolutionsPerCycle, plan.Injectors.InjectionsPerCycle).Value;
        bool timed = plan.Injectors.Injector.DeadTime.TryAt(volts, differential, out double deadTime);
        double open = timed ? points.Pulse[i] - deadTime : double.NaN;
        bool injects = open > 0 && differential > 0;
        FuelDemand demand = check.DemandAt(speed, boost, atmosphere);
        double fromAir = FuelDemandFlow.Volume<Real>(
            FuelDemandFlow.FromAir<Real>(demand.AirMassFlow.KilogramsPerSecond, fuel.AirFuelRatio), density);
        const double Step = 1000;
        double denser = check.DemandAt(speed, boost - Step, atmosphere).AirMassFlow.KilogramsPerSecond;
        double airByPressure = (Math.Log(demand.AirMassFlow.KilogramsPerSecond) - Math.Log(denser)) / Step;
        double meter = points.Meter[i] > 0 ? points.Meter[i] : double.NaN;
        double boostRate = points.Rate(Channel.ManifoldAbsolute)[i];
        double railRate = double.IsNaN(rail) ? check.Regulator.SlopeAt(boost) * boostRate : points.Rate(Channel.RailGauge)[i];
        double meterRate = points.Rate(Channel.FuelVolumeFlow)[i] / meter;

        // Of each cycle, for air and fuel grow with speed alike but for volumetric efficiency.
        double airRate = (airByPressure * boostRate) + (check.LogEfficiencySlope(speed) * points.Rate(Channel.Speed)[i]);
        double fuelRate = injects
            ? (points.Rate(Channel.InjectorPulse)[i] / open) + ((railRate - boostRate) / (2 * differential))
            : meterRate - (points.Rate(Channel.Speed)[i] / speed);
        double planned = double.IsNaN(fuelRate) ? 0 : airRate - fuelRate;
        double read = points.Rate(Channel.Lambda)[i] / points.Lambda[i];
        bool isRead = points.Readings(Channel.Lambda)[i] >= EnoughForRate && double.IsFinite(read);
        double injectedRate = fuelRate + (points.Rate(Channel.Speed)[i] / speed);
        double powerRate = points.Rate(Channel.Power)[i] / points.Power[i];
        double Unsteady(double one, double other) => double.IsFinite(one - other) ? Math.Abs(one - other) * points.Spans[i] : 0;
        PointInput bare = new()
        {
            Speed = speed,
            Boost = boost,
            Rail = rail,
            Volts = volts,
            Differential = differential,
            Available = available,
            Open = open,
            Meter = meter,
            Flow = double.NaN,
            Lambda = points.Lambda[i],
            Power = BoostedPower.CrankFromWheel<Real>(points.Power[i], check.DriveLossShare),
            Density = density,
            LogStoichiometric = Math.Log(fromAir),
            AirByPressure = airByPressure,
            LogWork = Math.Log(density / plan.Demand.Consumption.BrakeSpecificFuelConsumption.KilogramsPerJoule),
            Loss = 0,
            LossByFlow = 0,
            SupplyLoss = 0,
            FilterLoss = 0,
            Injects = injects,
            FullLoad = boost > -0.15 * ambient,
            ReturnFloor = false,
            InjectedShare = 0,
            BoostRate = boostRate,
            RailRate = railRate,
            LambdaRate = isRead ? read : planned,
            RailUnsteady = Unsteady(railRate, check.Regulator.SlopeAt(boost) * boostRate),
            FlowUnsteady = Unsteady(meterRate, injectedRate),
            LambdaUnsteady = Unsteady(read, planned),
            PowerUnsteady = Unsteady(powerRate, injectedRate),
            MeterRate = double.IsNaN(meterRate) ? 0 : meterRate,
            AirByTemperature = -1 / demand.ChargeTemperature.Kelvins,
        };
        double flow = !double.IsNaN(meter) ? meter
            : injects ? check.Injected(bare, differential, open)
            : double.IsNaN(points.Pulse[i])
                ? FuelDemandFlow.Volume<Real>(demand.MassFlow.KilogramsPerSecond, density)
                : double.NaN;
        if (double.IsNaN(flow))
        {
            return bare;
        }

        double viscosity = plan.Plumbing.NeedsViscosity ? fuel.KinematicViscosityAtKelvins(kelvins) : 0;
        double supply = PathLoss.Of(plan.Plumbing.Supply, flow, density, viscosity);
        double suction = PathLoss.Of(plan.Plumbing.Suction, flow, density, viscosity);
        const double Share = 0.02;
        double more = flow * (1 + Share);
        double further = PathLoss.Of(plan.Plumbing.Supply, more, density, viscosity)
            + PathLoss.Of(plan.Plumbing.Suction, more, density, viscosity);
        return bare with
        {
            Flow = flow,
            Loss = supply + suction,
            LossByFlow = (further - supply - suction) / Math.Log(1 + Share),
            InjectedShare = check.InjectedShare(flow),
            SupplyLoss = supply,
            FilterLoss = check.NewFilterLoss(flow, density, viscosity),
            ReturnFloor = check.MayBeReturnFloor(flow, boost, volts, density, viscosity),
        };
    }
}
