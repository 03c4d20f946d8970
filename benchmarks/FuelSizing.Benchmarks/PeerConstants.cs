using System.Runtime.InteropServices;

namespace FuelSizing.Benchmarks;

/// <summary>What the peers need to know of the system, in SI numbers, in the order that benchmarks/peer/points.c reads.</summary>
[StructLayout(LayoutKind.Sequential)]
internal readonly record struct PeerConstants(
    double Displacement,
    double Revolutions,
    double Compressor,
    double Cooler,
    double CoolerLoss,
    double Belt,
    double Drive,
    double MeasuredPressure,
    double MeasuredTemperature,
    double Friction,
    double FrictionSpeed,
    double Bsfc,
    double Lambda,
    double AirFuel,
    double Ambient,
    double Temperature,
    double Density,
    double Base,
    double GainBelow,
    double Gain,
    double Onset,
    double Ceiling,
    double RatedFlow,
    double RatedPressure,
    double TestDensity,
    double Count,
    double Injections);
