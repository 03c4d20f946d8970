using FuelSizing.Circuits;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>The circuit as the fuel meets it, from the tank round to the tank.</summary>
internal sealed class CircuitWalk
{
    private readonly OperatingResult _result;
    private readonly CircuitResult _circuit;
    private readonly List<IReadOnlyList<string>> _rows = [];
    private readonly TextStyle _style;

    public CircuitWalk(OperatingResult result, TextStyle style)
    {
        _style = style;
        _result = result;
        _circuit = result.Circuit;
        int suction = result.System.Plumbing.Suction.Count;
        int toRegulator = result.System.Plumbing.ToRegulator.Count;
        int before = suction + toRegulator;
        int supply = result.System.Plumbing.Supply.Count;
        string pumpFlow = CircuitText.Known(_circuit.PumpFlow, style.PumpFlow);

        Place("tank", "", Pressure.Zero, "open to ambient air");
        Paths(0, suction);
        Place("pump inlet", pumpFlow, _circuit.InletGauge, "");
        foreach (BranchResult branch in _circuit.Branches)
        {
            Own(branch, branch.Suction);
            Row($"inlet of {branch.Branch.Name}", style.PumpFlow(branch.Flow), style.Of(branch.InletGauge), "", "");
        }

        foreach (PumpResult pump in _circuit.Pumps)
        {
            Row(pump.Pump.Name, style.PumpFlow(pump.Flow), "", style.PressureChange(pump.PressureRise), CircuitText.Electrical(pump, style));
        }

        foreach (BranchResult branch in _circuit.Branches)
        {
            Row($"outlet of {branch.Branch.Name}", style.PumpFlow(branch.Flow), style.Of(branch.OutletGauge), "", branch.IsShut ? "shut: its pump is off, or does not lift its check valve" : "");
            Own(branch, branch.Discharge);
        }

        Place(_circuit.Branches.Count > 0 ? "joint of the branches" : "pump outlet", pumpFlow, _circuit.OutletGauge, "");

        // A regulator in the tank lets the surplus go before the way to the rail, one at the rail after it.
        bool inTank = result.System.Layout == LineLayout.Returnless;
        if (inTank)
        {
            Paths(suction, toRegulator);
            Back(before + supply, _circuit.OutletGauge - _circuit.Paths.Skip(suction).Take(toRegulator).Aggregate(Pressure.Zero, (sum, part) => sum + part.PressureLoss));
        }

        Paths(before, supply);
        Place("rail", "", _circuit.RailGauge, $"governed by: {CircuitText.Governs(result)}");
        Row(
            "injectors",
            style.PumpFlow(result.InjectedFlow),
            "",
            style.PressureChange(-result.InjectorDifferential),
            $"{WorkingShown.Formula(result.WorkingIn(style), "Δp")}, into the engine");
        if (!inTank)
        {
            Back(before + supply, _circuit.RailGauge);
        }

        Row("fuel in the tank", "", "", "", $"warmed by the pumps with {CircuitText.Known(_circuit.HeatToTank, style.Heat)}");
    }

    public Table Table() => new(
        $"The circuit at {PartText.Say(_result.Point, _style)}",
        [
            TableColumn.Text("Place or part"),
            TableColumn.Number("Flow"),
            TableColumn.Number("Pressure, gauge"),
            TableColumn.Number("Gained or lost"),
            TableColumn.Text("Remark"),
        ],
        _rows);

    private void Back(int first, Pressure? before)
    {
        // A pump held by its speed has no regulator and no return line.
        if (_result.System.Regulator is ElectronicReturnless)
        {
            return;
        }

        Row(
            "regulator",
            CircuitText.Known(_circuit.ReturnedFlow, _style.PumpFlow),
            "",
            CircuitText.Known(_circuit.ReturnGauge - before, _style.PressureChange),
            PartText.Say(_result.System.Regulator, _style));
        Paths(first, _circuit.Paths.Count - first);
    }

    private void Paths(int first, int count)
    {
        foreach (PathResult way in _circuit.Paths.Skip(first).Take(count))
        {
            Row(way.Name, _style.PumpFlow(way.Flow), "", _style.PressureChange(-way.PressureLoss), "");
        }
    }

    private void Own(BranchResult branch, IReadOnlyList<PathResult> paths)
    {
        foreach (PathResult way in paths)
        {
            Row($"{way.Name} of {branch.Branch.Name}", _style.PumpFlow(way.Flow), "", _style.PressureChange(-way.PressureLoss), "");
        }
    }

    private void Place(string name, string flow, Pressure? gauge, string remark) =>
        Row(name, flow, CircuitText.Known(gauge, _style.Of), "", remark);

    private void Row(string name, string flow, string gauge, string change, string remark) =>
        _rows.Add([name, flow, gauge, change, remark]);
}
