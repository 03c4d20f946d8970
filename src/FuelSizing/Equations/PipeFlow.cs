using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Flow of a liquid through a round pipe and what it costs in pressure.</summary>
internal static class PipeFlow
{
    /// <summary>Mean velocity, m/s: V = 4 Q/(π D²).</summary>
    /// <param name="flow">Q, m³/s.</param>
    /// <param name="bore">D, m.</param>
    public static T Velocity<T>(T flow, T bore)
        where T : struct, IReal<T> => flow * (4 / Math.PI) / (bore * bore);

    /// <summary>Reynolds number: Re = V D/ν.</summary>
    /// <param name="velocity">V, m/s.</param>
    /// <param name="bore">D, m.</param>
    /// <param name="kinematicViscosity">ν, m²/s.</param>
    public static T Reynolds<T>(T velocity, T bore, T kinematicViscosity)
        where T : struct, IReal<T> => velocity * bore / kinematicViscosity;

    /// <summary>
    /// Pressure lost along a straight pipe, Pa: Darcy–Weisbach Δp = f (L/D) ρ V²/2, written with f = (f Re) ν/(V D) as
    /// Δp = (f Re) ρ ν L V/(2 D²), which is zero and not 0/0 when the flow stops.
    /// </summary>
    /// <param name="frictionNumber">f Re, from <see cref="PipeFriction.Number"/>.</param>
    /// <param name="length">L, m.</param>
    /// <param name="bore">D, m.</param>
    /// <param name="density">ρ, kg/m³.</param>
    /// <param name="kinematicViscosity">ν, m²/s.</param>
    /// <param name="velocity">V, m/s.</param>
    public static T StraightLoss<T>(
        T frictionNumber, T length, T bore, T density, T kinematicViscosity, T velocity)
        where T : struct, IReal<T> =>
        frictionNumber * density * kinematicViscosity * length * velocity / (2.0 * bore * bore);

    /// <summary>Pressure lost in fittings, Pa: Δp = K ρ V²/2.</summary>
    /// <param name="lossCoefficient">K, the sum over the fittings.</param>
    /// <param name="density">ρ, kg/m³.</param>
    /// <param name="velocity">V, m/s.</param>
    public static T FittingsLoss<T>(T lossCoefficient, T density, T velocity)
        where T : struct, IReal<T> => lossCoefficient * density * velocity * velocity * 0.5;

    /// <summary>Pressure of a column of liquid, Pa: Δp = ρ g h.</summary>
    /// <param name="density">ρ, kg/m³.</param>
    /// <param name="height">h, m: above zero where the pipe rises and pressure is lost.</param>
    public static T Column<T>(T density, T height)
        where T : struct, IReal<T> => density * StandardAir.Gravity * height;
}
