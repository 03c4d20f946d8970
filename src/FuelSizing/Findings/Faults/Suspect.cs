namespace FuelSizing.Findings;

/// <summary>A fault with what a run makes of it.</summary>
/// <param name="Fault">Which.</param>
/// <param name="Probability">That it is there, alone or with another.</param>
/// <param name="Evidence">Twice ln of the Bayes factor against a sound car, of this fault alone.</param>
/// <param name="Fit">The likeliest state of the car with it; null where the evidence is not from a fit.</param>
internal sealed record Suspect(RunFault Fault, double Probability, double Evidence, RunFit? Fit);
