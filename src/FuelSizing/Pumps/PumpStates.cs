namespace FuelSizing.Pumps;

/// <summary>The pumps of a system at each boost, their switches set: for one direction of boost, worked out once.</summary>
internal sealed class PumpStates
{
    // Switching boosts, rising; what runs at each of them and in the gaps before, between and behind them.
    private readonly double[] _switches;
    private readonly PumpAssembly[] _states;

    /// <summary>Works out every state.</summary>
    /// <param name="pumps">As described.</param>
    /// <param name="falling">True where boost has come down from above all switches, false where it has risen from below.</param>
    public PumpStates(PumpAssembly pumps, bool falling)
    {
        _switches = [.. pumps.Switches.SelectMany(pump => new[] { pump.On.Pascals, pump.Off.Pascals }).Distinct().Order()];
        _states = new PumpAssembly[(2 * _switches.Length) + 1];
        for (int state = 0; state < _states.Length; state++)
        {
            int next = state / 2;
            double boost = state % 2 == 1 ? _switches[next]
                : next == 0 ? double.NegativeInfinity
                : next == _switches.Length ? double.PositiveInfinity
                : _switches[next - 1] + ((_switches[next] - _switches[next - 1]) / 2);
            _states[state] = pumps.At(boost, falling);
        }
    }

    /// <summary>What runs at a boost, Pa: the same object for all boosts between two switches.</summary>
    public PumpAssembly At(double boost)
    {
        int at = 0;
        while (at < _switches.Length && _switches[at] < boost)
        {
            at++;
        }

        return _states[at < _switches.Length && _switches[at] == boost ? (2 * at) + 1 : 2 * at];
    }
}
