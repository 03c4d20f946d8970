namespace FuelSizing.Interactive;

/// <summary>Where the label of an upright line stands.</summary>
/// <param name="Lane">0 is the lane next to the plot.</param>
/// <param name="ToTheRight">On which side of its pole.</param>
internal readonly record struct FlagPlace(int Lane, bool ToTheRight);
