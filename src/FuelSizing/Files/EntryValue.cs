namespace FuelSizing.Files;

/// <summary>One value as it stands in a file.</summary>
/// <param name="Text">The value; in a spreadsheet's cell without its unit where the column's head has it.</param>
/// <param name="Unit">The unit in the column's head; none where there is none.</param>
/// <param name="Line">In the file, from 1.</param>
/// <param name="Form">How the value is written.</param>
internal readonly record struct EntryValue(string Text, string? Unit, int Line, ValueForm Form = ValueForm.Cell)
{
    /// <summary>True where a text may stand: in quotes, or in a cell.</summary>
    public bool IsText => Form is ValueForm.Cell or ValueForm.Text;

    /// <summary>True where a plain number may stand: without quotes, or in a cell.</summary>
    public bool IsNumber => Form is ValueForm.Cell or ValueForm.Number;
}
