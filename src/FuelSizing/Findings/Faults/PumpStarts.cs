using FuelSizing.Numerics;
using MathNet.Numerics.Statistics;

namespace FuelSizing.Findings;

/// <summary>Where the rail lies under its set pressure: what each fault of the pump would have to be, point by point.</summary>
/// <remarks>
/// A plan whose pump has capacity has no slope there for a fit to follow, so the fit needs a start. The fault whose size is the same at
/// every flow is the likely one.
/// </remarks>
internal static class PumpStarts
{
    /// <summary>Standard deviations under the model from which a rail is clearly lower.</summary>
    private const double Clearly = 3;

    /// <summary>Added resistance of the feed that is looked for, Ω; under zero where the plan's own is too high.</summary>
    private const double MinimumOhms = -0.1;
    private const double MaximumOhms = 0.6;

    /// <summary>Starts, in units of the tolerance; none where the rail is hardly ever lower than the sound fit says.</summary>
    public static Dictionary<RunQuantity, double> Of(RunCheck check, RunModel model, RunFit sound)
    {
        int[] low = [.. model.LowerThan(sound.Off, -Clearly)];
        if (low.Length < 2)
        {
            return [];
        }

        return new()
        {
            [RunQuantity.PumpFlow] = Start(RunQuantity.PumpFlow, i => Condition(check, model.Inputs[i])),
            [RunQuantity.FeedResistance] = Start(RunQuantity.FeedResistance, i => Resistance(check, model.Inputs[i])),
            [RunQuantity.FilterLoss] = Start(RunQuantity.FilterLoss, i => Restriction(check, model.Inputs[i])),
        };

        double Start(RunQuantity quantity, Func<int, double> size) =>
            low.Select(size).Median() / model.Tolerance[(int)quantity];
    }

    // ln of the condition at which the pump gives just the flow at the pressure found.
    private static double Condition(RunCheck check, in PointInput input)
    {
        double wanted = input.Rail + input.Loss;
        (double volts, double maximum) = (input.Volts, check.Pumps.MaximumFlow);
        double found = maximum * Bracket.Of(share => check.Pumps.Rise(share * maximum, volts, 0) - wanted, 0, 1);
        return Math.Clamp(Math.Log(input.Flow / Math.Max(found, 1e-9)), -1.2, 0.3);
    }

    private static double Resistance(RunCheck check, in PointInput input)
    {
        double wanted = input.Rail + input.Loss;
        (double volts, double flow) = (input.Volts, input.Flow);
        return Bracket.Of(ohms => check.Pumps.Rise(flow, volts, ohms) - wanted, MinimumOhms, MaximumOhms);
    }

    private static double Restriction(RunCheck check, in PointInput input) =>
        input.FilterLoss > 0
            ? (check.Pumps.Rise(input.Flow, input.Volts, 0) - input.Loss - input.Rail) / input.FilterLoss
            : 0;
}
