using FuelSizing.Numerics;

namespace FuelSizing.Circuits;

/// <summary>Pressure lost from the tank to where the regulator feels it.</summary>
/// <param name="Suction">On the way to the pump, Pa.</param>
/// <param name="Supply">On the way to the rail, Pa; zero where the regulator sits before that way.</param>
internal readonly record struct PathLosses(double Suction, double Supply)
{
    /// <summary>Both, Pa.</summary>
    public double Total => Suction + (Real)Supply;

    /// <summary>These losses carried on by the straight line through others: near a flow they are as good as straight.</summary>
    /// <param name="before">At a flow near this one's.</param>
    /// <param name="share">How far to go, as a share of the way from there to here.</param>
    public PathLosses CarriedOn(in PathLosses before, double share) => new(
        StraightLine.Through<Real>(0, before.Suction, 1, Suction, 1 + share),
        StraightLine.Through<Real>(0, before.Supply, 1, Supply, 1 + share));
}
