using System.Runtime.CompilerServices;

namespace FuelSizing.Logs;

/// <summary>One SI value a channel, NaN where there is none.</summary>
[InlineArray(Count)]
internal struct ChannelValues
{
    /// <summary>Number of channels.</summary>
    public const int Count = (int)Channel.FuelMassFlow + 1;

    private double _first;

    /// <summary>No value in any channel.</summary>
    public static ChannelValues None
    {
        get
        {
            ChannelValues values = default;
            ((Span<double>)values).Fill(double.NaN);
            return values;
        }
    }
}
