namespace FuelSizing.Logs;

/// <summary>A recorded run that cannot be read at all: no line, or no column of speed.</summary>
public sealed class RunFileException : FormatException
{
    internal RunFileException(RunProblem problem)
        : base(problem.ToString()) => Problem = problem;

    /// <summary>What is wrong, and where.</summary>
    public RunProblem Problem { get; }
}
