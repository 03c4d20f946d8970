namespace FuelSizing.Logs;

/// <summary>What a problem costs.</summary>
public enum ProblemEffect
{
    /// <summary>The row is not used.</summary>
    RowRefused,

    /// <summary>The row is used without this value.</summary>
    ValueLeftOut,

    /// <summary>The whole channel is left out.</summary>
    ChannelLeftOut,

    /// <summary>The file cannot be used.</summary>
    FileRefused,
}
