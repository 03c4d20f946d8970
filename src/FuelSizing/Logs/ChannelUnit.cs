namespace FuelSizing.Logs;

/// <summary>A unit as a straight line to SI: SI value = scale × number + offset.</summary>
/// <param name="Text">The unit as people write it.</param>
/// <param name="Scale">SI units in one unit.</param>
/// <param name="Offset">SI value at the number zero.</param>
/// <param name="Stoichiometric">The instrument's ratio, where lambda is written as an air-fuel ratio.</param>
internal readonly record struct ChannelUnit(string Text, double Scale, double Offset, double? Stoichiometric = null);
