namespace FuelSizing.Notebooks;

/// <summary>
/// Whether code nests so deep that the compiler's parser would run out of stack, which ends the process, or of patience: it
/// calls itself for every bracket, and takes time with a power of their number.
/// </summary>
internal static class CodeNesting
{
    /// <summary>Brackets within brackets that a cell may have, and conditions within one statement; people stay under twenty.</summary>
    public const int Deepest = 200;

    /// <summary>Refuses such a cell.</summary>
    /// <exception cref="NotebookException">It nests too deep.</exception>
    public static void Check(NotebookCell cell)
    {
        int brackets = 0, conditions = 0;
        foreach (char letter in cell.Text)
        {
            brackets += letter switch
            {
                '(' or '[' or '{' => 1,
                ')' or ']' or '}' when brackets > 0 => -1,
                _ => 0,
            };
            conditions = letter switch
            {
                '?' => conditions + 1,
                ';' => 0,
                _ => conditions,
            };
            if (brackets > Deepest || conditions > Deepest)
            {
                throw new NotebookException(
                    $"Cell {cell.Number} has more than {Deepest} brackets within one another, or conditions in one statement. Cut it into smaller statements.");
            }
        }
    }
}
