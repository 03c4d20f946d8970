namespace FuelSizing.Tests.Files.Catalogues;

/// <summary>Good catalogue files with invented parts: the same parts as JSON and as comma-separated values.</summary>
internal static class ShelfFiles
{
    public const string Injectors =
        """"
        injectors 1,static_flow [mL/min],rated_differential [kPa],test_fluid,test_density,minimum_linear_pulse [ms],maximum_differential [kPa],cost,dead_times.voltage [V],dead_times.differential [kPa],dead_times.time [ms]
        injector A,360,300,,,1.6,550,160,8,300,2.4
        injector A,,,,,,,,12,300,1.1
        injector A,,,,,,,,16,300,0.7
        injector A,,,,,,,,8,500,2.9
        injector A,,,,,,,,12,500,1.3
        injector A,,,,,,,,16,500,0.8
        "injector B, ""short""",640,300,test oil,770 kg/m³,1.5,600,240.50,8,,2.1
        "injector B, ""short""",,,,,,,,16,,0.6

        """";

    public const string Pumps =
        """
        pumps 1,relief [kPa],condition [%],cost,curve.voltage [V],curve.pressure_rise [kPa],curve.flow [L/h],curve.current [A]
        pump P,,90,180,13.5,0,215,4.5
        pump P,,,,13.5,300,165,7
        pump P,,,,13.5,750,0,12
        pump Q,700,,,12,0,200,
        pump Q,,,,12,600,60,
        pump Q,,,,13.5,0,230,
        pump Q,,,,13.5,600,100,

        """;

    public const string Regulators =
        """
        regulators 1,kind,base [kPa],gain,onset [bar],ceiling [kPa],minimum_return_flow [L/h],follows_manifold,minimum_voltage [V],in_series_with,cost
        regulator F,fixed,300,,,,,,,,40
        regulator M,manifold-referenced,300,,,,15,,,,60
        unit R,rising-rate,300,6,0.1,700,,,,,
        unit S,rising-rate,,8,0.05,,,,,regulator M,110
        controller E,electronic,350,,,,,true,6,,300

        """;

    public const string Json =
        """
        {
          "catalogue": 1,
          "injectors": [
            {
              "name": "injector A", "static_flow": "360 mL/min", "rated_differential": "3 bar",
              "minimum_linear_pulse": "1.6 ms", "maximum_differential": "550 kPa", "cost": 160,
              "dead_times": [
                { "voltage": "8 V", "differential": "300 kPa", "time": "2.4 ms" },
                { "voltage": "12 V", "differential": "300 kPa", "time": "1.1 ms" },
                { "voltage": "16 V", "differential": "300 kPa", "time": "0.7 ms" },
                { "voltage": "8 V", "differential": "500 kPa", "time": "2.9 ms" },
                { "voltage": "12 V", "differential": "500 kPa", "time": "1.3 ms" },
                { "voltage": "16 V", "differential": "500 kPa", "time": "0.8 ms" }
              ]
            },
            {
              "name": "injector B, \"short\"", "static_flow": "640 cc/min", "rated_differential": "300 kPa",
              "test_fluid": "test oil", "test_density": "770 kg/m3",
              "minimum_linear_pulse": "1500 us", "maximum_differential": "600 kPa", "cost": 240.50,
              "dead_times": [ { "voltage": "8 V", "time": "2.1 ms" }, { "voltage": "16 V", "time": "0.6 ms" } ]
            }
          ],
          "pumps": [
            {
              "name": "pump P", "condition": "90 %", "cost": 180,
              "curve": [
                { "voltage": "13.5 V", "pressure_rise": "0 kPa", "flow": "215 L/h", "current": "4.5 A" },
                { "voltage": "13.5 V", "pressure_rise": "300 kPa", "flow": "165 L/h", "current": "7 A" },
                { "voltage": "13.5 V", "pressure_rise": "750 kPa", "flow": "0 L/h", "current": "12 A" }
              ]
            },
            {
              "name": "pump Q", "relief": "7 bar",
              "curve": [
                { "voltage": "12 V", "pressure_rise": "0 kPa", "flow": "200 L/h" },
                { "voltage": "12 V", "pressure_rise": "600 kPa", "flow": "60 L/h" },
                { "voltage": "13.5 V", "pressure_rise": "0 kPa", "flow": "230 L/h" },
                { "voltage": "13.5 V", "pressure_rise": "600 kPa", "flow": "100 L/h" }
              ]
            }
          ],
          "regulators": [
            { "name": "regulator F", "kind": "fixed", "base": "300 kPa", "cost": 40 },
            { "name": "regulator M", "kind": "manifold-referenced", "base": "300 kPa", "minimum_return_flow": "15 L/h", "cost": 60 },
            { "name": "unit R", "kind": "rising-rate", "base": "300 kPa", "gain": 6, "onset": "0.1 bar", "ceiling": "700 kPa" },
            { "name": "unit S", "kind": "rising-rate", "gain": 8, "onset": "0.05 bar", "in_series_with": "regulator M", "cost": 110 },
            { "name": "controller E", "kind": "electronic", "base": "350 kPa", "follows_manifold": true, "minimum_voltage": "6 V", "cost": 300 }
          ]
        }

        """;
}
