namespace FuelSizing.Tests.Equations;

/// <summary>Symbols of quantities that workings, tables or the glossary show and no public equation has; the page of symbols lists them too.</summary>
internal static class FurtherSymbols
{
    public static readonly IReadOnlyList<Symbol> All =
    [
        Of("e_f", "1", "fuel mass flow from power ÷ that from air, less one"),
        Of("I_n", "A", "rated current of the fuse"),
        Of("k_R", "m", "roughness of the wall of the line"),
        Of("l_back", "m", "length of the conductor from the motor back"),
        Of("l_out", "m", "length of the conductor from the source to the motor"),
        Of("NPSP_min", "Pa", "minimum permitted net positive suction pressure"),
        Of("N_s", "1", "number of samples"),
        Of("n_max", "rev/s", "maximum engine speed"),
        Of("Δp_m", "Pa", "differential pressure at which a flow of the injector was measured"),
        Of("Q_m", "m³/s", "flow of the injector measured there"),
        Of("Δp_l", "Pa", "pressure drop of a line, or of another part that is no filter, static head included"),
        Of("p_lim", "Pa", "pressure rating, maximum permitted rail pressure, gauge"),
        Of("p_m", "Pa", "pressure of the air of the measured pull, absolute"),
        Of("Δp_max", "Pa", "maximum opening differential pressure of the injector"),
        Of("Δp_min", "Pa", "minimum differential pressure of the injector, from which its flow is known"),
        Of("p_law", "Pa", "pressure that a regulator sets by a law of your own, gauge"),
        Of("p_off", "Pa", "offset of the regulator from its kind"),
        Of("Δp_tr", "Pa", "pressure lost between the pump and a regulator before the rail"),
        Of("p_held", "Pa", "pressure that the regulator holds at the returned flow, gauge"),
        Of("Δp_ret", "Pa", "pressure drop of the return line"),
        Of("Δp_sag", "Pa", "sag, set pressure − rail pressure"),
        Of("P_Rc", "W", "heat in the contacts"),
        Of("P_Rw", "W", "heat in the wire"),
        Of("Q_Fmax", "m³/s", "maximum flow that the data of the filter covers"),
        Of("S_1", "1", "first-order index of variance"),
        Of("S_T", "1", "total-order index of variance"),
        Of("T_m", "K", "temperature of the air of the measured pull"),
        Of("t_min", "s", "minimum pulse width, dead time included"),
        Of("V_f", "V", "voltage that a controller feeds to the pumps"),
        Of("V_min", "V", "minimum voltage at which a controller runs the pumps"),
        Of("ΔV_c", "V", "voltage drop in the contacts"),
        Of("ΔV_w", "V", "voltage drop in the wire"),
        Of("w", "1", "weight of turbulent friction in its blend with laminar friction"),
        Of("x", "1", "share of the way from laminar to turbulent flow"),
        Of("x_tb", "1", "share of the main fuel that is taken back for a second stream"),
        Of("x_V", "1", "share of the supply voltage that is lost"),
        Of("Y_L", "1", "left side of the equation of Colebrook and White, 1/√f"),
        Of("Y_R", "1", "right side of the equation of Colebrook and White"),
        Of("D_h", "1", "duty cycle of the primary set of injectors at which a hand-over begins"),
        Of("Q_f1", "m³/s", "fuel flow of the primary set of injectors"),
        Of("ρ_m", "kg/m³", "density of the air of the measured pull"),
    ];

    private static Symbol Of(string name, string unit, string meaning) => new(name, unit, meaning, string.Empty, string.Empty);
}
