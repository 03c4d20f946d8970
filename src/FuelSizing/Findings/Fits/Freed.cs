namespace FuelSizing.Findings;

/// <summary>What a fit takes a quantity for before it has seen the run, where that is not its tolerance about the plan.</summary>
/// <param name="Quantity">Which.</param>
/// <param name="Mean">In units of its tolerance.</param>
/// <param name="Deviation">Standard deviation, in units of its tolerance.</param>
internal readonly record struct Freed(RunQuantity Quantity, double Mean, double Deviation);
