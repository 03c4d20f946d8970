namespace FuelSizing.Engines;

/// <summary>How many turns of the crank make one working cycle.</summary>
public enum EngineCycle
{
    /// <summary>One turn: intake, compression, power and exhaust in two strokes.</summary>
    TwoStroke = 1,

    /// <summary>Two turns: intake, compression, power and exhaust in four strokes.</summary>
    FourStroke = 2,
}
