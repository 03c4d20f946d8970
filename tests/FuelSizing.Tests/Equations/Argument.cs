namespace FuelSizing.Tests.Equations;

/// <summary>An argument of an equation, as the test of its dimensions samples it.</summary>
/// <param name="Name">As the equation names it.</param>
/// <param name="Dimension">What it is a measure of.</param>
/// <param name="Minimum">The least sampled, in SI.</param>
/// <param name="Maximum">The most.</param>
internal sealed record Argument(string Name, Dimension Dimension, double Minimum, double Maximum);
