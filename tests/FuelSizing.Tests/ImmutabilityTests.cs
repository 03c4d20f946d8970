using System.Collections;
using System.Reflection;
using System.Runtime.CompilerServices;
using FuelSizing.Files;
using FuelSizing.Findings;
using FuelSizing.Fuels;
using FuelSizing.Lines;
using FuelSizing.Logs;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Selection;
using FuelSizing.Sizing;
using FuelSizing.Systems;
using FuelSizing.Uncertainty;
using UnitsNet;

namespace FuelSizing.Tests;

/// <summary>What is built once never changes, so it may be shared between threads without a lock.</summary>
public class ImmutabilityTests
{
    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>What may change, and why that is safe.</summary>
    private static readonly Dictionary<string, string> MayChange = new()
    {
        ["StatementText._pending"] = "filled by the compiler while it evaluates one interpolated string",
        ["PumpAssembly._cached"] = "a cache of what was worked out last, replaced as a whole; a thread that misses it works it out again",
        ["PumpAssembly._wetted"] = "a cache of what was worked out last, replaced as a whole; a thread that misses it works it out again",
        ["PumpAssembly._shared"] = "worked out when first asked for; a thread that misses it works it out again",
        ["OutputSpread`1.<Sorted>k__BackingField"] = "worked out when first asked for; a thread that misses it works it out again",
        ["RunReader._rows"] = "a reader stands somewhere in its file; it is for one thread at a time, and says so",
        ["RunReader._rowsUsed"] = "the same",
    };

    private static Type[] PublicTypes { get; } = typeof(Fuel).Assembly.GetExportedTypes();

    [Fact]
    public void PublicTypes_HaveNoPropertyThatCanBeSet() =>
        Assert.Empty(
            from type in PublicTypes
            from property in type.GetProperties(All)
            where property.SetMethod is { IsPublic: true } setter
                && !setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit))
                && !MayChange.ContainsKey($"{type.Name}.{property.Name}")
            select $"{type.Name}.{property.Name}");

    [Fact]
    public void PublicTypes_HaveNoFieldThatCanBeSetAfterTheyAreBuilt() =>
        Assert.Empty(
            from type in PublicTypes
            where !type.IsEnum
            from field in type.GetFields(All)
            where !field.IsInitOnly && !field.IsLiteral && !MayChange.ContainsKey($"{type.Name}.{field.Name}")
            select $"{type.Name}.{field.Name}");

    /// <summary>The columns of <see cref="PointOutputs"/> are the caller's own, handed in to be written.</summary>
    [Fact]
    public void PublicMembers_GiveNoCollectionThatCanBeChanged() =>
        Assert.Empty(
            from type in PublicTypes
            from member in type.GetMembers(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
            let given = (member as PropertyInfo)?.PropertyType ?? (member as MethodInfo)?.ReturnType ?? (member as FieldInfo)?.FieldType
            where type != typeof(PointOutputs) && given is not null && IsMutableCollection(given)
            select $"{type.Name}.{member.Name} gives {given.Name}");

    [Fact]
    public void Exceptions_ListedHere_AreStillThere() =>
        Assert.All(
            MayChange.Keys,
            name => Assert.Contains(PublicTypes, type => type.GetMembers(All).Any(member => $"{type.Name}.{member.Name}" == name)));

    public static TheoryData<string> Names => [.. Values().Select(value => value.Name)];

    /// <summary>A list behind a read-only face can be cast back and changed; none that the library gives may be.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void Lists_ThatAResultLeadsTo_CannotBeChangedByACast(string name)
    {
        var (_, root) = Values().Single(value => value.Name == name);
        object[] lists = [.. ObjectGraph.Of(name, root()).Where(part => part.Value is IEnumerable and not string).Select(part => (part.Way, part.Value))];
        Assert.NotEmpty(lists);
        string[] mutable =
        [
            .. from (string Way, object Value) list in lists
               where list.Value is Array { Length: > 0 } or IList { IsReadOnly: false, Count: > 0 } || (list.Value is not Array && IsMutableCollection(list.Value.GetType()))
               select $"{list.Way} is a {list.Value.GetType().Name}",
        ];
        Assert.True(mutable.Length == 0, string.Join('\n', mutable));
    }

    private static (string Name, Func<object> Value)[] Values()
    {
        FuelSystem system = ThreadTests.Build(whole: true);
        OperatingPoint point = Wren.At(6000, 0.6);
        UncertainSystem Unsure() => UncertainSystem.Of(
            system, point, UncertainInput.InjectorFlowFactor(Distribution.Uniform(Wren.Percent(96), Wren.Percent(104))));
        RecordedRun Run() => RecordedRun.Of(
            "pull", Wren.Hill.Atmosphere, [.. Enumerable.Range(1, 40).Select(i => RunRow.Of(i, Wren.Rpm(2000 + (100 * i)), railGauge: Wren.Kpa(300)))]);
        return
        [
            ("system", () => system),
            ("pumps", () => PumpParallel.Of(PumpSeries.Of(SeriesBypass.None, Pump.From(Wren.Pump), Pump.From(Wren.Pump)), Pump.From(Wren.Pump))),
            ("line", () => Line.Of("line", Length.FromMillimeters(6), Length.FromMeters(1), Roughness.RubberHose, [Fitting.Elbow90.Times(3)])),
            ("mapping", () => RunMapping.Of(RunColumn.Speed("Speed"), RunColumn.RailGauge("Rail"))),
            ("stage", () => Stage.Of("now", system, point)),
            ("result", () => system.Solve(point)),
            ("working", () => system.Solve(point).Working),
            ("sweep", () => system.Sweep([Wren.Rpm(3000), Wren.Rpm(6800)], [Wren.Kpa(0), Wren.Kpa(60)], Wren.Hill)),
            ("pump wanted", () => SystemSizing.RequiredPump(system, point)),
            ("ranking", () => Ranking.Of(
                [Stage.Of("now", system, point)],
                CandidateParts.Of([Candidate.Of("A", Wren.InjectorOf(360), 1m), Candidate.Of("B", Wren.InjectorOf(900), 2m)]))),
            ("samples", () => Unsure().MonteCarlo(Sampling.Of(64))),
            ("tornado", () => Unsure().Tornado(SystemOutput.DutyCycle)),
            ("indices", () => Unsure().Sobol(SystemOutput.DutyCycle, Sampling.Of(64))),
            ("run", Run),
            ("findings", () => RunFindings.Of(system, Run())),
            ("calibration", () => Calibration.Of(system, Run())),
            ("setup", () => Setup.Of(system, ("peak", point))),
            ("catalogue", () => Catalogue.Parse("pumps.csv", "pumps 1,curve.voltage [V],curve.pressure_rise [kPa],curve.flow [L/h]\nP,13.5,0,215\nP,13.5,800,0\n")),
        ];
    }

    private static bool IsMutableCollection(Type type) =>
        type.IsArray
        || (type.IsGenericType
            && (type.GetGenericTypeDefinition() is { } open)
            && (open == typeof(List<>) || open == typeof(IList<>) || open == typeof(ICollection<>) || open == typeof(ISet<>)
                || open == typeof(Dictionary<,>) || open == typeof(IDictionary<,>) || open == typeof(HashSet<>)
                || open == typeof(Span<>) || open == typeof(Memory<>)));
}
