using FuelSizing.Conformance;

namespace FuelSizing.Interactive;

/// <summary>How it is shown whether a part of one's own keeps the rules.</summary>
internal static class ConformanceShown
{
    public static void Register()
    {
        Shown.By<ConformanceReport>((report, style) => new(
            $"Rules for a part of your own: {PartText.Say(report.Subject, style)}",
            [
                Fact.Words("Kept", report.Conforms ? "all, as far as they were tried" : $"{report.Rules.Count - report.Faults.Count} of {report.Rules.Count}"),
                .. report.Faults.Select(rule => Fact.Words("Broken", PartText.Say(rule, style))),
            ]));
        Shown.By<ConformanceRule>((rule, style) => new(
            "Rule for a part of your own",
            [Fact.Words("Required", PartText.Say(rule.Requirement, style)), Fact.Words("Kept", rule.Fault is { } fault ? $"no: {PartText.Say(fault, style)}" : "yes, as far as it was tried")]));
    }
}
