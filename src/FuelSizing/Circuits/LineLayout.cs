namespace FuelSizing.Circuits;

/// <summary>Where surplus fuel goes back.</summary>
public enum LineLayout
{
    /// <summary>The regulator sits at the rail; surplus returns through a line to the tank.</summary>
    Return,

    /// <summary>The regulator sits in or at the tank; only injected fuel goes forward to the rail.</summary>
    Returnless,
}
