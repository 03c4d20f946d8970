namespace FuelSizing.Tests.Sources;

/// <summary>How a published number, or the source of a constant, came into this repository. Nothing may stay unclassed.</summary>
internal enum Obtained
{
    /// <summary>Nobody said: refused.</summary>
    Unclassed,

    /// <summary>The printed number was read in the source itself, or in the source's own public text.</summary>
    Read,

    /// <summary>The printed number was read as somebody who is named transcribed it.</summary>
    Transcribed,

    /// <summary>Inputs were read or transcribed; the answer was worked from them by hand or by plain arithmetic in the test, without the library.</summary>
    WorkedApart,

    /// <summary>From memory, or by whom it was transcribed was not written down: no check until somebody has read it.</summary>
    Recalled,

    /// <summary>From a definition or a law in another form: it tries the code, not the law.</summary>
    Derived,

    /// <summary>A rule of thumb: common practice, no source.</summary>
    CommonPractice,

    /// <summary>The project's own choice: a tolerance, a step or a limit of a method, no claim about fuel systems.</summary>
    Chosen,
}

/// <summary>One row of the register of sources: the work, how its numbers came here, and what they are independent of.</summary>
internal sealed class Source
{
    private Source(Obtained obtained, string work, string how, string independentOf, Source? row) =>
        (Obtained, Work, How, IndependentOf, Row) = (obtained, work, how, independentOf, row ?? this);

    /// <summary>The class.</summary>
    public Obtained Obtained { get; }

    /// <summary>Author, title, edition, place, and DOI or ISBN where known.</summary>
    public string Work { get; }

    /// <summary>Who read or transcribed it where, or how it was worked.</summary>
    public string How { get; }

    /// <summary>What in the library the numbers owe nothing to.</summary>
    public string IndependentOf { get; }

    /// <summary>The row of the register; itself unless a place within it was named.</summary>
    public Source Row { get; }

    /// <summary>True if agreement with it says something about the world: recalled and derived numbers do not count.</summary>
    public bool IsCheck => Obtained is Obtained.Read or Obtained.Transcribed or Obtained.WorkedApart;

    /// <summary>The words for a class, as the page has them.</summary>
    public static string Word(Obtained obtained) => obtained switch
    {
        Obtained.Read => "read",
        Obtained.Transcribed => "transcribed",
        Obtained.WorkedApart => "worked apart",
        Obtained.Recalled => "recalled",
        Obtained.Derived => "derived",
        Obtained.CommonPractice => "common practice, no source",
        Obtained.Chosen => "our own choice",
        _ => throw new ArgumentOutOfRangeException(nameof(obtained), obtained, "Class every row of the register."),
    };

    /// <summary>A row.</summary>
    public static Source Of(Obtained obtained, string work, string how, string independentOf)
    {
        _ = Word(obtained);
        ArgumentException.ThrowIfNullOrWhiteSpace(work);
        ArgumentException.ThrowIfNullOrWhiteSpace(how);
        ArgumentException.ThrowIfNullOrWhiteSpace(independentOf);
        return new(obtained, work, how, independentOf, null);
    }

    /// <summary>A place in the work, of the same class.</summary>
    public Source At(string place) => new(Obtained, $"{Work}, {place}", How, IndependentOf, Row);
}
