using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>How warm well-mixed contents get that take up heat and lose it through walls.</summary>
public static class LumpedHeat
{
    /// <summary>Temperature at which contents lose as much heat through their walls as they take up.
    /// <para><c>T_st = T_0 + Φ/G_w</c></para>
    /// </summary>
    /// <param name="ambient"><c>T_0</c> (K): ambient temperature.</param>
    /// <param name="heat"><c>Φ</c> (W): heat that comes back to the tank.</param>
    /// <param name="conductance"><c>G_w</c> (W/K): thermal conductance of the walls, their area times their overall heat transfer coefficient.</param>
    /// <returns><c>T_st</c> (K): steady temperature of the contents.</returns>
    /// <remarks>
    /// <para>Range: a conductance above 0.</para>
    /// <para>Outside: nothing is checked; without conductance there is no steady temperature, and the result is infinite.</para>
    /// <example>
    /// <code>
    /// Real result = LumpedHeat.Steady&lt;Real&gt;(ambient: 300, heat: 60, conductance: 4);
    /// // result = 315 K
    /// </code>
    /// </example>
    /// <para>Source: energy balance of contents of one temperature, in steady state.</para>
    /// </remarks>
    public static T Steady<T>(T ambient, T heat, T conductance)
        where T : struct, IReal<T> => ambient + (heat / conductance);

    /// <summary>Time constant of contents that exchange heat through their walls.
    /// <para><c>τ_T = m_T · c_f/G_w</c></para>
    /// </summary>
    /// <param name="mass"><c>m_T</c> (kg): mass of the contents at the start.</param>
    /// <param name="specificHeat"><c>c_f</c> (J/(kg·K)): specific heat of the fuel.</param>
    /// <param name="conductance"><c>G_w</c> (W/K): thermal conductance of the walls, their area times their overall heat transfer coefficient.</param>
    /// <returns><c>τ_T</c> (s): time constant of the contents.</returns>
    /// <remarks>
    /// <para>Range: a conductance above 0; contents of one temperature.</para>
    /// <para>Outside: nothing is checked; infinite without conductance.</para>
    /// <example>
    /// <code>
    /// Real result = LumpedHeat.TimeConstant&lt;Real&gt;(mass: 30, specificHeat: 2100, conductance: 4);
    /// // result = 15750 s
    /// </code>
    /// </example>
    /// <para>Source: F. P. Incropera and D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5, lumped capacitance (from memory).</para>
    /// </remarks>
    public static T TimeConstant<T>(T mass, T specificHeat, T conductance)
        where T : struct, IReal<T> => mass * specificHeat / conductance;

    /// <summary>Temperature of contents after a time of constant heat.
    /// <para><c>T_T = T_st + (T_i − T_st) · exp(−t_q/τ_T)</c></para>
    /// </summary>
    /// <param name="start"><c>T_i</c> (K): temperature of the contents at the start.</param>
    /// <param name="steady"><c>T_st</c> (K): steady temperature of the contents.</param>
    /// <param name="time"><c>t_q</c> (s): time for which contents that are not drawn from warm up.</param>
    /// <param name="timeConstant"><c>τ_T</c> (s): time constant of the contents.</param>
    /// <returns><c>T_T</c> (K): temperature of the contents.</returns>
    /// <remarks>
    /// <para>Range: a time of 0 or more, a time constant above 0.</para>
    /// <para>Outside: nothing is checked; the law is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = LumpedHeat.After&lt;Real&gt;(start: 300, steady: 315, time: 15750, timeConstant: 15750);
    /// // result = 309.4818 K
    /// </code>
    /// </example>
    /// <para>Source: F. P. Incropera and D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5, lumped capacitance (from memory).</para>
    /// </remarks>
    public static T After<T>(T start, T steady, T time, T timeConstant)
        where T : struct, IReal<T> => steady + ((start - steady) * T.Exp((T)0 - (time / timeConstant)));

    /// <summary>Temperature of contents after a time of constant heat, none of which is lost.
    /// <para><c>T_T = T_i + Φ · t_q/(m_T · c_f)</c></para>
    /// </summary>
    /// <param name="start"><c>T_i</c> (K): temperature of the contents at the start.</param>
    /// <param name="heat"><c>Φ</c> (W): heat that comes back to the tank.</param>
    /// <param name="time"><c>t_q</c> (s): time for which contents that are not drawn from warm up.</param>
    /// <param name="mass"><c>m_T</c> (kg): mass of the contents at the start.</param>
    /// <param name="specificHeat"><c>c_f</c> (J/(kg·K)): specific heat of the fuel.</param>
    /// <returns><c>T_T</c> (K): temperature of the contents.</returns>
    /// <remarks>
    /// <para>Range: insulated walls.</para>
    /// <para>Outside: nothing is checked; the law is carried on.</para>
    /// <example>
    /// <code>
    /// Real result = LumpedHeat.Insulated&lt;Real&gt;(start: 300, heat: 60, time: 3600, mass: 30, specificHeat: 2100);
    /// // result = 303.4286 K
    /// </code>
    /// </example>
    /// <para>Source: energy balance of contents of one temperature.</para>
    /// </remarks>
    public static T Insulated<T>(T start, T heat, T time, T mass, T specificHeat)
        where T : struct, IReal<T> => start + (heat * time / (mass * specificHeat));

    /// <summary>Time after which contents have a temperature.
    /// <para><c>t_q = τ_T · ln((T_i − T_st)/(T_T − T_st))</c></para>
    /// </summary>
    /// <param name="start"><c>T_i</c> (K): temperature of the contents at the start.</param>
    /// <param name="steady"><c>T_st</c> (K): steady temperature of the contents.</param>
    /// <param name="reached"><c>T_T</c> (K): temperature of the contents.</param>
    /// <param name="timeConstant"><c>τ_T</c> (s): time constant of the contents.</param>
    /// <returns><c>t_q</c> (s): time for which contents that are not drawn from warm up.</returns>
    /// <remarks>
    /// <para>Range: a temperature between that at the start and the steady one.</para>
    /// <para>Outside: nothing is checked; infinite at the steady temperature, and beyond it there is no such time: not a number.</para>
    /// <example>
    /// <code>
    /// Real result = LumpedHeat.TimeTo&lt;Real&gt;(start: 300, steady: 315, reached: 309.4818, timeConstant: 15750);
    /// // result = 15749.98 s
    /// </code>
    /// </example>
    /// <para>Source: F. P. Incropera and D. P. DeWitt, Fundamentals of Heat and Mass Transfer, ch. 5, lumped capacitance (from memory).</para>
    /// </remarks>
    public static T TimeTo<T>(T start, T steady, T reached, T timeConstant)
        where T : struct, IReal<T> => timeConstant * T.Log((start - steady) / (reached - steady));

    /// <summary>Time in which contents that are not drawn from warm up as much as dwindling ones do in a shorter time: the less is left, the faster it warms up.
    /// <para><c>t_q = m_T/M_d · ln(m_T/(m_T − M_d · t_x))</c></para>
    /// </summary>
    /// <param name="mass"><c>m_T</c> (kg): mass of the contents at the start.</param>
    /// <param name="draw"><c>M_d</c> (kg/s): mass flow that leaves the contents for good.</param>
    /// <param name="time"><c>t_x</c> (s): time that passes.</param>
    /// <returns><c>t_q</c> (s): time for which contents that are not drawn from warm up.</returns>
    /// <remarks>
    /// <para>Range: a draw above 0, until the contents are used up; what leaves is as warm as what stays; the walls lose as much heat as when full.</para>
    /// <para>Outside: nothing is checked; infinite when nothing is left, then not a number. Without draw it is the time itself, here not a number.</para>
    /// <example>
    /// <code>
    /// Real result = LumpedHeat.EquivalentTime&lt;Real&gt;(mass: 30, draw: 0.01, time: 1200);
    /// // result = 1532.477 s
    /// </code>
    /// </example>
    /// <para>Source: derived from the energy balance m c dT/dt = Φ − G (T − T_0) with m = m_T − M_d t.</para>
    /// </remarks>
    public static T EquivalentTime<T>(T mass, T draw, T time)
        where T : struct, IReal<T> => mass / draw * T.Log(mass / (mass - (draw * time)));

    /// <summary>Time in which dwindling contents warm up as much as those that are not drawn from do in a longer time.
    /// <para><c>t_x = m_T/M_d · (1 − exp(−M_d · t_q/m_T))</c></para>
    /// </summary>
    /// <param name="mass"><c>m_T</c> (kg): mass of the contents at the start.</param>
    /// <param name="draw"><c>M_d</c> (kg/s): mass flow that leaves the contents for good.</param>
    /// <param name="equivalent"><c>t_q</c> (s): time for which contents that are not drawn from warm up.</param>
    /// <returns><c>t_x</c> (s): time that passes.</returns>
    /// <remarks>
    /// <para>Range: a draw above 0.</para>
    /// <para>Outside: nothing is checked; without draw it is the time itself, here not a number.</para>
    /// <example>
    /// <code>
    /// Real result = LumpedHeat.PassedTime&lt;Real&gt;(mass: 30, draw: 0.01, equivalent: 1532.477);
    /// // result = 1200 s
    /// </code>
    /// </example>
    /// <para>Source: derived from the energy balance m c dT/dt = Φ − G (T − T_0) with m = m_T − M_d t.</para>
    /// </remarks>
    public static T PassedTime<T>(T mass, T draw, T equivalent)
        where T : struct, IReal<T> => mass / draw * ((T)1 - T.Exp((T)0 - (draw * equivalent / mass)));

    /// <summary>By how much a flow warms up that takes up heat.
    /// <para><c>ΔT_f = Φ_f/(ρ · Q · c_f)</c></para>
    /// </summary>
    /// <param name="heat"><c>Φ_f</c> (W): heat that the flow takes up.</param>
    /// <param name="density"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <param name="flow"><c>Q</c> (m³/s): flow in the line.</param>
    /// <param name="specificHeat"><c>c_f</c> (J/(kg·K)): specific heat of the fuel.</param>
    /// <returns><c>ΔT_f</c> (K): rise of the temperature of the flow.</returns>
    /// <remarks>
    /// <para>Range: liquid fuel, a flow above 0.</para>
    /// <para>Outside: nothing is checked; infinite without flow.</para>
    /// <example>
    /// <code>
    /// Real result = LumpedHeat.FlowRise&lt;Real&gt;(heat: 100, density: 745, flow: 5e-5, specificHeat: 2080);
    /// // result = 1.290656 K
    /// </code>
    /// </example>
    /// <para>Source: energy balance of steady flow.</para>
    /// </remarks>
    public static T FlowRise<T>(T heat, T density, T flow, T specificHeat)
        where T : struct, IReal<T> => heat / (density * flow * specificHeat);
}
