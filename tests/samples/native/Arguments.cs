using FuelSizing.Quantities;

namespace FuelSizing.Samples;

/// <summary>What was asked for on the command line.</summary>
/// <param name="Setup">The setup's file.</param>
/// <param name="Point">The name of the one point to solve; all of them if there is none.</param>
/// <param name="Style">Units of the sentences. It goes with each call; nothing is set for the process.</param>
/// <param name="Accepted">Fields whose values are confirmed although they are not plausible.</param>
internal sealed record Arguments(string Setup, string? Point, TextStyle Style, IReadOnlyList<string> Accepted)
{
    public const string Usage =
        """
        usage: Native SETUP [--point NAME] [--si | --us] [--accept FIELD]...

        Solves the operating points of a setup's file and prints the verdict and each margin.
        Exit code: 0 all holds, 5 holds as far as judged, 4 cannot be said, 3 something fails,
                   2 the input is wrong, 6 a value is not plausible and was not confirmed.
        """;

    /// <summary>Reads them; none where they are wrong.</summary>
    public static Arguments? Of(string[] args)
    {
        List<string> files = [];
        List<string> accepted = [];
        (string? point, TextStyle style) = (null, TextStyle.Metric);
        for (int i = 0; i < args.Length; i++)
        {
            bool isLast = i == args.Length - 1;
            switch (args[i])
            {
                case "--si":
                    style = TextStyle.Metric;
                    break;
                case "--us":
                    style = TextStyle.UsCustomary;
                    break;
                case "--point" when !isLast:
                    point = args[++i];
                    break;
                case "--accept" when !isLast:
                    accepted.Add(args[++i]);
                    break;
                case var option when option.StartsWith('-'):
                    return null;
                case var file:
                    files.Add(file);
                    break;
            }
        }

        return files is [var setup] ? new(setup, point, style, accepted) : null;
    }
}
