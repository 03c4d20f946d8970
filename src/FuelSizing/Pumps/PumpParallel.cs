using FuelSizing.Electrical;

namespace FuelSizing.Pumps;

/// <summary>Pumps side by side, each behind a check valve: the same pressure rise over all, flows added.</summary>
public sealed class PumpParallel : PumpAssembly
{
    private readonly PumpAssembly[] _branches;

    private PumpParallel(PumpAssembly[] branches) =>
        (_branches, Branches) = (branches, Array.AsReadOnly(branches));

    /// <summary>The branches.</summary>
    public IReadOnlyList<PumpAssembly> Branches { get; }

    /// <inheritdoc/>
    public override string Name => $"({string.Join(" beside ", _branches.Select(branch => branch.Name))})";

    /// <inheritdoc/>
    public override IReadOnlyList<Pump> Pumps => [.. _branches.SelectMany(branch => branch.Pumps)];

    /// <summary>Puts branches in parallel, each behind a check valve.</summary>
    /// <param name="branches">Two to eight.</param>
    /// <returns>The assembly.</returns>
    /// <exception cref="ArgumentOutOfRangeException">There are too few or too many branches.</exception>
    public static PumpParallel Of(params PumpAssembly[] branches) => new(Members(branches, nameof(branches)));

    internal override bool HasOpenEnd => _branches.Any(branch => branch.HasOpenEnd);

    internal override PumpAssembly Rewired(Func<Feed, Feed> exchange) =>
        new PumpParallel(Array.ConvertAll(_branches, branch => branch.Rewired(exchange)));

    internal override RunningPumps Running(double supply, bool generous = false) =>
        new RunningParallel(Array.ConvertAll(_branches, branch => branch.Running(supply, generous)));
}
