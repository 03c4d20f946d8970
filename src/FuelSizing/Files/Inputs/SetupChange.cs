using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FuelSizing.Quantities;

namespace FuelSizing.Files;

/// <summary>Changes one value in the text of a setup file, by its path and as a person types it.</summary>
internal static partial class SetupChange
{
    private static readonly JsonWriterOptions Layout = new() { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text with another value at a path such as <c>injectors.injector.static_flow</c> or <c>pump.curve[2].flow</c>.</summary>
    /// <param name="name">The file's name, for problems.</param>
    /// <param name="text">The file's text.</param>
    /// <param name="path">The path; the first row of a list is [0].</param>
    /// <param name="typed">The value as it was typed.</param>
    /// <returns>The new text, what stood there, what stands there now, and what was assumed; or why it is refused.</returns>
    /// <exception cref="SetupException">The text is no JSON object, or names a field twice.</exception>
    public static SetupChanged Of(string name, string text, string path, string typed)
    {
        ProblemList problems = new();
        if (SetupForm.File.Fields(new(name, text), problems) is null || problems.Any)
        {
            throw new SetupException(problems.Found, []);
        }

        JsonObject root = JsonNode.Parse(text)!.AsObject();
        try
        {
            return Changed(root, path, typed);
        }
        catch (Refusal refused)
        {
            return new(null, string.Empty, string.Empty, null, refused.Message);
        }
    }

    private static SetupChanged Changed(JsonObject root, string path, string typed)
    {
        JsonObject holder = root;
        IReadOnlyList<IRecordForm> forms = [SetupForm.File.Form];
        string[] steps = path.Split('.');
        for (int at = 0; ; at++)
        {
            Match step = Step().Match(steps[at]);
            if (!step.Success)
            {
                throw new Refusal($"\"{ProblemList.Shown(steps[at])}\" is no field's name: expected a path such as injectors.injector.static_flow or pump.curve[2].flow");
            }

            string place = string.Join('.', steps[..(at + 1)]);
            string fieldName = step.Groups["name"].Value;
            Field field = FieldOf(Fitting(forms, holder), fieldName, at == 0 ? "the setup" : string.Join('.', steps[..at]));
            if (at == steps.Length - 1 && field.Inner is null)
            {
                if (step.Groups["row"].Success)
                {
                    throw new Refusal($"{fieldName} is one value, not a list: leave [{step.Groups["row"].Value}] out");
                }

                return Written(root, holder, field, typed);
            }

            if (field.Inner is null)
            {
                throw new Refusal($"{place} is one value: nothing stands under it");
            }

            if (at == steps.Length - 1 && holder[fieldName] is not JsonArray)
            {
                throw new Refusal($"{place} holds fields: give one of them, such as {place}.{field.Inner.Records[0].Fields.First(inner => inner is not KindField).Name}");
            }

            holder = Row(holder[fieldName], place, step.Groups["row"]);
            forms = field.Inner.Records;
            if (at == steps.Length - 1)
            {
                throw new Refusal($"{place} holds fields: give one of them, such as {place}.{field.Inner.Records[0].Fields.First(inner => inner is not KindField).Name}");
            }
        }
    }

    private static JsonObject Row(JsonNode? node, string place, Group row) => node switch
    {
        JsonObject one when !row.Success => one,
        JsonObject => throw new Refusal($"{place}: this is no list, leave [{row.Value}] out"),
        JsonArray list when row.Success && int.Parse(row.Value, CultureInfo.InvariantCulture) is var at && at < list.Count => list[at]!.AsObject(),
        JsonArray list => throw new Refusal($"{place}: {(list.Count == 0 ? "an empty list has no rows to change" : $"give a row, [0] to [{list.Count - 1}]")}"),
        _ => throw new Refusal($"{place} is not in the file; write it there first"),
    };

    // Of a part that may be of several kinds, the kind that the file has.
    private static IReadOnlyList<IRecordForm> Fitting(IReadOnlyList<IRecordForm> forms, JsonObject holder)
    {
        string? kind = holder["kind"] is JsonValue value && value.TryGetValue(out string? word) ? word : null;
        IRecordForm[] fitting = [.. forms.Where(form => kind is not null && form.Fields.OfType<KindField>().Any(field => field.Word == kind))];
        return fitting.Length > 0 ? fitting : forms;
    }

    private static Field FieldOf(IReadOnlyList<IRecordForm> forms, string name, string place)
    {
        Field[] fields = [.. forms.SelectMany(form => form.Fields)];
        if (fields.FirstOrDefault(field => field.Name == name) is { } found)
        {
            return found;
        }

        string[] names = [.. fields.Select(field => field.Name).Distinct()];
        string meant = string.Join(" or ", NearestNames.Of(name, names));
        throw new Refusal($"{place} has no field {ProblemList.Shown(name)}. {(meant.Length > 0 ? $"Did you mean {meant}?" : $"It has {string.Join(", ", names)}.")}");
    }

    private static SetupChanged Written(JsonObject root, JsonObject holder, Field field, string typed)
    {
        string was = holder[field.Name] is JsonNode before ? Shown(before) : "not given";
        string? assumed = null;
        if (field.Kind is { } kind)
        {
            TypedQuantity read = Quantity(holder, field, kind, typed);
            assumed = read.Assumed;
            holder[field.Name] = kind.Text(read.Value!);
        }
        else
        {
            holder[field.Name] = field switch
            {
                NumberField or CountField or CostField when Number().IsMatch(typed.Trim()) => JsonNode.Parse(typed.Trim().TrimStart('+')),
                NumberField => throw new Refusal($"expected a plain number with a decimal point, such as {field.Sample}"),
                CountField => throw new Refusal($"expected a whole number, such as {field.Sample}"),
                TruthField when typed.Trim() is "true" or "false" => JsonValue.Create(typed.Trim() == "true"),
                TruthField => throw new Refusal("expected true or false"),
                _ when field.Name == "gauge" && Gauge().Match(typed.Trim()) is { Success: true } size => size.Groups["size"].Value,
                _ when field.Name == "gauge" => throw new Refusal("expected an AWG size, such as 12, 12AWG or 2/0"),
                _ => typed,
            };
        }

        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter json = new(buffer, Layout))
        {
            root.WriteTo(json);
        }

        return new(Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n", was, Shown(holder[field.Name]!), assumed, null);
    }

    // A bare number is in the unit that the file has there; where it has none, the unit must be said.
    private static TypedQuantity Quantity(JsonObject holder, Field field, InputKind kind, string typed)
    {
        string? stood = holder[field.Name] is JsonValue value && value.TryGetValue(out string? text) ? text : null;
        Match given = Pattern.NumberAndUnit().Match((stood ?? string.Empty).Trim());
        Enum? unit = given.Success ? kind.TryRead("1", PlainUnits.Spelt(given.Groups["unit"].Value))?.Unit : null;
        if (unit is null && double.TryParse(typed, NumberStyles.Float, CultureInfo.InvariantCulture, out _))
        {
            throw new Refusal($"expected a number with a decimal point and a unit, such as {kind.Examples}");
        }

        Injectors.TestFluid? liquid = null;
        if (field.Name == "static_flow")
        {
            string? density = holder["test_density"] is JsonValue stated && stated.TryGetValue(out string? words) ? words : null;
            liquid = density is not null && TypedQuantity.Read(density, UnitsNet.Units.DensityUnit.KilogramPerCubicMeter).Value is UnitsNet.Density known
                && known.KilogramsPerCubicMeter is >= 600 and <= 1200
                ? Injectors.TestFluid.Of("the test liquid", known)
                : Injectors.TestFluid.Heptane;
        }

        TypedQuantity read = TypedQuantity.Read(typed, unit ?? kind.AnyUnit, liquid);
        return read.Refusal is { } why ? throw new Refusal(why) : read;
    }

    private static string Shown(JsonNode node) =>
        node is JsonValue value && value.TryGetValue(out string? text) ? text : node.ToJsonString();

    [GeneratedRegex(@"^(?<name>[a-z][a-z0-9_]*)(\[(?<row>[0-9]{1,5})\])?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase)]
    private static partial Regex Step();

    [GeneratedRegex(@"^[+-]?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]{1,3})?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Number();

    [GeneratedRegex(@"^(AWG\s*)?(?<size>[0-9]{1,2}|[1-4]/0)\s*(AWG)?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase)]
    private static partial Regex Gauge();

    private sealed class Refusal(string why) : Exception(why);
}

/// <summary>What a change of a setup file's text came to.</summary>
/// <param name="Text">The new text; none where the change is refused.</param>
/// <param name="Was">What stood there.</param>
/// <param name="Is">What stands there now.</param>
/// <param name="Assumed">What was taken for granted; none where nothing was.</param>
/// <param name="Refused">Why it is refused, and what to type; none where it is not.</param>
internal sealed record SetupChanged(string? Text, string Was, string Is, string? Assumed, string? Refused);
