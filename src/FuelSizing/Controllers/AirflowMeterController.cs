using FuelSizing.Quantities;
using UnitsNet;

namespace FuelSizing.Controllers;

/// <summary>A controller with an airflow meter: it knows the air that the engine takes, up to the end of the meter's range.</summary>
/// <remarks>Over the end it commands as if the air were no more. The meter's own error, reversing flow and leaks past it are not modelled.</remarks>
/// <example>
/// <code>
/// AirflowMeterController controller = AirflowMeterController.Of(data, maximum: MassFlow.FromGramsPerSecond(118));
/// Console.WriteLine(controller);
/// </code>
/// </example>
public sealed record AirflowMeterController : CalculatingController
{
    private static readonly Identity<AirflowMeterController> _identity = new Identity<AirflowMeterController>()
        .Value(controller => controller.Data)
        .Number(controller => controller.Maximum?.KilogramsPerSecond);

    private AirflowMeterController(ControllerData data, MassFlow? maximum)
        : base(data) => Maximum = maximum;

    /// <summary>End of the meter's range; none where it reads whatever the engine takes.</summary>
    public MassFlow? Maximum { get; }

    /// <inheritdoc/>
    public override Statement Text => Maximum is { } end
        ? Statement.Of(
            "controller.airflow-meter-with-end", $"a controller with an airflow meter that ends at {end}, {Data.Injector.Name} in its data")
        : Statement.Of("controller.airflow-meter", $"a controller with an airflow meter, {Data.Injector.Name} in its data");

    /// <summary>Describes the controller.</summary>
    /// <param name="data">What it takes for true.</param>
    /// <param name="maximum">End of the meter's range, 1 to 5,000 g/s; none if not given.</param>
    /// <returns>The controller.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The end is outside its range.</exception>
    public static AirflowMeterController Of(ControllerData data, MassFlow? maximum = null) => new(
        data,
        maximum is { } end
            ? Guard.Between(
                end,
                MassFlow.FromGramsPerSecond(1),
                MassFlow.FromGramsPerSecond(5000),
                "Give the air flow at which the meter's reading ends.",
                nameof(maximum))
            : null);

    /// <summary>True if the other has the same values: numbers in SI to 12 significant digits, lists in their order.</summary>
    /// <param name="other">Another, or none.</param>
    /// <returns>True if they are equal.</returns>
    public bool Equals(AirflowMeterController? other) => _identity.Same(this, other);

    /// <inheritdoc/>
    public override int GetHashCode() => _identity.HashOf(this);

    private protected override (double Air, bool IsAtEnd) AirAt(in ControllerInput at)
    {
        double end = Maximum?.KilogramsPerSecond ?? double.PositiveInfinity;
        return (Math.Min(at.Air, end), at.Air > end);
    }
}
