using FuelSizing.Quantities;

namespace FuelSizing.Conformance;

/// <summary>Tries rules one after another; what a part throws breaks the rule that was tried.</summary>
internal sealed class RuleTrial(Statement subject)
{
    private readonly List<ConformanceRule> _rules = [];

    /// <summary>All that was tried.</summary>
    public ConformanceReport Report => new(subject, _rules.AsReadOnly());

    /// <summary>Tries a rule.</summary>
    /// <param name="requirement">What is required.</param>
    /// <param name="fault">How it is broken, or none.</param>
    public RuleTrial That(Statement requirement, Func<Statement?> fault)
    {
        Statement? found;
        try
        {
            found = fault();
        }
#pragma warning disable CA1031 // Whatever a part of the user's throws is its fault, and the report's to tell.
        catch (Exception thrown)
#pragma warning restore CA1031
        {
            found = Statement.Of("conformance.throws", $"it throws {thrown.GetType().Name}: {thrown.Message}");
        }

        _rules.Add(new(requirement, found));
        return this;
    }

    /// <summary>Tries that a function of places gives the same to the last bit when it is asked again, in another order and on several threads.</summary>
    /// <param name="count">How many places.</param>
    /// <param name="at">The function, of a place's number.</param>
    public RuleTrial IsPure(int count, Func<int, double> at) => That(
        Statement.Of("conformance.rule-pure", $"the same place gives the same figure, in any order and on any thread"),
        () =>
        {
            double[] first = [.. Enumerable.Range(0, count).Select(at)];
            double[] backward = new double[count];
            for (int place = count - 1; place >= 0; place--)
            {
                backward[place] = at(place);
            }

            double[] beside = new double[count];
            Parallel.For(0, count, place => beside[place] = at(place));
            for (int place = 0; place < count; place++)
            {
                if (!first[place].Equals(backward[place]) || !first[place].Equals(beside[place]))
                {
                    return Statement.Of("conformance.not-pure", $"asked again, place {place} of {count} gives another figure");
                }
            }

            return null;
        });
}
