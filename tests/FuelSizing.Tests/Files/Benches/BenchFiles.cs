namespace FuelSizing.Tests.Files.Benches;

/// <summary>Filled-in sheets of invented tests.</summary>
internal static class BenchFiles
{
    /// <summary>One injector at two voltages: a line with conditions of its own begins the second.</summary>
    public const string Pulses = """
        pulse_tests 1,differential [kPa],voltage [V],scale [mg],calibration [%],readings.pulse [ms],readings.injections,readings.collected [g]
        injector C,300,13.5,10,0.3,1.6,1000,3.05
        injector C,,,,,2,1000,5.22
        injector C,,,,,3,1000,10.44
        injector C,,,,,4,1000,15.66
        injector C,,,,,6,1000,26.12
        injector C,,,,,8,1000,36.54
        injector C,,,,,10,1000,47.00
        injector C,300,11,10,0.3,1.9,1000,3.2
        injector C,,,,,2.3,1000,5.27
        injector C,,,,,3.3,1000,10.46
        injector C,,,,,4.3,1000,15.69
        injector C,,,,,6.3,1000,26.1
        injector C,,,,,8.3,1000,36.6
        injector C,,,,,10.3,1000,46.96

        """;

    /// <summary>By mass, then by volume of another liquid.</summary>
    public const string Statics = """
        static_tests 1,differential [kPa],scale [g],graduation [mL],clock [s],calibration [%],test_fluid,test_density [kg/m³],readings.time [s],readings.weighed [g],readings.filled [mL]
        injector C,300,0.1,,0.1,0.3,,,20,105.9,
        injector C,,,,,,,,20,106.2,
        injector C,,,,,,,,60,316.4,
        injector D,300,,1,0,0.3,club bench oil,770,30,,229
        injector D,,,,,,,,30,,230
        injector D,,,,,,,,30,,231

        """;

    /// <summary>The second of those as JSON.</summary>
    public const string Json = """
        {
          "bench": 1,
          "static_tests": [
            {
              "name": "injector D",
              "test_fluid": "club bench oil",
              "test_density": "770 kg/m³",
              "differential": "300 kPa",
              "graduation": "1 mL",
              "clock": "0 s",
              "calibration": "0.3 %",
              "readings": [
                { "time": "30 s", "filled": "229 mL" },
                { "time": "30 s", "filled": "230 mL" },
                { "time": "30 s", "filled": "231 mL" }
              ]
            }
          ]
        }
        """;
}
