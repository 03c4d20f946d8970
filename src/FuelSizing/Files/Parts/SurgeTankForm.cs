using FuelSizing.Circuits;
using FuelSizing.Lines;
using FuelSizing.Pumps;
using UnitsNet;

namespace FuelSizing.Files;

/// <summary>A surge tank and its lift circuit.</summary>
internal static class SurgeTankForm
{
    private static readonly QuantityField<Volume> UsableVolume =
        new("usable_volume", Measures.Volume, "drawn from the full tank before its pickup takes in air") { Example = "1.4 L", Range = "0.05 to 50 L" };

    private static readonly PartField<PumpAssembly> LiftPump = new("lift_pump", () => PumpForm.Assembly, "the lift pump or pumps");

    private static readonly WordField<ReturnDestination> ReturnsTo = new(
        "returns_to",
        "where the main circuit's surplus goes",
        (ReturnDestination.SurgeTank, "surge-tank"), (ReturnDestination.MainTank, "main-tank"));

    private static readonly ListField<IFlowLoss> Suction = new("suction", () => PlumbingForm.PartOfPath, "main tank to lift pump") { Optional = true, Default = "no loss" };

    private static readonly ListField<IFlowLoss> LiftLine = new("lift_line", () => PlumbingForm.PartOfPath, "lift pump to surge tank") { Optional = true, Default = "no loss" };

    private static readonly ListField<IFlowLoss> Overflow = new("overflow", () => PlumbingForm.PartOfPath, "top of the surge tank to main tank") { Optional = true, Default = "no loss" };

    private static readonly QuantityField<Pressure> MaximumPressure =
        new("maximum_pressure", Measures.Pressure, "gauge, that the weakest of surge tank and lift hoses stands") { Example = "60 kPa", Optional = true, Range = "1 to 1,000 kPa", Default = "not judged" };

    private static readonly QuantityField<Duration> PrimingTime =
        new("priming_time", Measures.Time, "from a pickup that is covered again until the lift pump delivers") { Example = "1.5 s", Optional = true, Range = "0 to 60 s", Default = "0 s" };

    /// <summary>The tank.</summary>
    public static RecordForm<SurgeTank> Form { get; } = new(
        "surge_tank",
        "a surge tank",
        values => SurgeTank.Of(
            values.Required(UsableVolume),
            values.Required(LiftPump),
            values.Required(ReturnsTo),
            values.Required(Suction),
            values.Required(LiftLine),
            values.Required(Overflow),
            values.Optional(MaximumPressure),
            values.Optional(PrimingTime)))
    {
        { UsableVolume, tank => tank.UsableVolume },
        { ReturnsTo, tank => tank.ReturnsTo },
        { MaximumPressure, tank => tank.MaximumPressure },
        { PrimingTime, tank => tank.PrimingTime.Seconds > 0 ? tank.PrimingTime : null },
        { LiftPump, tank => tank.LiftPump },
        { Suction, tank => tank.Suction },
        { LiftLine, tank => tank.LiftLine },
        { Overflow, tank => tank.Overflow },
    };
}
