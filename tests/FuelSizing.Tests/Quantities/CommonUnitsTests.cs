using System.Reflection;
using FuelSizing.Quantities;

namespace FuelSizing.Tests.Quantities;

/// <summary>What is read without UnitsNet's parser is what UnitsNet's parser reads.</summary>
public class CommonUnitsTests
{
    [Fact]
    public void Text_OfEachCommonUnit_IsReadAsUnitsNetReadsIt()
    {
        MethodInfo check = typeof(CommonUnitsTests).GetMethod(nameof(Check), BindingFlags.NonPublic | BindingFlags.Static)!;
        int tried = CommonUnits.Quantities.Sum(unit => (int)check.MakeGenericMethod(unit).Invoke(null, null)!);
        Assert.InRange(tried, 40, 200);
    }

    private static int Check<TUnit>()
        where TUnit : struct, Enum
    {
        foreach ((string text, TUnit unit) in CommonUnits.Of<TUnit>())
        {
            Assert.True(UnitText.Known.TryParse(text, out TUnit read), text);
            Assert.Equal(unit, read);
            Assert.True(UnitText.TryParse(text, out TUnit again));
            Assert.Equal(unit, again);
        }

        return CommonUnits.Of<TUnit>().Count;
    }
}
