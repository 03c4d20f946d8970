namespace FuelSizing.Files;

/// <summary>The words that stand for a few values in files.</summary>
internal sealed class Words<T>(params (T Value, string Word)[] words)
    where T : struct, Enum
{
    /// <summary>The value of a field; the first where none is given and none is needed.</summary>
    public T Read(EntryReader reader, string field, bool required = true)
    {
        string word = reader.Word(field, required, [.. words.Select(pair => pair.Word)]);
        return words.First(pair => pair.Word == word).Value;
    }

    /// <summary>The word for a value.</summary>
    public string Of(T value) => words.First(pair => pair.Value.Equals(value)).Word;
}
