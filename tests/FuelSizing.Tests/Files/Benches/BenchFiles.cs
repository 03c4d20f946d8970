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

    /// <summary>A pump at one voltage, by mass and with its current.</summary>
    public const string Pumps = """
        pump_tests 1,scale [g],clock [s],gauge_reading [kPa],gauge_zero [kPa],gauge_span [%],density [%],calibration [%],ammeter [A],readings.rise [kPa],readings.voltage [V],readings.weighed [g],readings.time [s],readings.current [A]
        pump S,2,0.1,1,2,0.5,0.2,0.2,0.1,0,13.5,1214,30,5.1
        pump S,,,,,,,,,0,13.5,1209,30,5.2
        pump S,,,,,,,,,200,13.5,1043,30,6.0
        pump S,,,,,,,,,200,13.5,1047,30,6.1
        pump S,,,,,,,,,400,13.5,861,30,7.2
        pump S,,,,,,,,,400,13.5,864,30,7.1

        """;

    /// <summary>The same pump with its outlet shut; at the higher voltage the gauge ended.</summary>
    public const string Stops = """
        deadhead_tests 1,gauge_reading [kPa],gauge_zero [kPa],gauge_span [%],readings.voltage [V],readings.rise [kPa],readings.gauge_end
        pump S,4,2,0.5,12,688,
        pump S,,,,12,694,
        pump S,,,,12,690,
        pump S,,,,13.5,800,true

        """;

    /// <summary>A ground return.</summary>
    public const string Drops = """
        voltage_drop_tests 1,meter [mV],offset [mV],ammeter [A],calibration [%],readings.current [A],readings.drop [mV]
        ground stud,0.8,0.5,0.02,0.8,0,0.4
        ground stud,,,,,4,101
        ground stud,,,,,4,102
        ground stud,,,,,8,202
        ground stud,,,,,12,305
        ground stud,,,,,16,405

        """;

    /// <summary>A rising-rate unit.</summary>
    public const string Regulators = """
        regulator_tests 1,follows_manifold,rail_gauge_reading [kPa],rail_gauge_zero [kPa],rail_gauge_span [%],applied_gauge_reading [kPa],applied_gauge_zero [kPa],applied_gauge_span [%],readings.applied [kPa],readings.rail_gauge [kPa]
        unit Q,true,2,1,0.5,0.3,0.2,0.5,0,301
        unit Q,,,,,,,,10,311
        unit Q,,,,,,,,20,339
        unit Q,,,,,,,,40,461
        unit Q,,,,,,,,60,581
        unit Q,,,,,,,,45,491
        unit Q,,,,,,,,5,305

        """;

    /// <summary>Steady runs of an engine.</summary>
    public const string Runs = """
        consumption_tests 1,scale [g],clock [s],power [%],calibration [%],readings.before [kg],readings.after [kg],readings.time [s],readings.power [kW]
        Wren at 6400,5,0.2,0.5,1.5,31.240,29.905,90,162
        Wren at 6400,,,,,29.905,28.561,90,162
        Wren at 6400,,,,,28.561,27.222,90,162

        """;

    /// <summary>The injector held open, by volume, as JSON.</summary>
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
