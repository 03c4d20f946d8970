using FuelSizing.Findings;
using FuelSizing.Logs;
using UnitsNet;

namespace FuelSizing.Tests.Findings;

/// <summary>What a careful reader should know of a run, line by line.</summary>
public class NoteReadingTests
{
    private static readonly RecordedRun Sound = ExactRun.Of(PulledWren.Plan);

    private const string NotAtRest = "no rows with the engine at rest: the manifold sensor's zero could not be checked against the barometer";

    [Fact]
    public void RunWithAllChannels_HasNoNotesButForTheEngineAtRest()
    {
        Assert.Equal([NotAtRest], Notes(Sound));
        Cells rest = new() { Speed = RotationalSpeed.Zero, Manifold = PulledWren.Air.Pressure };
        RecordedRun rested = RecordedRun.Of(
            "rested", PulledWren.Air, [.. Enumerable.Range(1, 5).Select(rest.Row), .. Sound.Rows.Select((row, i) => (Cells.Of(row) with { Time = null }).Row(i + 6))]);
        Assert.Empty(Notes(rested));
    }

    public static TheoryData<string, string> Lacks => new()
    {
        { "rail", "rail pressure was not recorded: regulator, pump, filter and wiring cannot be judged" },
        { "pulse", "pulse or duty cycle was not recorded: fuel by the injectors, their size and their duty cycle cannot be told" },
        { "flow", "fuel flow was not recorded: wrong injectors and wrong volumetric efficiency look alike, and dead time cannot be told" },
        { "lambda", "lambda was not recorded: air and mixture cannot be judged" },
        { "volts", "battery voltage was not recorded: the planned 13.5 V was taken; a low supply voltage may look like a weak pump" },
        { "power", "power or torque was not recorded: BSFC cannot be told" },
        { "fuel", "fuel temperature was not recorded: 35 °C was taken" },
    };

    [Theory]
    [MemberData(nameof(Lacks))]
    public void MissingChannel_IsNamedWithWhatItRulesOut(string channel, string note) => Assert.Equal(
        [note, NotAtRest],
        Notes(ExactRun.Changed(Sound, (cells, _) => channel switch
        {
            "rail" => cells with { Rail = null },
            "pulse" => cells with { Pulse = null },
            "flow" => cells with { Flow = null },
            "lambda" => cells with { Lambda = null },
            "volts" => cells with { Volts = null },
            "power" => cells with { Power = null },
            _ => cells with { Fuel = null },
        })));

    /// <summary>Duty cycle, mass flow and torque stand for pulse, volume flow and power.</summary>
    [Fact]
    public void ChannelThatStandsForAnother_IsNotMissed() => Assert.Equal(
        [NotAtRest],
        Notes(ExactRun.Changed(Sound, (cells, _) => cells with
        {
            Pulse = null,
            Duty = Ratio.FromPercent(40),
            Flow = null,
            Mass = MassFlow.FromGramsPerSecond(8),
            Power = null,
            Torque = Torque.FromNewtonMeters(200),
        })));

    [Fact]
    public void RunWithoutManifoldPressure_SaysThatHardlyAnythingCanBeCompared() => Assert.Equal(
        "manifold pressure was not recorded: hardly anything can be compared",
        Assert.Single(Notes(ExactRun.Changed(Sound, (cells, _) => cells with { Manifold = null }))));

    /// <summary>What was stopped is said first.</summary>
    [Fact]
    public void ReadingOrSearch_ThatWasStopped_IsSaidFirst()
    {
        RecordedRun stopped = new(
            Sound.Name,
            Sound.Atmosphere,
            [.. Sound.Rows.Select(row => row.Line)],
            [.. Enum.GetValues<Channel>().Select(channel => Sound.Has(channel) ? Sound.Si(channel).ToArray() : null)],
            [],
            Sound.Account,
            isComplete: false);
        Assert.Equal(
            ["the reading of the run was stopped: these are findings of its first 64 rows alone", "the search for faults was stopped, so none is named", NotAtRest],
            Notes(stopped, isStopped: true));
    }

    /// <summary>
    /// A run at up to 35 kPa boost, where the pump has capacity: what it could have held more at the tightest point, by the model. Where the pump
    /// is the limit anywhere there is no such note.
    /// </summary>
    [Fact]
    public void Pump_ThatWasNeverTheLimit_IsSaidWithItsSurplus()
    {
        RecordedRun gentle = RecordedRun.Of("gentle", Sound.Atmosphere, Sound.Rows.Take(24));
        RunModel model = PulledWren.Check.Model(gentle);
        Diagnosis diagnosis = Diagnosis.Of(PulledWren.Check, model, null, CancellationToken.None)!;
        double surplus = Enumerable.Range(0, 24).Min(point => model.RailAt(point, diagnosis.Best.Off).Surplus);
        Assert.True(surplus > 10e3);
        Assert.Equal(
            [
                NotAtRest,
                FormattableString.Invariant($"the pump was never the limit in this run (it could have held {surplus / 1e3:0} kPa more at the tightest point, if it is as planned): its true state, the filter's and the wiring's cannot be told"),
            ],
            Notes(gentle, diagnosed: true));
        Assert.Equal([NotAtRest], Notes(Sound, diagnosed: true));

        // A flow that is not known at a point says nothing of the pump there.
        Cells[] shut = [.. gentle.Rows.Select(Cells.Of)];
        shut[3] = shut[3] with { Flow = null, Pulse = Wren.Ms(0.2) };
        Assert.Contains(
            Notes(RecordedRun.Of("shut", Sound.Atmosphere, shut.Select((cells, i) => cells.Row(i + 1))), diagnosed: true),
            note => note.StartsWith("the pump was never the limit in this run (it could have held ", StringComparison.Ordinal) && !note.Contains('∞', StringComparison.Ordinal));

        // Without the rail nothing can be said of the pump.
        Assert.DoesNotContain(
            Notes(ExactRun.Changed(gentle, (cells, _) => cells with { Rail = null }), diagnosed: true), note => note.StartsWith("the pump", StringComparison.Ordinal));
    }

    private static string[] Notes(RecordedRun run, bool diagnosed = false, bool isStopped = false)
    {
        RunModel model = PulledWren.Check.Model(run);
        Diagnosis? diagnosis = diagnosed ? Diagnosis.Of(PulledWren.Check, model, null, CancellationToken.None) : null;
        return [.. new NoteReading(PulledWren.Check, run, model).Notes(diagnosis, isStopped).Select(note => note.ToString())];
    }
}
