namespace FuelSizing.Findings;

/// <summary>One single fault, tried on a run.</summary>
/// <param name="Fault">Which.</param>
/// <param name="Evidence">Fall of the sum of squares against no fault: twice the gain in log likelihood.</param>
/// <param name="Fit">The model with the fault; null where the evidence is not from the fit.</param>
internal sealed record Hypothesis(RunFault Fault, double Evidence, RunFit? Fit);
