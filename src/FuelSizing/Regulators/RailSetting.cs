using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Regulators;

/// <summary>What tells one regulator's setting from another's, in SI numbers.</summary>
/// <param name="Base">With the manifold at atmospheric pressure, gauge, Pa.</param>
/// <param name="GainBelowOnset">Rise of rail pressure for each 1 of boost below the onset.</param>
/// <param name="Gain">The same above it.</param>
/// <param name="Onset">Boost, Pa.</param>
/// <param name="Ceiling">Highest pressure set, gauge, Pa; infinite if there is none.</param>
internal readonly record struct RailSetting(
    double Base, double GainBelowOnset, double Gain, double Onset, double Ceiling = double.PositiveInfinity)
{
    /// <summary>The pressure set at a boost.</summary>
    public T At<T>(T boost)
        where T : struct, IReal<T> => RailPressure.Set(Base, GainBelowOnset, Gain, Onset, Ceiling, boost);
}
