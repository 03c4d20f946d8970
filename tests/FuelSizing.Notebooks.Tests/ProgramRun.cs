namespace FuelSizing.Notebooks.Tests;

/// <summary>What a run of the program left behind.</summary>
internal sealed record ProgramRun(int Code, string Output, string Error, string? Report);
