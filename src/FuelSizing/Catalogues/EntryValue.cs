namespace FuelSizing.Catalogues;

/// <summary>One value as it stands in a file.</summary>
/// <param name="Text">The value; in a spreadsheet's cell without its unit where the column's head has it.</param>
/// <param name="Unit">The unit in the column's head; none where there is none.</param>
/// <param name="Line">In the file, from 1.</param>
internal readonly record struct EntryValue(string Text, string? Unit, int Line);
