using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Viscosity of a liquid fuel against temperature.</summary>
internal static class LiquidViscosity
{
    /// <summary>Dynamic viscosity, Pa·s: ln μ = A + B/T + C ln T, the form of Perry's table 2-313.</summary>
    /// <param name="a">A.</param>
    /// <param name="b">B, K.</param>
    /// <param name="c">C.</param>
    /// <param name="temperature">T, K.</param>
    /// <remarks>
    /// A blend takes A, B and C by volume share (<see cref="FuelMixing.ByShare"/>), which is Arrhenius' rule
    /// ln μ = Σ φ ln μ_i.
    /// </remarks>
    public static T Dynamic<T>(T a, T b, T c, T temperature)
        where T : struct, IReal<T> => T.Exp(a + (b / temperature) + (c * T.Log(temperature)));

    /// <summary>Kinematic viscosity, m²/s: ν = μ/ρ.</summary>
    /// <param name="dynamic">μ, Pa·s.</param>
    /// <param name="density">ρ, kg/m³.</param>
    public static T Kinematic<T>(T dynamic, T density)
        where T : struct, IReal<T> => dynamic / density;

    /// <summary>Dynamic viscosity, Pa·s: μ = ρ ν.</summary>
    /// <param name="kinematic">ν, m²/s.</param>
    /// <param name="density">ρ, kg/m³.</param>
    public static T FromKinematic<T>(T kinematic, T density)
        where T : struct, IReal<T> => kinematic * density;
}
