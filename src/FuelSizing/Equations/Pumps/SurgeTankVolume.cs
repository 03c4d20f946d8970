using FuelSizing.Numerics;

namespace FuelSizing.Equations;

/// <summary>The volume in a surge tank: what is drawn from it, what a lift pump brings, and how long that lasts.</summary>
/// <remarks>All follow from conservation of volume: fuel changes its density by far less than flows are known to between two tanks.</remarks>
public static class SurgeTankVolume
{
    /// <summary>Net draw from a tank: what is pumped out of it less what comes back into it.
    /// <para><c>Q_net = Q_p − Q_back</c></para>
    /// </summary>
    /// <param name="pumped"><c>Q_p</c> (m³/s): flow that the pump delivers.</param>
    /// <param name="broughtBack"><c>Q_back</c> (m³/s): flow that returns to the tank it was drawn from; 0 where it returns to another.</param>
    /// <returns><c>Q_net</c> (m³/s): net draw from the tank.</returns>
    /// <remarks>
    /// <para>Range: flows of 0 or more.</para>
    /// <para>Outside: nothing is checked; negative where more comes back than is pumped.</para>
    /// <example>
    /// <code>
    /// Real result = SurgeTankVolume.NetDraw&lt;Real&gt;(pumped: 6e-5, broughtBack: 2e-5);
    /// // result = 4e-5 m³/s
    /// </code>
    /// </example>
    /// <para>Source: conservation of volume.</para>
    /// </remarks>
    public static T NetDraw<T>(T pumped, T broughtBack)
        where T : struct, IReal<T> => pumped - broughtBack;

    /// <summary>Time that a volume lasts with nothing brought: until a surge tank is empty while the lift pump's pickup is uncovered.
    /// <para><c>t_e = V_st/Q_net</c></para>
    /// </summary>
    /// <param name="volume"><c>V_st</c> (m³): usable volume of the surge tank.</param>
    /// <param name="draw"><c>Q_net</c> (m³/s): net draw from the tank.</param>
    /// <returns><c>t_e</c> (s): time until the tank is empty.</returns>
    /// <remarks>
    /// <para>Range: a draw above 0.</para>
    /// <para>Outside: nothing is checked; infinite at no draw.</para>
    /// <example>
    /// <code>
    /// Real result = SurgeTankVolume.TimeToEmpty&lt;Real&gt;(volume: 1.2e-3, draw: 4e-5);
    /// // result = 30 s
    /// </code>
    /// </example>
    /// <para>Source: conservation of volume.</para>
    /// </remarks>
    public static T TimeToEmpty<T>(T volume, T draw)
        where T : struct, IReal<T> => volume / draw;

    /// <summary>Time until a volume that was taken is replaced, while the engine goes on drawing.
    /// <para><c>t_fill = V_st/(Q_lift − Q_net)</c></para>
    /// </summary>
    /// <param name="volume"><c>V_st</c> (m³): usable volume of the surge tank.</param>
    /// <param name="lifted"><c>Q_lift</c> (m³/s): flow that the lift pump delivers into the tank.</param>
    /// <param name="draw"><c>Q_net</c> (m³/s): net draw from the tank.</param>
    /// <returns><c>t_fill</c> (s): time to refill.</returns>
    /// <remarks>
    /// <para>Range: more lifted than drawn.</para>
    /// <para>Outside: nothing is checked; infinite where as much is drawn as lifted, negative where more is: the tank never refills.</para>
    /// <example>
    /// <code>
    /// Real result = SurgeTankVolume.TimeToRefill&lt;Real&gt;(volume: 1.2e-3, lifted: 5e-5, draw: 4e-5);
    /// // result = 120 s
    /// </code>
    /// </example>
    /// <para>Source: conservation of volume.</para>
    /// </remarks>
    public static T TimeToRefill<T>(T volume, T lifted, T draw)
        where T : struct, IReal<T> => volume / (lifted - draw);

    /// <summary>Volume left in a surge tank after some time: it falls to nothing and no further, and overflows once it is full.
    /// <para><c>V_b = max(0; min(V_st; V_a + (Q_lift − Q_net) · t_x))</c></para>
    /// </summary>
    /// <param name="before"><c>V_a</c> (m³): usable volume left before.</param>
    /// <param name="full"><c>V_st</c> (m³): usable volume of the surge tank.</param>
    /// <param name="lifted"><c>Q_lift</c> (m³/s): flow that the lift pump delivers into the tank; 0 while its pickup is uncovered.</param>
    /// <param name="draw"><c>Q_net</c> (m³/s): net draw from the tank.</param>
    /// <param name="time"><c>t_x</c> (s): time that passes.</param>
    /// <returns><c>V_b</c> (m³): usable volume left afterwards.</returns>
    /// <remarks>
    /// <para>Range: volumes and time of 0 or more, flows that do not change meanwhile.</para>
    /// <para>Outside: nothing is checked; 0 where the tank runs dry on the way, which it then has by the end.</para>
    /// <example>
    /// <code>
    /// Real result = SurgeTankVolume.After&lt;Real&gt;(before: 1.2e-3, full: 1.2e-3, lifted: 0, draw: 4e-5, time: 10);
    /// // result = 8e-4 m³
    /// </code>
    /// </example>
    /// <para>Source: conservation of volume.</para>
    /// </remarks>
    public static T After<T>(T before, T full, T lifted, T draw, T time)
        where T : struct, IReal<T> => T.Max(0, T.Min(full, before + ((lifted - draw) * time)));
}
