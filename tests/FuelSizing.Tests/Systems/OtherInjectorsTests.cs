using FuelSizing.Checks;
using FuelSizing.Injectors;
using FuelSizing.Numerics;
using FuelSizing.Points;
using FuelSizing.Quantities;
using FuelSizing.Systems;
using FuelSizing.Tests.Files.Setups;
using UnitsNet;

namespace FuelSizing.Tests.Systems;

/// <summary>A ranking exchanges injectors by the hundred: only checks that look at them are asked again whether they apply, and what is judged is what it would be with all asked.</summary>
public class OtherInjectorsTests
{
    // At 8 V it opens later than its shortest pulse ends, so that this pulse is not judged; the other way round it is.
    private static readonly Injector Late = Injector.Of(
        "late", VolumeFlow.FromMillilitersPerMinute(500), Wren.Kpa(300), TestFluid.Heptane, DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(1.9)), (Wren.Volt(15), Wren.Ms(1.2))), Wren.Ms(1), Wren.Kpa(600));

    private static readonly Injector Soon = Injector.Of(
        "soon", VolumeFlow.FromMillilitersPerMinute(500), Wren.Kpa(300), TestFluid.Heptane, DeadTimeTable.ByVoltage((Wren.Volt(8), Wren.Ms(0.9)), (Wren.Volt(15), Wren.Ms(0.4))), Wren.Ms(1.6), Wren.Kpa(600));

    [Fact]
    public void System_WithOtherInjectors_IsJudgedByTheSameChecks()
    {
        int differs = 0;
        for (int seed = 0; seed < 12; seed++)
        {
            FuelSystem system = new SystemBuilder(seed, deepest: 0).Setup().System;
            differs += Alike(system, Late) + Alike(system, Soon);
        }

        Assert.InRange(differs, 1, 23);
        Alike(Wren.System().With(new LargeOnly()), Late);
        Alike(Wren.System(injector: 900).With(new LargeOnly()), Late);
    }

    private static int Alike(FuelSystem system, Injector injector)
    {
        InjectorSet set = InjectorSet.Of(injector, system.Injectors.Count, system.Injectors.InjectionsPerCycle);
        FuelSystem quick = system.Injecting(set, system.AskingForInjectors);
        FuelSystem whole = system.With(system.Parts.With(set));
        Assert.Equal(whole.Applicable, quick.Applicable);
        Assert.Equal(whole.NotJudged.Select(open => open.ToString()), quick.NotJudged.Select(open => open.ToString()));
        Assert.Equal(whole.Whole(Outcome.Holds), quick.Whole(Outcome.Holds));
        Assert.Same(set, quick.Injectors);
        return whole.Applicable.SequenceEqual(system.Applicable) ? 0 : 1;
    }

    // A check of one's own that applies to large injectors only.
    private sealed class LargeOnly : ICheck
    {
        public Part Part { get; } = Part.Of("own.large", "large injectors");

        public CheckFigure Figure { get; } = CheckFigure.Of("Large", LimitDirection.AtMost, si => Ratio.FromDecimalFractions(si), units => units.Share);

        public Applicability AppliesTo(SystemParts parts) =>
            parts.Injectors.Injector.StaticFlow.MillilitersPerMinute > 800 ? Applicability.Judged : Applicability.NotApplicable;

        public CheckReading<T> Read<T>(SystemParts parts, in PointValues<T> at)
            where T : struct, IReal<T> => CheckReading.AtMost<T>(1, 2);

        public Statement Explain(SolvedPoint point, in CheckReading<Real> reading) => Statement.Of("own.large", $"large");

        public Remedy? RemedyFor(RemedyTask task) => null;
    }
}
