using System.Reflection;
using System.Runtime.CompilerServices;
using CsCheck;
using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Tests.Equations;

/// <summary>
/// Every equation in other units: what comes out changes as its dimension says, and a plain number not at all. A factor left
/// out, a term that does not belong, an exponent that is wrong: none of them passes.
/// </summary>
/// <remarks>
/// Arguments are sampled over the ranges of the table, and units over powers of four, so that rounding is the same in both
/// units and results must agree to the last bit. Only where an argument is itself a logarithm does another unit add to it, and
/// the sum is rounded: a few ulps of it, whose exponential moves by as much as a share.
/// </remarks>
public class DimensionTests
{
    /// <summary>A logarithm of about 30, rounded a few times at 2^−53, is off by less than 2e-14; so is its exponential, as a share.</summary>
    private const double OfLogarithms = 5e-14;

    /// <summary>Kinds of number, what writes a working, tables and solvers; none is an equation of quantities.</summary>
    private static readonly Type[] NoEquations =
    [
        typeof(Real), typeof(TwoLanes), typeof(FourLanes), typeof(Lanes), typeof(Traced), typeof(Term), typeof(Divisor<>), typeof(Elementary),
        typeof(Curve), typeof(Bracket), typeof(LowestPlace), typeof(Secant), typeof(Significant),
    ];

    private static readonly string?[] Namespaces = [typeof(InjectorFlow).Namespace, typeof(Real).Namespace];

    public static TheoryData<string> Names => [.. EquationForms.All.Select(form => form.Name)];

    public static TheoryData<string> WithConstants => [.. EquationForms.All.Where(form => form.Constants.Length > 0).Select(form => form.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Equation_InOtherUnits_SaysTheSame(string name)
    {
        EquationForm form = EquationForms.All.Single(form => form.Name == name);
        Samples(form, Changes(form.Constants)).Sample(
            (numbers, change) =>
            {
                for (int result = 0; result < form.Results.Length; result++)
                {
                    (double expected, double actual) = Both(form, numbers, change, result);
                    Assert.True(double.IsFinite(expected), $"{name} gave {expected}: sample it where it holds.");
                    Assert.Equal(expected, actual, Tolerance(form) * Math.Max(Math.Abs(expected), form.Results[result].IsLogarithm ? 1 : 0));
                }
            },
            iter: 300,
            threads: 1);
    }

    /// <summary>An equation may claim a constant only if it has one: in units of which the constant knows nothing, it is wrong.</summary>
    [Theory]
    [MemberData(nameof(WithConstants))]
    public void Equation_WithAConstantThatHasAUnit_HoldsInThatUnitAlone(string name)
    {
        EquationForm form = EquationForms.All.Single(form => form.Name == name);
        Assert.NotEmpty(form.Because);
        for (int left = 0; left < form.Constants.Length; left++)
        {
            Dimension constant = form.Constants[left];
            UnitChange[] changes = [.. Changes([.. form.Constants.Where((_, place) => place != left)]).Where(change => !change.Leaves(constant))];
            bool Differs((double[] Numbers, UnitChange Change) sample) => Enumerable.Range(0, form.Results.Length)
                .Any(result => Both(form, sample.Numbers, sample.Change, result) is var (expected, actual) && Math.Abs(actual - expected) > 1e-6 * Math.Abs(expected));

            Gen<(double[], UnitChange)> samples = Samples(form, changes);
            PCG chance = new(1, 1);
            Assert.True(Enumerable.Range(0, 200).Any(_ => Differs(samples.Generate(chance, null, out Size _))), $"{name} claims a constant of {constant}, and holds without.");
        }
    }

    [Fact]
    public void Equations_OfTheLibrary_AreAllInTheTableOnce()
    {
        string[] functions =
        [
            .. typeof(InjectorFlow).Assembly.GetTypes()
                .Where(type => Namespaces.Contains(type.Namespace) && !type.IsInterface && !type.IsEnum && !NoEquations.Contains(type))
                .Where(type => type.GetCustomAttribute<CompilerGeneratedAttribute>() is null && !type.IsNested)
                .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly)
                    .Where(method => (method.IsPublic || method.IsAssembly) && !method.IsSpecialName && !method.IsVirtual)
                    .Where(method => method.GetCustomAttribute<CompilerGeneratedAttribute>() is null)
                    .Select(method => $"{type.Name.Split('`')[0]}.{method.Name}"))
                .Order(StringComparer.Ordinal),
        ];
        Assert.Equal(functions, EquationForms.All.Select(form => form.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Sum_OfALengthAndAnArea_IsFound()
    {
        EquationForm wrong = new(
            "wrong", [new("a", Dimension.Metre, 1, 2), new("b", Dimension.Area, 1, 2)], [Dimension.Metre], numbers => [numbers[0] + numbers[1]]);
        Assert.Contains(
            UnitChange.All,
            change => Both(wrong, [1, 2], change, 0) is var (expected, actual) && Math.Abs(actual - expected) > Tolerance(wrong));
    }

    private static UnitChange[] Changes(Dimension[] constants) => [.. UnitChange.All.Where(change => constants.All(change.Leaves))];

    private static Gen<(double[] Numbers, UnitChange Change)> Samples(EquationForm form, UnitChange[] changes) =>
        Gen.Select(
            Gen.Double.Unit.Array[form.Arguments.Length].Select(shares =>
                shares.Select((share, place) => form.Arguments[place].Minimum + (share * (form.Arguments[place].Maximum - form.Arguments[place].Minimum))).ToArray()),
            Gen.OneOfConst(changes));

    /// <summary>A result turned into the other units, and the result of what was turned into them.</summary>
    private static (double Expected, double Actual) Both(EquationForm form, double[] numbers, UnitChange change, int result) => (
        change.Of(form.Evaluate(numbers)[result], form.Results[result]),
        form.Evaluate([.. numbers.Select((number, place) => change.Of(number, form.Arguments[place].Dimension))])[result]);

    private static double Tolerance(EquationForm form) =>
        form.Arguments.Any(argument => argument.Dimension.IsLogarithm) || form.Results.Any(result => result.IsLogarithm) ? OfLogarithms : 0;
}
