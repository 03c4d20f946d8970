using FuelSizing.Workings;

namespace FuelSizing.Interactive;

/// <summary>How the lines of a working are shown: every formula is the working's own text.</summary>
internal static class WorkingShown
{
    public static void Register()
    {
        Shown.As<Working>(SizingTables.Working);
        Shown.By<WorkingStep>((step, style) => new(
            step.Name,
            [new(step.Name, step.Symbol, step.Readable, step.Equation is null ? step.Source : $"{Equation(step)} = {step.Numbers} = {step.Value}; {step.Source}")]));
    }

    /// <summary>A line of a short table: the equation where there is one, else where the value comes from.</summary>
    public static Fact Line(WorkingStep step) => new(Capital(step.Name), step.Symbol, step.Readable, step.Equation is null ? step.Source : Note(step));

    /// <summary>A line whose note is the equation alone; none where the working does not have the quantity.</summary>
    public static string Formula(Working working, string symbol) => working.Find(symbol)?.Equation ?? "";

    /// <summary>Symbol and equation, for instance <c>Δp = p_s + p_0 − p_3</c>.</summary>
    public static string Equation(WorkingStep step) => step.Equation is null ? step.Symbol : $"{step.Symbol} = {step.Equation}";

    private static string Note(WorkingStep step) => $"{step.Equation}; {step.Source}";

    /// <summary>A name as it begins a line.</summary>
    public static string Capital(string name) => $"{char.ToUpperInvariant(name[0])}{name[1..]}";
}
