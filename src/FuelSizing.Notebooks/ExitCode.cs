using FuelSizing.Interactive;

namespace FuelSizing.Notebooks;

/// <summary>What the program tells its caller.</summary>
internal static class ExitCode
{
    /// <summary>Every cell ran; with <c>--follow-verdict</c>, and the last verdict says that all holds.</summary>
    public const int Ran = 0;

    /// <summary>A cell failed or was stopped, or a thread that one left running failed; the report says which and why.</summary>
    public const int CellFailed = 1;

    /// <summary>The arguments are wrong, the notebook cannot be read or may not be run, or the report cannot be written.</summary>
    public const int BadInput = 2;

    /// <summary>With <c>--follow-verdict</c>: every cell ran, and the last verdict says that something fails.</summary>
    public const int VerdictFails = 3;

    /// <summary>With <c>--follow-verdict</c>: every cell ran, and the last verdict cannot say, or there is none.</summary>
    public const int NoVerdict = 4;

    /// <summary>With <c>--follow-verdict</c>: every cell ran, and the last verdict holds as far as judged: something was not judged.</summary>
    public const int NotAllJudged = 5;

    /// <summary>An input's value is possible and not plausible, and was not confirmed: nothing was run.</summary>
    public const int Implausible = 6;

    /// <summary>The code that says the same as a verdict.</summary>
    /// <param name="last">The last verdict that the notebook showed; none if it showed none.</param>
    public static int Of(Callout? last) => last?.Kind switch
    {
        CalloutKind.Holds => Ran,
        CalloutKind.HoldsAsFarAsJudged => NotAllJudged,
        CalloutKind.Fails => VerdictFails,
        _ => NoVerdict,
    };
}
