namespace FuelSizing.Pumps;

/// <summary>What a pump in series does when more flows than it can pass by itself.</summary>
public enum SeriesBypass
{
    /// <summary>A check valve around it opens: the rest passes beside it, and it adds no pressure.</summary>
    CheckValve = 0,

    /// <summary>Nothing: no more passes than the weakest stage lets through.</summary>
    None = 1,
}
