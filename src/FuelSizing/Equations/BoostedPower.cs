using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Brake power of an engine, scaled from a measured pull by charge density.</summary>
internal static class BoostedPower
{
    /// <summary>Crank power from wheel power, W: P/(1 − loss).</summary>
    /// <param name="wheelPower">W.</param>
    /// <param name="drivetrainLoss">Fraction of crank power.</param>
    public static T CrankFromWheel<T>(T wheelPower, T drivetrainLoss)
        where T : struct, IReal<T> => wheelPower / (1.0 - drivetrainLoss);

    /// <summary>Crank power by another drivetrain loss over crank power by the first, from one wheel power.</summary>
    /// <param name="loss">Fraction of crank power.</param>
    /// <param name="formerLoss">Fraction of crank power.</param>
    public static T CrankAgain<T>(T loss, T formerLoss)
        where T : struct, IReal<T> => CrankFromWheel<T>(1, loss) / CrankFromWheel<T>(1, formerLoss);

    /// <summary>Charge density against that of the measured pull: ρ/ρ_m.</summary>
    /// <param name="chargeDensity">ρ in the manifold, kg/m³.</param>
    /// <param name="measuredDensity">ρ_m of the air in the measured pull, kg/m³.</param>
    public static T DensityRatio<T>(T chargeDensity, Divisor<T> measuredDensity)
        where T : struct, IReal<T> => chargeDensity / measuredDensity;

    /// <summary>
    /// Brake power, W: P_m/η_m · D − P_m (1/η_m − 1) − P_d, never below zero. Indicated power grows with charge density
    /// while friction stays what it was.
    /// </summary>
    /// <param name="measuredPower">Crank power of the measured pull at this speed, P_m.</param>
    /// <param name="mechanicalEfficiency">Brake ÷ indicated power of the measured pull, η_m.</param>
    /// <param name="densityRatio">D.</param>
    /// <param name="drivePower">Taken from the crank by a belt-driven compressor, P_d, W.</param>
    public static T Brake<T>(T measuredPower, Divisor<T> mechanicalEfficiency, T densityRatio, T drivePower)
        where T : struct, IReal<T>
    {
        T indicated = measuredPower / mechanicalEfficiency;
        T friction = indicated - measuredPower;
        return T.Max(0, (indicated * densityRatio) - friction - drivePower);
    }
}
