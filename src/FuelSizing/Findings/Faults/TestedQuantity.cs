using FuelSizing.Quantities;

namespace FuelSizing.Findings;

/// <summary>What a proposed test measures.</summary>
/// <param name="Quantity">What of the model, in SI; none of a further pull, which reads the rail.</param>
/// <param name="Deviation">Standard deviation of the measurement, SI.</param>
/// <param name="What">In words.</param>
internal sealed record TestedQuantity(RunQuantity? Quantity, double Deviation, Statement What);
