using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>Pressures round a fuel circuit: what the pumps must add, and what is left in the rail.</summary>
/// <remarks>Gauge pressures, over the air that the tank breathes. A loss holds friction and height together.</remarks>
internal static class CircuitPressure
{
    /// <summary>At the pump's inlet, Pa: p_pi = 0 − Δp_suc.</summary>
    /// <param name="suctionLoss">Δp_suc, lost from the tank to the pump, Pa.</param>
    public static T Inlet<T>(T suctionLoss)
        where T : struct, IReal<T> => (T)0 - suctionLoss;

    /// <summary>At the pump's outlet, Pa: p_po = p_reg + Δp_sup.</summary>
    /// <param name="regulated">p_reg where the regulator holds it, Pa.</param>
    /// <param name="supplyLoss">Δp_sup, lost from the pump to there, Pa.</param>
    public static T Outlet<T>(T regulated, T supplyLoss)
        where T : struct, IReal<T> => regulated + supplyLoss;

    /// <summary>Pressure lost from the tank to where the regulator holds the pressure, Pa: Δp_suc + Δp_sup.</summary>
    /// <param name="suctionLoss">Δp_suc, lost from the tank to the pump, Pa.</param>
    /// <param name="supplyLoss">Δp_sup, lost from the pump to the regulator, Pa.</param>
    public static T Losses<T>(T suctionLoss, T supplyLoss)
        where T : struct, IReal<T> => suctionLoss + supplyLoss;

    /// <summary>Pressure rise by the system curve, Pa: Δp_sys = Δp_suc + Δp_sup + p_reg.</summary>
    /// <param name="losses">Δp_suc + Δp_sup, Pa.</param>
    /// <param name="regulated">p_reg where the regulator holds it, Pa.</param>
    public static T RiseRequired<T>(T losses, T regulated)
        where T : struct, IReal<T> => losses + regulated;

    /// <summary>Pressure where the regulator would hold it, but is shut, Pa: p_reg = Δp_p − (Δp_suc + Δp_sup).</summary>
    /// <param name="pumpRise">Δp_p by the pumps' curve at the flow injected, Pa.</param>
    /// <param name="losses">Δp_suc + Δp_sup, Pa.</param>
    public static T Remaining<T>(T pumpRise, T losses)
        where T : struct, IReal<T> => pumpRise - losses;

    /// <summary>In a rail beyond a regulator at the tank, Pa: p_r = p_reg − Δp_sup.</summary>
    /// <param name="regulated">p_reg at the regulator, Pa.</param>
    /// <param name="supplyLoss">Δp_sup, lost from there to the rail, Pa.</param>
    public static T RailBeyond<T>(T regulated, T supplyLoss)
        where T : struct, IReal<T> => regulated - supplyLoss;
}
