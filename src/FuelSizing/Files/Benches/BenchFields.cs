using FuelSizing.Bench;
using FuelSizing.Injectors;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>Fields that several tests at a bench have.</summary>
internal static class BenchFields
{
    public static readonly NameField Name = new("the part that was tested; it may be tested more than once");

    public static readonly TextField Fluid = new("test_fluid", "test oil", "the liquid; with `test_density`") { Optional = true, Default = "n-heptane of 20 °C" };

    public static readonly QuantityField<Density> FluidDensity = new("test_density", Measures.Density, "its density at the temperature of the test; with `test_fluid`")
    {
        Optional = true,
        Range = "600 to 1,200 kg/m³",
        Default = "that of n-heptane",
        Arguments = [],
    };

    public const string FluidCondition = """ "dependentRequired": { "test_fluid": [ "test_density" ], "test_density": [ "test_fluid" ] } """;

    public static TestFluid? FluidOf(FieldValues values) => values.Optional(FluidDensity) is { } density
        ? values.Checked(() => TestFluid.Of(values.Required(Fluid), density), ("name", Fluid), ("density", FluidDensity))
        : TestFluid.Heptane;

    public static void BothOrNeither(FieldValues values) =>
        values.BothOrNeither(Fluid, FluidDensity, Statement.Of("file.test-fluid-half", $"is missing. Give test_fluid and test_density both, or neither for n-heptane."));

    public static void OneOf(FieldValues values, Field one, Field other)
    {
        if (values.Reader.Has(one.Name) == values.Reader.Has(other.Name))
        {
            values.Wrong(one, Statement.Of("file.either-field", $"{(values.Reader.Has(one.Name) ? "stands beside" : "is missing, and so is")} {other.Name}. Give one of them."));
        }
    }

    /// <summary>The three fields of a gauge's accuracy.</summary>
    public sealed class Gauge(string name, string which)
    {
        /// <summary>Of one reading.</summary>
        public QuantityField<Pressure> Reading { get; } =
            new($"{name}_reading", Measures.Pressure, $"standard deviation of one reading of {which}, a third of a division for instance") { Example = "1 kPa", Range = "0.001 to 100 kPa", Arguments = [] };

        /// <summary>Of what all are off by alike.</summary>
        public QuantityField<Pressure> Zero { get; } =
            new($"{name}_zero", Measures.Pressure, "standard deviation of what all of them are off by alike") { Example = "2 kPa", Range = "0 to 100 kPa", Arguments = [] };

        /// <summary>Of what all are off by in proportion.</summary>
        public QuantityField<Ratio> Span { get; } =
            new($"{name}_span", Measures.Share, "standard deviation of what all of them are off by in proportion") { Example = "0.5 %", Range = "0 to 10 %", Arguments = [] };

        /// <summary>The accuracy; none where anything is wrong with it.</summary>
        public GaugeAccuracy? Of(FieldValues values) => values.Checked(
            () => GaugeAccuracy.Of(values.Required(Reading), values.Required(Zero), values.Required(Span)), ("reading", Reading), ("zero", Zero), ("span", Span));

        /// <summary>Adds the fields to a form.</summary>
        public void AddTo<T>(RecordForm<T> form, Func<T, GaugeAccuracy> of)
            where T : class
        {
            form.Add(Reading, test => of(test).Reading);
            form.Add(Zero, test => of(test).Zero);
            form.Add(Span, test => of(test).Span);
        }
    }
}
