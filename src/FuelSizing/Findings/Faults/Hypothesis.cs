namespace FuelSizing.Findings;

/// <summary>One fault, or two at once, tried on a run.</summary>
/// <param name="Fault">Which.</param>
/// <param name="Second">The other of two.</param>
/// <param name="LogFactor">ln of how much more probable it makes the run than a sound car does: the Bayes factor.</param>
/// <param name="LogDirect">ln of the same by what a channel says by itself, without a fit.</param>
/// <param name="Fit">The model with the fault; null where the evidence is not from the fit.</param>
internal sealed record Hypothesis(RunFault Fault, RunFault? Second, double LogFactor, double LogDirect, RunFit? Fit);
