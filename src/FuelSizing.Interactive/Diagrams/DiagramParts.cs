using FuelSizing.Checks;
using FuelSizing.Circuits;
using FuelSizing.Injectors;
using FuelSizing.Lines;
using FuelSizing.Points;
using FuelSizing.Pumps;
using FuelSizing.Quantities;
using FuelSizing.Regulators;
using FuelSizing.Systems;
using UnitsNet;

namespace FuelSizing.Interactive;

/// <summary>The parts of a system in the order of flow, and the pieces that its diagram is put together from.</summary>
internal sealed class DiagramParts
{
    private readonly FuelSystem _system;
    private readonly OperatingResult? _result;
    private readonly TextStyle _style;
    private readonly DiagramMarks _marks;
    private readonly List<DiagramPart> _order = [];

    public DiagramParts(FuelSystem system, OperatingResult? result, TextStyle style)
    {
        (_system, _result, _style, _marks) = (system, result, style, new(result, style));
        Plumbing lines = system.Plumbing;
        IReadOnlyList<PathResult> paths = result?.Circuit.Paths ?? [];
        IReadOnlyList<BranchResult> branches = result?.Circuit.Branches ?? [];
        int before = lines.Suction.Count;
        int supply = before + lines.ToRegulator.Count;
        int back = supply + lines.Supply.Count;
        IFlowLoss? filter = NearestToItsEnd(
            [.. With([.. lines.Suction, .. lines.ToRegulator, .. lines.Supply, .. lines.ReturnLine], paths), .. Own(system.Pump, branches)]);
        MainTank = Add(Tank());
        if (system.SurgeTank is { } tank)
        {
            Lift(tank);
        }

        string destination = system.SurgeTank is null ? "tank" : "surge tank";
        List<DiagramBlock> up = [.. Path(lines.Suction, paths, 0, filter, Part.Filter, $"from the {destination}")];
        up.AddRange(Place("pump inlet", result?.Circuit.InletGauge, null, _marks.Take(Part.Suction)));
        DiagramPumps pumps = new(system.Pump, result?.Circuit.Pumps ?? [], branches, result is not null, filter, _marks, DiagramPumps.Judged.Main, style);
        up.Add(pumps.Block());
        _order.AddRange(pumps.Parts);
        up.AddRange(Place("pump outlet", result?.Circuit.OutletGauge, result?.Circuit.PumpFlow, _marks.Take(DiagramPumps.Judged.Main.All), isOutlet: true));
        bool isInTank = system.Layout == LineLayout.Returnless && system.Regulator is not ElectronicReturnless;
        Joins = isInTank;
        if (isInTank)
        {
            // What lies before a regulator that sits before the rail passes all that the pumps do.
            up.AddRange(Path(lines.ToRegulator, paths, before, filter, Part.Filter, "to the regulator"));
            Back = Return(lines, paths, back, filter);
        }

        List<DiagramBlock> after = [.. Path(lines.Supply, paths, supply, filter, Part.Filter, "to the rail")];
        (Before, After) = (new(up), new(after));
        Rail = Add(RailPart());
        Injectors = Add(InjectorsPart());
        if (system.Regulator is ElectronicReturnless controller)
        {
            Back = new StackBlock([new PartBlock(Add(Controller(controller)))]);
        }
        else if (!isInTank)
        {
            Back = Return(lines, paths, back, filter);
        }

        Left = _marks.Left;
    }

    /// <summary>Every part, in the order of flow.</summary>
    public IReadOnlyList<DiagramPart> Order => _order;

    public DiagramPart MainTank { get; }

    public DiagramPart? SurgeTank { get; private set; }

    public DiagramPart Rail { get; }

    public DiagramPart Injectors { get; }

    /// <summary>From the main tank to the surge tank; none without one.</summary>
    public StackBlock? Lifting { get; private set; }

    /// <summary>From the surge tank back to the main tank; none without one.</summary>
    public StackBlock? Overflow { get; private set; }

    /// <summary>From the tank to the pumps' outlet.</summary>
    public StackBlock Before { get; }

    /// <summary>From there to the rail.</summary>
    public StackBlock After { get; }

    /// <summary>Regulator and return line, or the controller of a pump held by its speed.</summary>
    public StackBlock Back { get; } = new([]);

    /// <summary>True where the regulator sits at the pumps' outlet, not at the rail.</summary>
    public bool Joins { get; }

    /// <summary>True where fuel comes back.</summary>
    public bool Returns => _system.Regulator is not ElectronicReturnless;

    /// <summary>True where it comes back to the main tank, past a surge tank.</summary>
    public bool PassesSurgeTank => Returns && _system.SurgeTank?.ReturnsTo == ReturnDestination.MainTank;

    /// <summary>What is described and carries nothing: a pump held by its speed has no use for a return line.</summary>
    public IReadOnlyList<string> NotDrawn => Returns ? [] : [.. _system.Plumbing.ReturnLine.Select(part => part.Name)];

    /// <summary>Checks that stand out and judge no drawn part.</summary>
    public IReadOnlyList<DiagramMark> Left { get; }

    private DiagramPart Add(DiagramPart part)
    {
        _order.Add(part);
        return part;
    }

    private DiagramPart Tank()
    {
        string[] figures = _result is null ? [] : [_style.Of(_result.Point.Conditions.TankTemperature)];
        return new(DiagramSymbol.Tank, _system.SurgeTank is null ? "fuel tank" : "main fuel tank", ["open to ambient air", .. figures], string.Join(", ", ["open to ambient air", .. figures]));
    }

    private void Lift(SurgeTank tank)
    {
        SurgeTankResult? lift = _result?.SurgeTank;
        IReadOnlyList<PathResult> paths = lift?.Paths ?? [];
        int line = tank.Suction.Count;
        int over = line + tank.LiftLine.Count;
        IFlowLoss? filter = NearestToItsEnd(With([.. tank.Suction, .. tank.LiftLine, .. tank.Overflow], paths));
        List<DiagramBlock> up = [.. Path(tank.Suction, paths, 0, filter, Part.LiftFilter, "from the main tank")];
        up.AddRange(Place("lift pump inlet", lift?.LiftInletGauge, null, _marks.Take(Part.LiftSuction)));
        DiagramPumps pumps = new(tank.LiftPump, lift?.Pumps ?? [], [], _result is not null, null, _marks, DiagramPumps.Judged.Lift, _style);
        up.Add(pumps.Block());
        _order.AddRange(pumps.Parts);
        up.AddRange(Place("lift pump outlet", lift?.LiftOutletGauge, lift?.Lifted, _marks.Take(DiagramPumps.Judged.Lift.All), isOutlet: true));
        up.AddRange(Path(tank.LiftLine, paths, line, filter, Part.LiftFilter, "to the surge tank"));
        Lifting = new(up);
        List<string> lines = [$"{_style.Of(tank.UsableVolume)} usable"];
        if (lift is not null)
        {
            lines.Add(lift.TankGauge is { } gauge ? _style.Of(gauge) : $"pressure: {CircuitText.Unknown}");
            lines.Add(Flow(lift.Lifted, "lifted"));
            lines.Add(Flow(lift.NetDraw, "net draw"));
            lines.Add(Flow(lift.Overflow, "overflow"));
            if (lift.Lifted is not null && lift.NetDraw is not null)
            {
                lines.Add(lift.IsFull ? "stays full" : "does not stay full");
            }
        }

        SurgeTank = Add(new(DiagramSymbol.SurgeTank, "surge tank", lines, string.Join(", ", [.. lines, $"return of the main circuit to the {(tank.ReturnsTo == ReturnDestination.SurgeTank ? "surge" : "main")} tank"]))
        {
            Marks = _marks.Take(Part.SurgeTank),
        });
        Overflow = new([.. Path(tank.Overflow, paths, over, filter, Part.LiftFilter, "overflow, back to the main tank")]);
    }

    private IEnumerable<DiagramBlock> Path(IReadOnlyList<IFlowLoss> parts, IReadOnlyList<PathResult> paths, int first, IFlowLoss? filter, Part judged, string where)
    {
        for (int one = 0; one < parts.Count; one++)
        {
            IFlowLoss part = parts[one];
            PathResult? result = first + one < paths.Count ? paths[first + one] : null;
            yield return new PartBlock(Add(DiagramPath.PartOf(part, result, _result is not null, where, ReferenceEquals(part, filter) ? _marks.Take(judged) : [], _style)));
        }
    }

    /// <summary>The filter with the largest flow in proportion to the end of its data, which is the one that is judged.</summary>
    private static IFlowLoss? NearestToItsEnd(IEnumerable<(IFlowLoss Part, PathResult? Result)> parts) =>
        parts.Where(one => one.Part is Filter)
            .OrderByDescending(one => one.Result is { } result ? result.Flow / ((Filter)one.Part).MaximumFlow : 0)
            .FirstOrDefault()
            .Part;

    private static IEnumerable<(IFlowLoss Part, PathResult? Result)> With(IFlowLoss[] parts, IReadOnlyList<PathResult> paths) =>
        parts.Select((part, place) => (part, place < paths.Count ? paths[place] : null));

    private static IEnumerable<(IFlowLoss Part, PathResult? Result)> Own(PumpAssembly pumps, IReadOnlyList<BranchResult> branches) => branches.Count > 0
        ? branches.SelectMany(branch => (IEnumerable<(IFlowLoss, PathResult?)>)
            [.. With([.. branch.Branch.Suction], branch.Suction), .. With([.. branch.Branch.Discharge], branch.Discharge)])
        : DiagramPumps.BranchesOf(pumps).SelectMany(branch => With([.. branch.Suction, .. branch.Discharge], []));

    /// <summary>A place with its pressure; nothing in a description, which has no pressures.</summary>
    private DiagramBlock[] Place(string name, Pressure? gauge, VolumeFlow? flow, IReadOnlyList<DiagramMark> marks, bool isOutlet = false)
    {
        if (_result is null)
        {
            return [];
        }

        List<string> lines = [];
        if (gauge is { } known)
        {
            lines.Add(isOutlet && flow is { } through ? $"{_style.PumpFlow(through)}, {_style.Of(known)}" : _style.Of(known));
        }
        else
        {
            lines.Add(CircuitText.Unknown);
        }

        return [new PartBlock(Add(new(DiagramSymbol.Place, name, lines, lines[0]) { Marks = marks }))];
    }

    private DiagramPart RailPart()
    {
        IReadOnlyList<DiagramMark> marks = _marks.Take(Part.PressureRating);
        if (_result is null)
        {
            string rated = _system.Limits.RailCeiling is { } ceiling ? $"rated for {_style.Of(ceiling)}" : string.Empty;
            return new(DiagramSymbol.Rail, "rail", rated.Length > 0 ? [rated] : [], rated);
        }

        CircuitResult circuit = _result.Circuit;
        bool isKnown = circuit.PumpFlow is not null;
        string pressure = isKnown ? _style.Of(_result.RailGauge) : $"{CircuitText.Unknown}, set {_style.Of(_result.RailSetGauge)}";
        string into = Flow(_system.Layout == LineLayout.Return ? circuit.PumpFlow : circuit.DeliveredFlow, "in");
        string governs = $"governed by: {CircuitText.Governs(_result)}";
        return new(DiagramSymbol.Rail, "rail", isKnown ? [pressure, into, governs] : [pressure], string.Join(", ", isKnown ? [pressure, into, governs] : [pressure])) { Marks = marks };
    }

    private DiagramPart InjectorsPart()
    {
        StagedInjectors? staged = _system.StagedInjectors;
        string name = Named(_system.Injectors) + (staged is null ? string.Empty : $" and secondary {Named(staged.Secondary)}");
        int count = _system.Injectors.Count + (staged?.Secondary.Count ?? 0);
        IReadOnlyList<DiagramMark> marks = _marks.Take(
            Part.Injectors, Part.MinimumPulse, Part.OpeningPressure, Part.SecondaryInjectors, Part.SecondaryMinimumPulse, Part.SecondaryOpeningPressure);
        if (_result is null)
        {
            string[] rated = [Rated(_system.Injectors), .. staged is null ? Array.Empty<string>() : [$"secondary {Rated(staged.Secondary)}"]];
            return new(DiagramSymbol.Injectors, name, rated, string.Join(", ", rated)) { Count = count };
        }

        string delivered = _result.Circuit.DeliveredFlow is { } flow
            ? $"{_style.PumpFlow(flow)} into the engine{(_result.RailState == RailState.Starved ? $", which asks for {_style.PumpFlow(_result.InjectedFlow)}" : string.Empty)}"
            : $"{CircuitText.Unknown}; the engine asks for {_style.PumpFlow(_result.InjectedFlow)}";
        string across = $"{_style.Of(_result.InjectorDifferential)} across, duty cycle {CircuitText.Known(_result.DutyCycle, _style.DutyCycle)}";

        // Where the pumps' data does not cover the point, there is no pressure across them either.
        string[] secondary = _result.SecondaryInjection is { } second ? [PartText.Say(second, _style)] : [];
        string[] lines = _result.Circuit.PumpFlow is null ? [delivered] : [delivered, across, .. secondary];
        return new(DiagramSymbol.Injectors, name, lines, string.Join(", ", lines)) { Count = count, Marks = marks };

        string Named(InjectorSet set) => $"{_style.Count(set.Count)} × {set.Injector.Name}";

        string Rated(InjectorSet set) => $"{_style.InjectorFlow(set.Injector.StaticFlow)} each at {_style.Of(set.Injector.RatedDifferential)}";
    }

    private StackBlock Return(Plumbing lines, IReadOnlyList<PathResult> paths, int first, IFlowLoss? filter)
    {
        PressureRegulator[] units = [.. Units(_system.Regulator)];
        List<DiagramBlock> back = [.. units.Select((unit, place) => new PartBlock(Add(Regulator(unit, place, units))))];
        back.AddRange(Place("return line inlet", _result?.Circuit.ReturnGauge, null, _marks.Take(Part.ReturnLine)));
        back.AddRange(Path(lines.ReturnLine, paths, first, filter, Part.Filter, PassesSurgeTank || _system.SurgeTank is null ? "back to the tank" : "back to the surge tank"));
        return new(back);
    }

    private static IEnumerable<PressureRegulator> Units(PressureRegulator regulator) =>
        regulator is RegulatorSeries series ? [.. Units(series.BaseRegulator), series.Unit] : [regulator];

    private DiagramPart Regulator(PressureRegulator unit, int place, PressureRegulator[] all)
    {
        string name = unit switch
        {
            Fixed => "fixed regulator",
            RisingRate => "rising-rate unit",
            _ => "regulator",
        };
        string? reference = unit is ManifoldReferenced or RisingRate ? ManifoldWords : null;
        List<string> lines = [];
        if (_result is not null)
        {
            Pressure boost = _result.Point.Boost;
            lines.Add($"set {_style.Of(unit.RailGauge(boost))}");
            lines.Add(Flow(_result.Circuit.ReturnedFlow, "returned"));
            if (all.Length > 1)
            {
                double[] set = [.. all.Select(other => other.RailGauge(boost).Pascals)];
                bool isHighest = place == Array.IndexOf(set, set.Max());
                bool isRegulated = _result.RailState is RailState.Regulated or RailState.AtRegulatorLimit;
                lines.Add(isHighest ? isRegulated ? "governs" : "the higher setting" : isRegulated ? "stands open" : "a lower setting");
            }
        }
        else
        {
            lines.Add(PartText.Say(unit, _style));
        }

        return new(DiagramSymbol.Regulator, name, lines, string.Join(", ", ((string?[])[PartText.Say(unit, _style), .. _result is null ? (string?[])[] : [reference, .. lines]]).OfType<string>())) { Reference = reference };
    }

    private string ManifoldWords => _result is null ? "manifold" : $"manifold, {_style.Boost(_result.Point.Boost)}";

    private DiagramPart Controller(ElectronicReturnless controller)
    {
        string[] figures = _result is null ? [PartText.Say(controller, _style)]
            : [$"set {_style.Of(_result.RailSetGauge)}", _result.Circuit.Pumps.Count > 0 ? $"pumps fed with {_style.Of(_result.Circuit.Pumps[0].SourceVoltage)}" : CircuitText.Unknown];
        return new(DiagramSymbol.PumpController, "pump controller", figures, string.Join(", ", _result is null ? figures : [PartText.Say(controller, _style), .. figures, "nothing returns"]))
        {
            Reference = controller.FollowsManifold ? ManifoldWords : null,
            Marks = _marks.Take(Part.PumpControl),
        };
    }

    private string Flow(VolumeFlow? flow, string what) => flow is { } known ? $"{_style.PumpFlow(known)} {what}" : $"{what}: {CircuitText.Unknown}";
}
