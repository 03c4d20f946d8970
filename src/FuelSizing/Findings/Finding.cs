using FuelSizing.Logs;

namespace FuelSizing.Findings;

/// <summary>An answer from a run, or the reason why the run does not hold one.</summary>
/// <typeparam name="T">What was asked.</typeparam>
public sealed record Finding<T>
    where T : class
{
    private Finding(T? answer, string reason, IReadOnlyList<Channel> missing) =>
        (Answer, Reason, Missing) = (answer, reason, [.. missing]);

    /// <summary>The answer; none where it cannot be told.</summary>
    public T? Answer { get; }

    /// <summary>Why it cannot be told; empty where it can.</summary>
    public string Reason { get; }

    /// <summary>Channels whose lack is the reason.</summary>
    public IReadOnlyList<Channel> Missing { get; }

    /// <summary>The answer or the reason in words.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => Answer?.ToString() ?? $"cannot tell: {Reason}";

    internal static Finding<T> Of(T answer) => new(answer, string.Empty, []);

    internal static Finding<T> CannotTell(string reason, params Channel[] missing) => new(null, reason, missing);
}
