using FuelSizing.Injectors;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>An injector, in a catalogue or in a setup; and a set of equal ones.</summary>
internal static class InjectorForm
{
    private static readonly QuantityField<ElectricPotential> Voltage =
        new("voltage", Measures.Voltage, "at the injector") { Range = "5 to 20 V", Within = DeadTimeTable.WithinVoltage };

    private static readonly QuantityField<Pressure> Differential = new("differential", Measures.Pressure, "across the injector; in every row, or in none for a table at one pressure")
    {
        Range = "50 to 2,000 kPa",
        Within = DeadTimeTable.WithinDifferential,
        Optional = true,
    };

    private static readonly QuantityField<Duration> Time =
        new("time", Measures.Time, "dead time there") { Range = "0 to 5 ms", Within = DeadTimeTable.WithinTime };

    private static readonly RecordForm<DeadTimeRow> Row =
        new("dead_time", "a dead time", values => new(values.Required(Voltage), values.Optional(Differential), values.Required(Time)))
        {
            { Voltage, row => row.Voltage },
            { Differential, row => row.Differential },
            { Time, row => row.Time },
        };

    private static readonly NameField Name = new();

    private static readonly QuantityField<VolumeFlow> StaticFlow =
        new("static_flow", Measures.Flow, "flow held open, at the rated differential; in lb/h or g/s by the density of the test liquid")
        {
            Range = "20 to 10,000 mL/min",
            Otherwise = FlowByMass,
        };

    private static readonly QuantityField<Pressure> RatedDifferential =
        new("rated_differential", Measures.Pressure, "pressure at which the flow was measured") { Range = "50 to 2,000 kPa" };

    private static readonly TextField Fluid =
        new("test_fluid", "test oil", "liquid on which the flow was measured; with `test_density`") { Optional = true, Default = "n-heptane" };

    private static readonly QuantityField<Density> FluidDensity = new("test_density", Measures.Density, "its density at the temperature of the test; with `test_fluid`")
    {
        Optional = true,
        Range = "600 to 1,200 kg/m³",
        Default = "that of n-heptane",
        Arguments = [],
    };

    private static readonly QuantityField<Duration> MinimumPulse =
        new("minimum_linear_pulse", Measures.Time, "shortest linear pulse, dead time included") { Example = "1.6 ms", Range = "0.1 to 10 ms" };

    private static readonly QuantityField<ElectricPotential> MinimumPulseVoltage = new("minimum_pulse_voltage", Measures.Voltage, "at which the shortest linear pulse was stated")
    {
        Example = "14 V",
        Range = "5 to 20 V",
        Optional = true,
        Default = "14 V",
    };

    private static readonly QuantityField<Pressure> MaximumDifferential =
        new("maximum_differential", Measures.Pressure, "maximum differential pressure at which it is known to open") { Example = "550 kPa", Range = "`rated_differential` to 2,000 kPa" };

    private static readonly QuantityField<Pressure> MinimumDifferential =
        new("minimum_differential", Measures.Pressure, "minimum differential pressure from which its flow is known")
        {
            Example = "80 kPa",
            Optional = true,
            Range = "10 kPa to `rated_differential`",
            Default = "a third of `rated_differential` (common practice, no source)",
        };

    private static readonly QuantityField<Pressure> FlowDifferential =
        new("differential", Measures.Pressure, "across the injector") { Example = "450 kPa", Range = "10 kPa to `maximum_differential`" };

    private static readonly QuantityField<VolumeFlow> Flow =
        new("flow", Measures.Flow, "flow held open there, on the test liquid") { Range = "0.6 to 1.6 of what the square-root law gives there from the rated point" };

    private static readonly RecordForm<FlowRow> AFlow =
        new("measured_flow", "a measured flow", values => new(values.Required(FlowDifferential), values.Required(Flow)))
        {
            { FlowDifferential, row => row.Differential },
            { Flow, row => row.Flow },
        };

    private static readonly ListField<FlowRow> Flows = new("measured_flows", () => AFlow, "a row for each pressure at which the flow was measured beside the rated one, pressures rising")
    {
        IsTable = true,
        Minimum = 1,
        Optional = true,
        Default = "the square-root law from the rated point",
    };

    /// <summary>A table of dead times.</summary>
    public static ListField<DeadTimeRow> DeadTimes { get; } = new("dead_times", () => Row, "a row for each pair of voltage and differential")
    {
        IsTable = true,
        Minimum = 2,
        EachOrNone = Differential.Name,
    };

    /// <summary>One injector.</summary>
    public static RecordForm<Injector> Form { get; } = new(
        "injector",
        "an injector",
        InjectorOf,
        BothOrNeither,
        """ "dependentRequired": { "test_fluid": [ "test_density" ], "test_density": [ "test_fluid" ] } """)
    {
        { Name, injector => injector.Name },
        { StaticFlow, injector => injector.StaticFlow },
        { RatedDifferential, injector => injector.RatedDifferential },
        { Fluid, injector => injector.TestFluid.Name },
        { FluidDensity, injector => injector.TestFluid.Density },
        { MinimumPulse, injector => injector.MinimumLinearPulse },
        { MinimumPulseVoltage, injector => injector.MinimumPulseVoltage },
        { MaximumDifferential, injector => injector.MaximumDifferential },
        { MinimumDifferential, injector => injector.IsMinimumDifferentialStated ? injector.MinimumDifferential : null },
        { DeadTimes, injector => RowsOf(injector.DeadTime) },
        { Flows, injector => [.. injector.MeasuredFlows.Where(point => !point.Differential.Pascals.Equals(injector.RatedPascals)).Select(point => new FlowRow(point.Differential, point.Flow))] },
    };

    private static readonly CountField Count = new("count", 4, 1, 48, "how many there are");

    private static readonly CountField PerCycle =
        new("injections_per_cycle", 1, 1, 4, "pulses of each in a working cycle") { Optional = true, Default = "1" };

    private static readonly PartField<Injector> One = new("injector", () => Form, "the injector of which there are so many");

    /// <summary>So many equal injectors.</summary>
    public static RecordForm<InjectorSet> Set { get; } = new(
        "injector_set",
        "the injectors",
        values => InjectorSet.Of(values.Required(One), values.Required(Count), values.Optional(PerCycle) ?? 1))
    {
        { Count, set => set.Count },
        { PerCycle, set => set.InjectionsPerCycle },
        { One, set => set.Injector },
    };

    // A flow by mass is one of the liquid that it was measured on.
    private static VolumeFlow? FlowByMass(EntryReader reader, string number, string unit)
    {
        Density liquid = reader.Has(FluidDensity.Name)
            ? reader.Quantity(FluidDensity.Name, Measures.Density, FluidDensity.Example) ?? TestFluid.Heptane.Density
            : TestFluid.Heptane.Density;
        return Measures.MassFlow.Read(number, unit) is { } mass && liquid > Density.Zero
            ? (mass / liquid).ToUnit(UnitsNet.Units.VolumeFlowUnit.MilliliterPerMinute)
            : null;
    }

    private static void BothOrNeither(FieldValues values) =>
        values.BothOrNeither(Fluid, FluidDensity, Statement.Of("file.test-fluid-half", $"is missing. Give test_fluid and test_density both, or neither for n-heptane."));

    private static Injector? InjectorOf(FieldValues values)
    {
        DeadTimeTable? deadTime = TableOf(values);
        TestFluid? fluid = values.Optional(FluidDensity) is { } density
            ? values.Checked(() => TestFluid.Of(values.Required(Fluid), density), ("name", Fluid), ("density", FluidDensity))
            : TestFluid.Heptane;
        if (deadTime is null || fluid is null)
        {
            return null;
        }

        Injector injector = Injector.Of(
            values.Required(Name),
            values.Required(StaticFlow),
            values.Required(RatedDifferential),
            fluid,
            deadTime,
            values.Required(MinimumPulse),
            values.Required(MaximumDifferential),
            values.Optional(MinimumPulseVoltage));
        injector = values.Optional(MinimumDifferential) is { } minimum ? injector.WithMinimumDifferential(minimum) : injector;
        (Pressure, VolumeFlow)[] flows = [.. (values.Optional(Flows) ?? []).Select(row => (row.Differential, row.Flow))];
        return flows.Length == 0
            ? injector
            : values.Reader.Made(Flows.Name, [.. values.Rows(Flows)], count => injector.WithMeasuredFlows([.. flows.Take(count)]));
    }

    /// <summary>The rows of a table.</summary>
    public static IReadOnlyList<DeadTimeRow> RowsOf(DeadTimeTable table) =>
        [.. table.Points.Select(point => new DeadTimeRow(point.Voltage, point.Differential, point.Time))];

    /// <summary>The table of the rows that were read; none where they make none.</summary>
    public static DeadTimeTable? TableOf(FieldValues values)
    {
        (DeadTimeRow Point, EntryReader Line)[][] rows =
        [
            .. values.Required(DeadTimes).Zip(values.Rows(DeadTimes))
                .GroupBy(row => row.First.Differential?.Pascals)
                .Select(row => row.ToArray()),
        ];
        DeadTimeTable?[] each = [.. rows.Select(row => values.Reader.Made(
            DeadTimes.Name,
            [.. row.Select(time => time.Line)],
            count => DeadTimeTable.ByVoltage([.. row.Take(count).Select(time => (time.Point.Voltage, time.Point.Time))])))];
        if (each.Contains(null))
        {
            return null;
        }

        if (rows[0][0].Point.Differential is null)
        {
            return each[0];
        }

        if (rows.Length == 1)
        {
            rows[0][0].Line.Wrong(Differential.Name, rows[0][0].Line.Line, Statement.Of("file.one-pressure", $"is the same in every row. Leave it out for a table at one pressure."));
            return null;
        }

        double[] volts = [.. rows[0].Select(time => time.Point.Voltage.Volts)];
        foreach ((DeadTimeRow Point, EntryReader Line)[] row in rows)
        {
            if (!row.Select(time => time.Point.Voltage.Volts).SequenceEqual(volts))
            {
                int off = row.Zip(volts).TakeWhile(pair => pair.First.Point.Voltage.Volts == pair.Second).Count();
                EntryReader first = row[Math.Min(off, row.Length - 1)].Line;
                first.Wrong(
                    Voltage.Name,
                    first.Line,
                    Statement.Of("file.voltages-differ", $"differs from the voltages at the first differential. Give a time for every pair of a voltage and a differential, in the same order."));
                return null;
            }
        }

        return values.Reader.Made(
            DeadTimes.Name,
            [.. rows.Select(row => row[0].Line)],
            count => count == 1
                ? each[0]!
                : DeadTimeTable.Of(
                    [.. rows[0].Select(time => time.Point.Voltage)],
                    [.. rows.Take(count).Select(row => row[0].Point.Differential!.Value)],
                    [.. rows.Take(count).Select(row => row.Select(time => time.Point.Time).ToArray())]));
    }

    /// <summary>A measured static flow.</summary>
    internal sealed record FlowRow(Pressure Differential, VolumeFlow Flow);

    /// <summary>A measured dead time.</summary>
    internal sealed record DeadTimeRow(ElectricPotential Voltage, Pressure? Differential, Duration Time);
}
