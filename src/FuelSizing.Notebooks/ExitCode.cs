namespace FuelSizing.Notebooks;

/// <summary>What the program tells its caller.</summary>
internal static class ExitCode
{
    /// <summary>Every cell ran. A verdict that says "fails" is a result, not a failure of the run.</summary>
    public const int Ran = 0;

    /// <summary>A cell failed or was stopped; the report holds what came before it, and says which and why.</summary>
    public const int CellFailed = 1;

    /// <summary>The arguments are wrong, or the notebook cannot be read or may not be run.</summary>
    public const int BadInput = 2;
}
