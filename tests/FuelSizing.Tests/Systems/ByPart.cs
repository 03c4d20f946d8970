using FuelSizing.Checks;
using FuelSizing.Systems;

namespace FuelSizing.Tests.Systems;

/// <summary>What a result says of one part.</summary>
internal static class ByPart
{
    /// <summary>How the part stands; there is one margin for each.</summary>
    public static Margin Find(OperatingResult result, Part part) => result.Margins.Single(margin => margin.Part == part);
}
