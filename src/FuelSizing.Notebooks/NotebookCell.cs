namespace FuelSizing.Notebooks;

/// <summary>One cell of a notebook: prose in Markdown, or C#.</summary>
/// <param name="Number">Its place in the notebook, counted from 1 over all cells.</param>
/// <param name="IsCode">Whether it is C# to run rather than prose.</param>
/// <param name="Text">What it holds.</param>
/// <param name="IsInputs">Whether it is marked as a cell of inputs.</param>
/// <param name="IsSetup">Whether a setup file takes the place of all its inputs.</param>
internal sealed record NotebookCell(int Number, bool IsCode, string Text, bool IsInputs = false, bool IsSetup = false);
