using FuelSizing.Electrical;
using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A voltage converter: it holds a voltage, or gives a multiple of the one at its input.</summary>
internal static class ConverterForm
{
    private static readonly NameField Name = new();

    private static readonly QuantityField<ElectricPotential> Output =
        new("output", Measures.Voltage, "that it holds at the motor; or give `multiple`") { Example = "16 V", Optional = true, Range = "6 to 24 V", Default = "by `multiple`" };

    private static readonly NumberField Multiple =
        new("multiple", 1.2, 0.3, 3, "output ÷ input voltage; or give `output`") { Optional = true, Default = "by `output`" };

    private static readonly QuantityField<Ratio> Efficiency =
        new("efficiency", Measures.Share, "output ÷ input power under load") { Example = "90 %", Range = "50 to 100 %" };

    private static readonly QuantityField<ElectricCurrent> MaximumCurrent =
        new("maximum_current", Measures.Current, "at its output, as rated") { Example = "20 A", Optional = true, Range = "1 to 100 A", Default = "not given: whether it is large enough is not judged" };

    /// <summary>The converter.</summary>
    public static RecordForm<VoltageConverter> Form { get; } = new(
        "converter",
        "a voltage converter",
        ConverterOf,
        OneOfTwo,
        """ "oneOf": [ { "required": [ "output" ] }, { "required": [ "multiple" ] } ] """)
    {
        { Name, converter => converter.Name },
        { Output, converter => converter.Output },
        { Multiple, converter => converter.Multiple },
        { Efficiency, converter => converter.Efficiency },
        { MaximumCurrent, converter => converter.MaximumCurrent },
    };

    private static void OneOfTwo(FieldValues values)
    {
        if (values.Optional(Output) is not null && values.Optional(Multiple) is not null)
        {
            values.Wrong(Multiple, Statement.Of("file.two-converter-outputs", $"is given together with output. Give one of the two."));
        }
        else if (!values.Reader.Has(Output.Name) && !values.Reader.Has(Multiple.Name))
        {
            values.Wrong(Output, Statement.Of("file.no-converter-output", $"is missing. Give output or multiple."));
        }
    }

    private static VoltageConverter ConverterOf(FieldValues values) => values.Optional(Output) is { } output
        ? VoltageConverter.Holding(values.Required(Name), output, values.Required(Efficiency), values.Optional(MaximumCurrent))
        : VoltageConverter.Times(values.Required(Name), values.Optional(Multiple)!.Value, values.Required(Efficiency), values.Optional(MaximumCurrent));
}
