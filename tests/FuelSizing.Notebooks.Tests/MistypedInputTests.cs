using FuelSizing.Files;
using FuelSizing.Logs;

namespace FuelSizing.Notebooks.Tests;

/// <summary>
/// Inputs as people mistype them, or give them in another unit than they meant: each is refused or questioned where it is given, by name, with the
/// value, what is expected and the cure. What is taken as it stands is not in the list.
/// </summary>
public sealed class MistypedInputTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fuelsizing-mistyped-");

    public void Dispose() => _folder.Delete(recursive: true);

    /// <summary>What is typed behind --set for a notebook, and what must be said: 2 refused, 6 questioned.</summary>
    public static TheoryData<string, string, int, string[]> Settings { get; } = new()
    {
        // Refused: no such name.
        { "01", "bost=8psi", 2, ["--set bost", "no such input", "Did you mean boost"] },
        { "01", "staticflow=360mL/min", 2, ["no such input", "Did you mean staticFlow"] },
        { "01", "fuel_temperature=35C", 2, ["no such input", "fuelTemperature"] },
        { "01", "pumpCurve[7].LitresPerHour=140", 2, ["pumpCurve[7]", "Rows are counted from [0]"] },
        { "01", "pumpCurve[2].Flow=140", 2, ["no such input", "pumpCurve[2].LitresPerHour"] },
        { "01", "regulator.base=43.5psi", 2, ["no such input", "regulator.basePressure"] },
        { "01", "regulator=43.5psi", 2, ["regulator.basePressure"] },

        // Refused: a unit of another kind, or none that there is.
        { "01", "staticFlow=3bar", 2, ["--set staticFlow=3bar", "bar is a unit of pressure, not of volume flow", "360 mL/min"] },
        { "01", "boost=8psia", 2, ["psia says gauge or absolute", "write psi"] },
        { "01", "boost=8psu", 2, ["\"psu\" is no unit of pressure", "8 psi"] },
        { "01", "boost=0,6bar", 2, ["expected a number with a decimal point", "comma"] },
        { "01", "boost=0.6barr", 2, ["\"barr\" is no unit of pressure", "0.55 bar"] },
        { "01", "boost=eight", 2, ["expected a number with a decimal point and a unit", "8 psi"] },
        { "01", "fuelTemperature=95psi", 2, ["psi is a unit of pressure, not of temperature", "95 °F"] },
        { "01", "supplyVoltage=13.5A", 2, ["A is a unit of current", "not of voltage", "13.5 V"] },
        { "01", "minimumPulse=1.6V", 2, ["V is a unit of voltage, not of time", "1.6 ms"] },
        { "01", "displacement=2.4kg", 2, ["kg is a unit of mass", "2.4 L"] },
        { "01", "bsfc=0.5lb/h", 2, ["lb/h is a unit of mass flow", "320 g/kWh"] },
        { "01", "pumpCurve[2].LitresPerHour=38lb/h", 2, ["lb/h is a mass flow", "density", "140 L/h"] },
        { "01", "pumpCurve[2].LitresPerHour=37gal/h", 2, ["3.785 L in the US", "US gal/h or imp gal/h"] },
        { "01", "pumpCurve=[(0, 215), (200)]", 2, ["is missing at character"] },
        { "01", "pumpCurve=[(0 psi, 215), (30 A, 185)]", 2, ["Kilopascals 30 A", "A is a unit of current", "not of pressure"] },
        { "01", "cylinders=4.5", 2, ["expected a whole number"] },
        { "01", "cylinders=4cyl", 2, ["expected a whole number, without a unit"] },
        { "01", "lambda=0.82bar", 2, ["without a unit"] },
        { "01", "fuel=e85", 2, ["expected one of", "Did you mean E85"] },
        { "01", "cycle=4", 2, ["FourStroke"] },
        { "09", "tankWire=10mm2", 2, ["expected an AWG size", "AWG"] },
        { "09", "tankWire=100", 2, ["expected an AWG size from 24 to 0"] },

        // Questioned: possible, and probably meant in another unit.
        { "01", "staticFlow=24", 6, ["staticFlow is 24 mL/min", "80 to 2,500 mL/min (common practice, no source)", "24 lb/h, that is 265", "n-heptane", "--accept staticFlow"] },
        { "01", "staticFlow=24mL/min", 6, ["24 lb/h"] },
        { "01", "staticFlow=360lb/h", 6, ["staticFlow is 3,980", "Check number and unit"] },
        { "01", "boost=8bar", 6, ["boost is 8 bar", "3 to 250 kPa", "8 psi, that is 55.1"] },
        { "01", "boost=8", 6, ["boost is 8 bar", "8 psi"] },
        { "01", "boost=0.6kPa", 6, ["boost is 0.6 kPa", "0.6 bar, that is 60 kPa"] },
        { "01", "bsfc=0.5", 6, ["bsfc is 0.5 g/kWh", "0.5 lb/hp·h, that is 304"] },
        { "01", "fuelTemperature=95", 6, ["fuelTemperature is 95 °C", "95 °F, that is 35 °C"] },
        { "01", "fuelTemperature=308", 6, ["308 K, that is 34.8"] },
        { "01", "displacement=2400", 6, ["displacement is 2,400 L", "2,400 cm³, that is 2.4 L"] },
        { "01", "displacement=146", 6, ["146 in³, that is 2.39"] },
        { "01", "ratedAt=43.5", 6, ["ratedAt is 43.5 kPa", "43.5 psi, that is 299.9"] },
        { "01", "ratedAt=3", 6, ["3 bar, that is 300 kPa"] },
        { "01", "regulator.basePressure=43.5", 6, ["regulator.basePressure is 43.5 kPa", "43.5 psi"] },
        { "01", "railRating=100", 6, ["railRating is 100 kPa", "100 psi, that is 689"] },
        { "01", "lambda=12.2", 6, ["lambda is 12.2", "an air-fuel ratio of 12.2", "0.83", "on petrol"] },
        { "01", "lambda=82", 6, ["82 %, that is 0.82"] },
        { "01", "dutyLimit=0.85", 6, ["dutyLimit is 0.85 %", "0.85 per unit, that is 85 %"] },
        { "01", "compressorEfficiency=0.72", 6, ["0.72 per unit, that is 72 %"] },
        { "01", "speedLimit=7.2", 6, ["7.2 × 1,000 rpm, that is 7,200 rev/min"] },
        { "01", "altitude=5280", 6, ["5,280 ft, that is 1,609"] },
        { "01", "minimumPulse=0.0016", 6, ["0.0016 s, that is 1.6 ms"] },
        { "01", "supplyVoltage=13500", 6, ["13,500 mV, that is 13.5 V"] },
        { "01", "pumpCurve[2].LitresPerHour=2.75", 6, ["pumpCurve[2].LitresPerHour is 2.75 L/h", "2.75 L/min, that is 165 L/h", "--accept pumpCurve.LitresPerHour"] },
        { "01", "pumpCurve[2].Kilopascals=3", 6, ["pumpCurve[2].Kilopascals is 3 kPa", "3 bar, that is 300 kPa"] },
        { "01", "pull[3].Efficiency=1.01", 6, ["1.01 per unit, that is 101 %"] },
        { "01", "deadTimeMilliseconds[1][2]=1100", 6, ["deadTimeMilliseconds[1][2] is 1,100 ms", "1,100 µs, that is 1.1 ms"] },
        { "09", "ambientPressure=29.0", 6, ["ambientPressure is 29 kPa", "29 inHg, that is 98.2"] },
        { "09", "ambientPressure=981", 6, ["981 mbar, that is 98.1 kPa"] },
        { "09", "tankWire=2", 6, ["tankWire is 33.6", "0.3 to 10.5 mm²"] },
        { "09", "lineBore=0.3125", 6, ["lineBore is 0.3125 mm", "0.3125 in, that is 7.9"] },
        { "09", "tankLength=17", 6, ["tankLength is 17 m", "17 ft, that is 5.18"] },
        { "09", "maximumImpellerSpeed=62.5", 6, ["62.5 × 1,000 rpm, that is 62,500 rev/min"] },
        { "09", "tankPump[1].Points[2].Kilopascals=4", 6, ["4 bar, that is 400 kPa"] },
    };

    /// <summary>What is typed for a field of a setup file (docs/wren-setup.json), and what must be said.</summary>
    public static TheoryData<string, int, string[]> Fields { get; } = new()
    {
        { "setup.injectors.injector.staticflow=360mL/min", 2, ["setup.injectors.injector.staticflow", "has no field staticflow", "Did you mean static_flow"] },
        { "setup.injector.static_flow=360mL/min", 2, ["the setup has no field injector", "injectors"] },
        { "setup.injectors.injector=7", 2, ["holds fields", "injectors.injector.name"] },
        { "setup.engine.cylinders[0]=4", 2, ["leave [0] out"] },
        { "setup.points[9].boost=8psi", 2, ["give a row, [0] to [2]"] },
        { "setup.points.boost=8psi", 2, ["give a row, [0] to [2]"] },
        { "setup.engine.displacement.L=2.4", 2, ["is one value"] },
        { "setup.injectors.injector.static_flow=3bar", 2, ["bar is a unit of pressure, not of volume flow"] },
        { "setup.injectors.injector.static_flow=nought", 2, ["expected a number with a decimal point and a unit"] },
        { "setup.engine.cylinders=four", 2, ["expected a whole number"] },
        { "setup.consumption.lambda=rich", 2, ["expected a plain number"] },
        { "setup.layout=ring", 2, ["layout", "return, returnless"] },
        { "setup.limits.rail_ceiling=7000psi", 2, ["limits.rail_ceiling", "it must be between"] },
        { "setup.consumption.lambda=12.2", 2, ["it must be between 0.6 and 1.2", "an air-fuel ratio of 12.2"] },
        { "setup.points[0].conditions.fuel_temperature=95", 2, ["95 °C", "95 °F, that is 35 °C"] },
        { "setup.engine.displacement=2400L", 2, ["2,400 cm³, that is 2.4 L"] },
        { "setup.pump.series[1].parallel[0].feed.conductor.gauge=14mm2", 2, ["expected an AWG size"] },
        { "setup.injectors.injector.static_flow=24", 6, ["static_flow is 24 mL/min", "24 lb/h, that is 265", "--accept injectors.injector.static_flow"] },
        { "setup.plumbing.supply[0].bore=0.3125mm", 2, ["0.3125 in"] },
        { "setup.regulator.in_series_with.base=43.5", 2, ["43.5 psi, that is 299.9"] },
    };

    /// <summary>Columns of a mapping, and what must be said of the log with Time, Speed, Boost, Rail and Lambda.</summary>
    public static TheoryData<string, string, string[]> Mappings { get; } = new()
    {
        { "\"column\": \"Lambda\"", "\"column\": \"Lamda\"", ["there is no \"Lamda\" for Lambda", "Did you mean \"Lambda\"?"] },
        { "\"column\": \"Rail\"", "\"column\": \"Fuel pressure\"", ["there is no \"Fuel pressure\" for RailGauge", "\"Time\", \"Speed\", \"Boost\", \"Rail\", \"Lambda\""] },
        { "\"column\": \"Boost\"", "\"column\": \"boost\"", ["there is no \"boost\"", "Did you mean \"Boost\"?"] },
        { "\"column\": \"Speed\"", "\"column\": \"RPM\"", ["there is no \"RPM\" for Speed"] },
        { "\"column\": \"Lambda\"", "\"column\": 9", ["for Lambda", "take the channel out of it"] },
        { "\"lambda\"", "\"lamda\"", ["lamda", "Did you mean lambda?"] },
        { "\"unit\": \"kPa\", \"reference\": \"gauge\" },\n    \"lambda\"", "\"unit\": \"psig\", \"reference\": \"gauge\" },\n    \"lambda\"", ["psig", "psi"] },
    };

    /// <summary>The list is as long as it is said to be.</summary>
    [Fact]
    public void Inputs_AreMoreThanSixty() => Assert.InRange(Settings.Count + Fields.Count + Mappings.Count, 60, 200);

    [Theory]
    [MemberData(nameof(Settings))]
    public async Task Setting_Mistyped_IsRefusedOrQuestioned(string notebook, string typed, int code, string[] said)
    {
        string path = Directory.GetFiles(Repository.PathOf("notebooks"), $"{notebook}-*.ipynb").Single();
        await Says([path, "--set", typed], code, said);
    }

    [Theory]
    [MemberData(nameof(Fields))]
    public async Task FieldOfASetup_Mistyped_IsRefusedOrQuestioned(string typed, int code, string[] said)
    {
        string path = Directory.GetFiles(Repository.PathOf("notebooks"), "01-*.ipynb").Single();
        await Says([path, "--setup", Repository.PathOf("docs/wren-setup.json"), "--set", typed], code, said);
    }

    [Theory]
    [MemberData(nameof(Mappings))]
    public void Mapping_Mistyped_StopsThere(string good, string bad, string[] said)
    {
        const string mapping = """
            {
              "mapping": 1,
              "channels": {
                "time": { "column": "Time", "unit": "s" },
                "speed": { "column": "Speed", "unit": "rev/min" },
                "manifold_pressure": { "column": "Boost", "unit": "kPa", "reference": "gauge" },
                "rail_pressure": { "column": "Rail", "unit": "kPa", "reference": "gauge" },
                "lambda": { "column": "Lambda" }
              }
            }
            """;
        Assert.Contains(good, mapping, StringComparison.Ordinal);
        Exception refused = Assert.ThrowsAny<FormatException>(() =>
        {
            using StringReader log = new("Time,Speed,Boost,Rail,Lambda\n0,3000,50,350,0.85\n");
            using RunReader reader = RunReader.Open(
                log, RunMappingFile.Parse("mapping.json", mapping.Replace(good, bad, StringComparison.Ordinal)), FuelSizing.Engines.Atmosphere.Standard);
        });
        Assert.All(said, words => Assert.Contains(words, refused.Message, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Question_Confirmed_LetsTheNotebookRun()
    {
        using var notebook = InventedNotebook.OfText(InputSettingTests.MarkedText("""
            using UnitsNet;
            var staticFlow = VolumeFlow.FromMillilitersPerMinute(360);
            Console.WriteLine(staticFlow.MillilitersPerMinute);
            """));
        ProgramRun asked = await notebook.RunAsync("--set", "staticFlow=24mL/min");
        Assert.Equal(6, asked.Code);
        Assert.Null(asked.Report);

        ProgramRun confirmed = await notebook.RunAsync("--set", "staticFlow=24mL/min", "--accept", "staticFlow");
        Assert.Equal(0, confirmed.Code);
        Assert.Contains("confirmed: staticFlow is 24 mL/min", confirmed.Output, StringComparison.Ordinal);

        ProgramRun meant = await notebook.RunAsync("--set", "staticFlow=24lb/h");
        Assert.Equal(0, meant.Code);
        Assert.Contains("24 lb/h converted by the density of n-heptane", meant.Output, StringComparison.Ordinal);
    }

    /// <summary>A notebook that was edited by hand is asked the same.</summary>
    [Fact]
    public async Task Notebook_EditedByHand_IsQuestionedToo()
    {
        using var notebook = InventedNotebook.OfText(InputSettingTests.MarkedText("using UnitsNet;\nvar bsfc = BrakeSpecificFuelConsumption.FromGramsPerKiloWattHour(0.5);"));
        ProgramRun run = await notebook.RunAsync();
        Assert.Equal(6, run.Code);
        Assert.Contains("0.5 lb/hp·h", run.Error, StringComparison.Ordinal);
    }

    private async Task Says(string[] arguments, int code, string[] said)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        string report = Path.Combine(_folder.FullName, "report.html");
        int ended = await NotebookProgram.RunAsync([.. arguments, "--output", report, "--timeout", "0.1"], output, error);
        Assert.Equal((code, error.ToString()), (ended, error.ToString()));
        Assert.All(said, words => Assert.Contains(words, error.ToString(), StringComparison.Ordinal));
        Assert.False(File.Exists(report));
    }
}
