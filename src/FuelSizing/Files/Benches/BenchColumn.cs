using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>A kind of test at a bench.</summary>
public enum BenchTestKind
{
    /// <summary>An injector weighed in pulses.</summary>
    PulseTest,

    /// <summary>An injector held open.</summary>
    StaticTest,

    /// <summary>A pump that fills a vessel.</summary>
    PumpTest,

    /// <summary>A pump with its outlet shut.</summary>
    DeadheadTest,

    /// <summary>Voltage across a part of the wiring.</summary>
    VoltageDropTest,

    /// <summary>A regulator by its gauge.</summary>
    RegulatorTest,

    /// <summary>A tank weighed before and after steady runs.</summary>
    ConsumptionTest,
}

/// <summary>A column of a file of bench tests; on paper, a blank of the sheet on which a test is written down.</summary>
public sealed class BenchColumn
{
    private BenchColumn(Field field, string heading, bool isReading)
    {
        Unit = field.Kind is not null && field.Sample?.Split(' ', 2) is [_, var unit] ? unit : null;
        (Name, Meaning, IsReading, IsOptional) = (field.Name, field.Meaning.Replace("`", string.Empty, StringComparison.Ordinal), isReading, field.Optional);
        Heading = Unit is null ? heading : $"{heading} [{Unit}]";
    }

    /// <summary>The field's name.</summary>
    public string Name { get; }

    /// <summary>A unit that it may have; none where it is a text or a plain number.</summary>
    public string? Unit { get; }

    /// <summary>What it is.</summary>
    public string Meaning { get; }

    /// <summary>True where each reading has one, false where the test has one.</summary>
    public bool IsReading { get; }

    /// <summary>True where it may be left out.</summary>
    public bool IsOptional { get; }

    /// <summary>As it stands in the head of the file.</summary>
    public string Heading { get; }

    /// <summary>The columns of a kind of test, those of the readings last.</summary>
    /// <param name="kind">The kind.</param>
    /// <returns>In the order of the file.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kind.</exception>
    public static IReadOnlyList<BenchColumn> Of(BenchTestKind kind)
    {
        Field list = BenchForm.File.Form.Fields[(int)Guard.Member(kind, "Give a kind of bench test.", nameof(kind))];
        IReadOnlyList<Field> fields = list.Inner!.Records[0].Fields;
        Field table = fields.Single(field => field is ITableField);
        return
        [
            .. fields.Where(field => field is not ITableField).Select(field => new BenchColumn(field, field is NameField ? $"{list.Name} 1" : field.Name, isReading: false)),
            .. table.Inner!.Records[0].Fields.Select(field => new BenchColumn(field, $"{table.Name}.{field.Name}", isReading: true)),
        ];
    }

    /// <summary>As it stands in the head of the file.</summary>
    /// <returns>For instance <c>readings.time [s]</c>.</returns>
    public override string ToString() => Heading;
}
