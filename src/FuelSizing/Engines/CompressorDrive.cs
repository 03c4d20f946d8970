namespace FuelSizing.Engines;

/// <summary>What turns the compressor.</summary>
public enum CompressorDrive
{
    /// <summary>There is no compressor: the engine draws its own air.</summary>
    None = 0,

    /// <summary>A turbine in the exhaust: takes no power from the crank (its back-pressure is not modelled).</summary>
    ExhaustTurbine = 1,

    /// <summary>A belt from the crank: the compressor's power is taken from the crank's.</summary>
    Belt = 2,
}
