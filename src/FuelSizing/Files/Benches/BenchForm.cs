using FuelSizing.Bench;

namespace FuelSizing.Files;

/// <summary>The lists of a file of tests at a bench: each test with its accuracy and its readings.</summary>
internal static class BenchForm
{
    /// <summary>The form of its JSON file; tests of several files are read together, list by list.</summary>
    public static FileForm<BenchTests> File { get; } = new(
        "bench",
        "Tests of parts at a bench; see bench.md.",
        new("bench", "tests at a bench", _ => null)
        {
            { new ListField<PulseTest>("pulse_tests", () => InjectorBenchForm.PulseTests, "injectors weighed in pulses") { Optional = true }, tests => tests.PulseTests },
            { new ListField<StaticTest>("static_tests", () => InjectorBenchForm.StaticTests, "injectors held open") { Optional = true }, tests => tests.StaticTests },
            { new ListField<PumpFlowTest>("pump_tests", () => PumpBenchForm.FlowTests, "pumps that fill a vessel") { Optional = true }, tests => tests.PumpTests },
            { new ListField<DeadheadTest>("deadhead_tests", () => PumpBenchForm.DeadheadTests, "pumps with their outlet shut") { Optional = true }, tests => tests.DeadheadTests },
            { new ListField<VoltageDropTest>("voltage_drop_tests", () => WiringBenchForm.Tests, "voltage across parts of the wiring") { Optional = true }, tests => tests.VoltageDropTests },
            { new ListField<RegulatorTest>("regulator_tests", () => RegulatorBenchForm.Tests, "regulators by their gauge") { Optional = true }, tests => tests.RegulatorTests },
            { new ListField<ConsumptionTest>("consumption_tests", () => EngineBenchForm.Tests, "tanks weighed before and after steady runs") { Optional = true }, tests => tests.ConsumptionTests },
        });
}
