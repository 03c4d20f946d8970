namespace FuelSizing.Fuzz;

/// <summary>A reader gave an answer that its documentation rules out.</summary>
internal sealed class BrokenPromiseException(string message) : Exception(message)
{
    /// <summary>Complains unless something holds.</summary>
    public static void Unless(bool holds, string promise)
    {
        if (!holds)
        {
            throw new BrokenPromiseException(promise);
        }
    }
}
