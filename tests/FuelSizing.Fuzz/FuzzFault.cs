namespace FuelSizing.Fuzz;

/// <summary>A fault that an input brought out.</summary>
/// <param name="Kind">Tells one fault from another.</param>
/// <param name="Words">What was thrown, in full.</param>
/// <param name="Number">Of the input that showed it first.</param>
internal sealed record FuzzFault(string Kind, string Words, long Number)
{
    /// <summary>The fault of an exception; one kind for each place that throws.</summary>
    public static FuzzFault Of(Exception thrown, long number)
    {
        string place = (thrown.StackTrace ?? string.Empty).Split('\n')
            .FirstOrDefault(line => line.Contains("FuelSizing", StringComparison.Ordinal) && !line.Contains(nameof(BrokenPromiseException), StringComparison.Ordinal))?.Trim() ?? string.Empty;
        return new($"{thrown.GetType().Name} {(thrown is BrokenPromiseException ? thrown.Message : string.Empty)} {place}", thrown.ToString(), number);
    }
}
