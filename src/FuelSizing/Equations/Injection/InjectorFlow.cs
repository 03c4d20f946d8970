using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>What one injector passes, and how long it must be held open.</summary>
public static class InjectorFlow
{
    /// <summary>Static flow of an injector: the orifice equation, referred to the rated point.
    /// <para><c>Q_s = Q_r · √(max(0; Δp)/Δp_r · ρ_r/ρ)</c></para>
    /// </summary>
    /// <param name="ratedFlow"><c>Q_r</c> (m³/s): rated flow of one injector.</param>
    /// <param name="ratedDifferential"><c>Δp_r</c> (Pa): differential pressure at which the injector is rated.</param>
    /// <param name="testFluidDensity"><c>ρ_r</c> (kg/m³): density of the test fluid.</param>
    /// <param name="differential"><c>Δp</c> (Pa): differential pressure across the injector.</param>
    /// <param name="fuelDensity"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <returns><c>Q_s</c> (m³/s): static flow of one injector.</returns>
    /// <remarks>
    /// <para>Range: Δp, Δp_r and both densities over 0; turbulent flow through the orifice, typically 100 to 800 kPa.</para>
    /// <para>Outside: nothing is checked; no flow where Δp is 0 or negative.</para>
    /// <example>
    /// <code>
    /// Real result = InjectorFlow.Static&lt;Real&gt;(ratedFlow: 6e-6, ratedDifferential: 300e3, testFluidDensity: 683.8, differential: 400e3, fuelDensity: 740);
    /// // result = 6.659925e-6 m³/s
    /// </code>
    /// </example>
    /// <para>Source: derived from the orifice equation Q = C_d A √(2 Δp/ρ), with one discharge coefficient for both points.</para>
    /// </remarks>
    public static T Static<T>(T ratedFlow, Divisor<T> ratedDifferential, T testFluidDensity, T differential, Divisor<T> fuelDensity)
        where T : struct, IReal<T> =>
        ratedFlow * T.Sqrt(T.Max(0, differential) / ratedDifferential * testFluidDensity / fuelDensity);

    /// <summary>Rated flow that gives a wanted static flow; the inverse of Static.
    /// <para><c>Q_r = Q_s/√(max(0; Δp)/Δp_r · ρ_r/ρ)</c></para>
    /// </summary>
    /// <param name="staticFlow"><c>Q_s</c> (m³/s): static flow of one injector.</param>
    /// <param name="ratedDifferential"><c>Δp_r</c> (Pa): differential pressure at which the injector is rated.</param>
    /// <param name="testFluidDensity"><c>ρ_r</c> (kg/m³): density of the test fluid.</param>
    /// <param name="differential"><c>Δp</c> (Pa): differential pressure across the injector.</param>
    /// <param name="fuelDensity"><c>ρ</c> (kg/m³): density of the fuel.</param>
    /// <returns><c>Q_r</c> (m³/s): rated flow of one injector.</returns>
    /// <remarks>
    /// <para>Range: Δp, Δp_r and both densities over 0; turbulent flow through the orifice, typically 100 to 800 kPa.</para>
    /// <para>Outside: nothing is checked; infinite where Δp is 0 or negative.</para>
    /// <example>
    /// <code>
    /// Real result = InjectorFlow.Rated&lt;Real&gt;(staticFlow: 6.65992452e-6, ratedDifferential: 300e3, testFluidDensity: 683.8, differential: 400e3, fuelDensity: 740);
    /// // result = 6e-6 m³/s
    /// </code>
    /// </example>
    /// <para>Source: derived from the orifice equation.</para>
    /// </remarks>
    public static T Rated<T>(T staticFlow, Divisor<T> ratedDifferential, T testFluidDensity, T differential, Divisor<T> fuelDensity)
        where T : struct, IReal<T> =>
        staticFlow / Static(1, ratedDifferential, testFluidDensity, differential, fuelDensity);

    /// <summary>Time between the starts of two injections: 120 s/N for one injection a cycle of a four-stroke at N rev/min.
    /// <para><c>t_c = k/(n · i)</c></para>
    /// </summary>
    /// <param name="speed"><c>n</c> (rev/s): engine speed.</param>
    /// <param name="revolutionsPerCycle"><c>k</c> (1): revolutions per working cycle; 2 for four strokes, 1 for two.</param>
    /// <param name="injectionsPerCycle"><c>i</c> (1): injections per working cycle.</param>
    /// <returns><c>t_c</c> (s): available time, between the starts of two injections.</returns>
    /// <remarks>
    /// <para>Range: n over 0.</para>
    /// <para>Outside: nothing is checked; infinite at n = 0.</para>
    /// <example>
    /// <code>
    /// Real result = InjectorFlow.AvailableTime&lt;Real&gt;(speed: 100, revolutionsPerCycle: 2, injectionsPerCycle: 1).Value;
    /// // result = 0.02 s
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static Divisor<T> AvailableTime<T>(T speed, Divisor<T> revolutionsPerCycle, T injectionsPerCycle)
        where T : struct, IReal<T>
    {
        T injections = speed * injectionsPerCycle;
        return new(revolutionsPerCycle.Value / injections, injections / revolutionsPerCycle);
    }

    /// <summary>Commanded pulse width: dead time, and the time that the fuel of a pulse takes at static flow.
    /// <para><c>t = t_d + Q_f/N · t_c/Q_s</c></para>
    /// </summary>
    /// <param name="deadTime"><c>t_d</c> (s): dead time.</param>
    /// <param name="fuelFlow"><c>Q_f</c> (m³/s): fuel flow of the engine.</param>
    /// <param name="injectors"><c>N</c> (1): number of injectors.</param>
    /// <param name="availableTime"><c>t_c</c> (s): available time, between the starts of two injections.</param>
    /// <param name="staticFlow"><c>Q_s</c> (m³/s): static flow of one injector.</param>
    /// <returns><c>t</c> (s): commanded pulse width.</returns>
    /// <remarks>
    /// <para>Range: Q_s over 0; pulses long enough for the linear range of the injector.</para>
    /// <para>Outside: nothing is checked; infinite at Q_s = 0; a result over t_c means that the injector cannot pass the fuel.</para>
    /// <example>
    /// <code>
    /// Real result = InjectorFlow.Pulse&lt;Real&gt;(deadTime: 1e-3, fuelFlow: 2e-5, injectors: 4, availableTime: 0.02, staticFlow: 6e-6);
    /// // result = 0.0176667 s
    /// </code>
    /// </example>
    /// <para>Source: derived from the definition of dead time.</para>
    /// </remarks>
    public static T Pulse<T>(T deadTime, T fuelFlow, Divisor<T> injectors, Divisor<T> availableTime, T staticFlow)
        where T : struct, IReal<T> => deadTime + (fuelFlow / injectors / (staticFlow / availableTime));

    /// <summary>Duty cycle of a pulse.
    /// <para><c>D = t/t_c</c></para>
    /// </summary>
    /// <param name="pulse"><c>t</c> (s): commanded pulse width.</param>
    /// <param name="availableTime"><c>t_c</c> (s): available time, between the starts of two injections.</param>
    /// <returns><c>D</c> (1): duty cycle.</returns>
    /// <remarks>
    /// <para>Range: 0 ≤ t ≤ t_c.</para>
    /// <para>Outside: nothing is checked; over 1 where the pulse is longer than the available time.</para>
    /// <example>
    /// <code>
    /// Real result = InjectorFlow.DutyCycle&lt;Real&gt;(pulse: 0.017, availableTime: 0.02);
    /// // result = 0.85
    /// </code>
    /// </example>
    /// <para>Source: definition.</para>
    /// </remarks>
    public static T DutyCycle<T>(T pulse, Divisor<T> availableTime)
        where T : struct, IReal<T> => pulse / availableTime;

    /// <summary>Static flow of one injector that meets a demand at the duty-cycle limit.
    /// <para><c>Q_s = Q_f/N · t_c/(D_max · t_c − t_d)</c></para>
    /// </summary>
    /// <param name="fuelFlow"><c>Q_f</c> (m³/s): fuel flow of the engine.</param>
    /// <param name="injectors"><c>N</c> (1): number of injectors.</param>
    /// <param name="availableTime"><c>t_c</c> (s): available time, between the starts of two injections.</param>
    /// <param name="dutyLimit"><c>D_max</c> (1): limit of the duty cycle.</param>
    /// <param name="deadTime"><c>t_d</c> (s): dead time.</param>
    /// <returns><c>Q_s</c> (m³/s): static flow of one injector.</returns>
    /// <remarks>
    /// <para>Range: D_max · t_c over t_d.</para>
    /// <para>Outside: nothing is checked; infinite or negative where the dead time fills the pulse: no injector does it.</para>
    /// <example>
    /// <code>
    /// Real result = InjectorFlow.RequiredStatic&lt;Real&gt;(fuelFlow: 5e-5, injectors: 4, availableTime: 0.02, dutyLimit: 0.85, deadTime: 1e-3);
    /// // result = 1.5625e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: derived from Pulse.</para>
    /// </remarks>
    public static T RequiredStatic<T>(T fuelFlow, T injectors, T availableTime, T dutyLimit, T deadTime)
        where T : struct, IReal<T> =>
        StaticForPulse(fuelFlow, injectors, availableTime, dutyLimit * availableTime, deadTime);

    /// <summary>Static flow of one injector that meets a demand with a given pulse width.
    /// <para><c>Q_s = Q_f/N · t_c/(t − t_d)</c></para>
    /// </summary>
    /// <param name="fuelFlow"><c>Q_f</c> (m³/s): fuel flow of the engine.</param>
    /// <param name="injectors"><c>N</c> (1): number of injectors.</param>
    /// <param name="availableTime"><c>t_c</c> (s): available time, between the starts of two injections.</param>
    /// <param name="pulse"><c>t</c> (s): commanded pulse width.</param>
    /// <param name="deadTime"><c>t_d</c> (s): dead time.</param>
    /// <returns><c>Q_s</c> (m³/s): static flow of one injector.</returns>
    /// <remarks>
    /// <para>Range: t over t_d.</para>
    /// <para>Outside: nothing is checked; infinite or negative where the dead time fills the pulse.</para>
    /// <example>
    /// <code>
    /// Real result = InjectorFlow.StaticForPulse&lt;Real&gt;(fuelFlow: 5e-5, injectors: 4, availableTime: 0.02, pulse: 0.015, deadTime: 1e-3);
    /// // result = 1.785714e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: derived from Pulse.</para>
    /// </remarks>
    public static T StaticForPulse<T>(T fuelFlow, T injectors, T availableTime, T pulse, T deadTime)
        where T : struct, IReal<T> => fuelFlow / injectors * availableTime / (pulse - deadTime);

    /// <summary>Fuel flow that the injectors pass at the duty-cycle limit.
    /// <para><c>Q_f = Q_s · N · max(0; D_max · t_c − t_d)/t_c</c></para>
    /// </summary>
    /// <param name="staticFlow"><c>Q_s</c> (m³/s): static flow of one injector.</param>
    /// <param name="injectors"><c>N</c> (1): number of injectors.</param>
    /// <param name="availableTime"><c>t_c</c> (s): available time, between the starts of two injections.</param>
    /// <param name="dutyLimit"><c>D_max</c> (1): limit of the duty cycle.</param>
    /// <param name="deadTime"><c>t_d</c> (s): dead time.</param>
    /// <returns><c>Q_f</c> (m³/s): fuel flow of the engine.</returns>
    /// <remarks>
    /// <para>Range: 0 &lt; D_max ≤ 1.</para>
    /// <para>Outside: nothing is checked; 0 where the dead time fills the pulse.</para>
    /// <example>
    /// <code>
    /// Real result = InjectorFlow.Capacity&lt;Real&gt;(staticFlow: 6e-6, injectors: 4, availableTime: 0.02, dutyLimit: 0.85, deadTime: 1e-3);
    /// // result = 1.92e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: derived from Pulse.</para>
    /// </remarks>
    public static T Capacity<T>(T staticFlow, T injectors, T availableTime, T dutyLimit, T deadTime)
        where T : struct, IReal<T> =>
        staticFlow * injectors * T.Max(0, (dutyLimit * availableTime) - deadTime) / availableTime;
}
