using FuelSizing.Equations;
using FuelSizing.Numerics;

namespace FuelSizing.Fuels;

/// <summary>Dynamic viscosity against temperature: ln μ = A + B/T + C ln T, SI.</summary>
internal readonly record struct ViscosityLaw(double A, double B, double C)
{
    /// <summary>Perry's Chemical Engineers' Handbook, 8th edition, table 2-313; given for 200 to 440 K.</summary>
    public static ViscosityLaw Ethanol { get; } = new(7.875, 781.98, -3.0418);

    /// <summary>
    /// Perry's Chemical Engineers' Handbook, 8th edition, table 2-313; given for 175 to 338 K (65 °C, its boiling point).
    /// </summary>
    public static ViscosityLaw Methanol { get; } = new(-25.317, 1789.2, 2.069);

    /// <summary>The law ln μ = A + B/T through two kinematic viscosities of a fuel of known density.</summary>
    public static ViscosityLaw Through(Fuel fuel, double t1, double kinematic1, double t2, double kinematic2)
    {
        Real first = LiquidViscosity.FromKinematic<Real>(kinematic1, fuel.DensityAtKelvins(t1));
        Real second = LiquidViscosity.FromKinematic<Real>(kinematic2, fuel.DensityAtKelvins(t2));
        Real slope = InverseTemperature.Slope<Real>(t1, first, t2, second);
        return new(InverseTemperature.Intercept<Real>(t1, first, slope), slope, 0);
    }

    /// <summary>Pa·s.</summary>
    public double DynamicAt(double kelvins) => LiquidViscosity.Dynamic<Real>(A, B, C, kelvins);
}
