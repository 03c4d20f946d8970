using FuelSizing.Systems;

namespace FuelSizing.Tests.Systems;

/// <summary>The compass search: four neighbours at a step, and half the step where none of them is nearer.</summary>
public class DownhillTests
{
    /// <summary>To within the last step, a 16,384th of the first, in both directions; from either side.</summary>
    [Theory]
    [InlineData(5000, 0)]
    [InlineData(5900, 0)]
    [InlineData(5000, 60)]
    [InlineData(5900, 60)]
    public void Search_OfABowl_EndsAtItsBottom(double rpm, double boost)
    {
        (double Rpm, double Boost) found = From(rpm, boost, (400, 20), 14);
        Assert.Equal(5321, found.Rpm, 400 / 8192.0);
        Assert.Equal(23, found.Boost, 20 / 8192.0);
    }

    [Fact]
    public void Search_FromTheBottom_HalvesItsStepsAndLooksFourTimesAtEach()
    {
        int looks = 0;
        (double Rpm, double Boost) found = From(5321, 23, (400, 20), 14, (_, _) => ++looks > 0);
        Assert.Equal((4 * 14, 5321, 23), (looks, found.Rpm, Math.Round(found.Boost, 9)));
        looks = 0;
        From(5321, 23, (400, 20), 0, (_, _) => ++looks > 0);
        Assert.Equal(0, looks);
    }

    /// <summary>Steps of 1 rev/min that always help: fifty of them.</summary>
    [Fact]
    public void Search_ThatNeverEnds_IsStoppedAfterFiftySteps()
    {
        Assert.Equal(5050, From(5000, 23, (1, 0), 14).Rpm, 1e-9);
        Assert.Equal(5850, From(5900, 23, (1, 0), 14).Rpm, 1e-9);
        Assert.Equal(50, From(5321, 0, (0, 1), 14, bottom: 90).Boost, 1e-9);
    }

    /// <summary>Where it may not look it does not go: the nearest place within the range is at its edge.</summary>
    [Fact]
    public void Search_AtTheEdgeOfARange_StaysWithinIt()
    {
        (double Rpm, double Boost) found = From(5000, 5, (300, 8), 14, (rpm, boost) => rpm <= 5200 && boost <= 12);
        Assert.Equal(5200, found.Rpm, 0.1);
        Assert.Equal(12, found.Boost, 0.01);
    }

    private static (double Rpm, double Boost) From(
        double rpm, double boost, (double Speed, double Boost) steps, int halvings, Func<double, double, bool>? within = null, double bottom = 23)
    {
        List<(double Rpm, double Pascals)> places = [(rpm, boost * 1e3)];
        int end = Downhill.From(
            0,
            (steps.Speed, steps.Boost * 1e3),
            halvings,
            place => places[place],
            (speed, pascals) =>
            {
                if (within?.Invoke(speed, pascals / 1e3) == false)
                {
                    return FiguresByPlace.None;
                }

                places.Add((speed, pascals));
                return places.Count - 1;
            },
            (one, other) => Off(one).CompareTo(Off(other)));
        return (places[end].Rpm, places[end].Pascals / 1e3);

        double Off(int place)
        {
            (double speed, double pressure) = ((places[place].Rpm - 5321) / 500, ((places[place].Pascals / 1e3) - bottom) / 20);
            return (speed * speed) + (pressure * pressure);
        }
    }
}
