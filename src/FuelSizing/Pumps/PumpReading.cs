namespace FuelSizing.Pumps;

/// <summary>How a pump's curves are read where they end: past their highest and lowest voltage, and past an open end.</summary>
internal enum PumpReading
{
    /// <summary>As results show them: below the lowest voltage by the affinity laws, above the highest unchanged; an open end ends there.</summary>
    Estimate,

    /// <summary>The same, but an open end goes on with its last flow.</summary>
    EstimateBeyondEnd,

    /// <summary>The least flow that the curves allow.</summary>
    Lower,

    /// <summary>The greatest flow that the curves allow.</summary>
    Upper,
}

/// <summary>What the readings have in common.</summary>
internal static class PumpReadings
{
    /// <summary>True if a curve that ends above zero flow goes on, instead of ending there.</summary>
    public static bool GoesOn(this PumpReading reading) => reading is PumpReading.EstimateBeyondEnd or PumpReading.Upper;

    /// <summary>The reading whose current leaves a motor the voltage that goes with this one: much current, little flow.</summary>
    public static PumpReading Opposite(this PumpReading reading) => reading switch
    {
        PumpReading.Lower => PumpReading.Upper,
        PumpReading.Upper => PumpReading.Lower,
        _ => reading,
    };
}
