namespace FuelSizing.Logs;

/// <summary>A channel of a file that is being read: where it stands and how its numbers become SI.</summary>
/// <param name="Channel">What the column holds.</param>
/// <param name="Index">Number of the cell, the first being 0.</param>
/// <param name="Field">The column's heading.</param>
/// <param name="Scale">SI units in one unit.</param>
/// <param name="Offset">SI value at the number zero, ambient pressure included.</param>
internal sealed record ReadSlot(Channel Channel, int Index, string Field, double Scale, double Offset);
