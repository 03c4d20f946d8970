using FuelSizing.Logs;
using FuelSizing.Quantities;

namespace FuelSizing.Findings;

/// <summary>An answer from a run, or the reason why the run does not hold one.</summary>
/// <typeparam name="T">What was asked.</typeparam>
public sealed record Finding<T> : IReadable
    where T : class, IReadable
{
    private Finding(T? answer, Statement? reason, IReadOnlyList<Channel> missing) =>
        (Answer, Reason, Missing) = (answer, reason, [.. missing]);

    /// <summary>The answer; none where it cannot be told.</summary>
    public T? Answer { get; }

    /// <summary>Why it cannot be told; none where it can.</summary>
    public Statement? Reason { get; }

    /// <summary>Channels whose lack is the reason.</summary>
    public IReadOnlyList<Channel> Missing { get; }

    /// <inheritdoc/>
    public string In(TextStyle style) => Answer?.In(style) ?? Statement.Of("run.cannot-tell", $"cannot tell: {Reason}").In(style);

    /// <summary>The answer or the reason in words, in metric units.</summary>
    /// <returns>One line.</returns>
    public override string ToString() => In(TextStyle.Metric);

    internal static Finding<T> Of(T answer) => new(answer, null, []);

    internal static Finding<T> CannotTell(Statement reason, params Channel[] missing) => new(null, reason, missing);
}
