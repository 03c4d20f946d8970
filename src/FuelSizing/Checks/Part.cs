using FuelSizing.Quantities;

namespace FuelSizing.Checks;

/// <summary>What a check judges: a stable code, and the name by which results show it.</summary>
/// <remarks>Two are the same if their codes are. A check of one's own has a part of its own: <see cref="Of"/>.</remarks>
public sealed class Part : IEquatable<Part>
{
    private Part(string code, string name) => (Code, Name) = (code, name);

    /// <summary>The injectors' flow: duty cycle against its limit.</summary>
    public static Part Injectors { get; } = new("injectors", "injectors");

    /// <summary>The injectors' pulse against the minimum linear pulse width.</summary>
    public static Part MinimumPulse { get; } = new("minimum-pulse", "minimum pulse width");

    /// <summary>Differential pressure across the injectors against the maximum at which they open.</summary>
    public static Part OpeningPressure { get; } = new("opening-pressure", "maximum opening differential pressure");

    /// <summary>The pump: delivered flow at rail pressure against injected flow, reserve and minimum return.</summary>
    public static Part Pump { get; } = new("pump", "pump");

    /// <summary>The return line: the pressure at which it passes the surplus against the one set.</summary>
    public static Part ReturnLine { get; } = new("return-line", "return line");

    /// <summary>The regulator: the flow that returns through it against the least at which it governs.</summary>
    public static Part Regulator { get; } = new("regulator", "regulator");

    /// <summary>A speed-controlled pump at its lowest speed: rail pressure against the target.</summary>
    public static Part PumpControl { get; } = new("pump-control", "pump control");

    /// <summary>The pump's inlet: pressure there against the fuel's vapour pressure.</summary>
    public static Part Suction { get; } = new("suction", "pump inlet");

    /// <summary>A filter: the flow through it against the maximum at which its loss is known.</summary>
    public static Part Filter { get; } = new("filter", "filter");

    /// <summary>A pump's feed: voltage drop against its limit.</summary>
    public static Part Feed { get; } = new("feed", "pump feed");

    /// <summary>The wire of a pump's feed: current against its ampacity.</summary>
    public static Part Wire { get; } = new("wire", "wire ampacity");

    /// <summary>The fuse of a pump's feed: its load, and whether it protects the wire.</summary>
    public static Part Fuse { get; } = new("fuse", "fuse");

    /// <summary>The relay of a pump's feed, or of several pumps': current against what its contacts carry continuously.</summary>
    public static Part Relay { get; } = new("relay", "relay");

    /// <summary>A pump's voltage converter: the current asked of it against what it can give.</summary>
    public static Part Converter { get; } = new("converter", "voltage converter");

    /// <summary>Hoses, fittings and filter: rail pressure against their rating.</summary>
    public static Part PressureRating { get; } = new("pressure-rating", "hoses, fittings and filter");

    /// <summary>The lines from the tank to the rail: whether their loss is counted.</summary>
    public static Part SupplyLine { get; } = new("supply-line", "supply line");

    /// <summary>Whether the BSFC that fuel is calculated from means a plausible brake efficiency.</summary>
    public static Part BrakeEfficiency { get; } = new("brake-efficiency", "brake efficiency");

    /// <summary>The mixture that the engine gets from its controller, against the leanest that is allowed on boost.</summary>
    public static Part Mixture { get; } = new("mixture", "mixture");

    /// <summary>The same mixture against the richest that is allowed.</summary>
    public static Part RichMixture { get; } = new("rich-mixture", "rich mixture");

    /// <summary>A compressor on a belt: its speed against the maximum that it stands, along a boost line.</summary>
    public static Part CompressorSpeed { get; } = new("compressor-speed", "compressor speed");

    /// <summary>The lift pump of a surge tank: what it brings into the tank against the net draw from it, and reserve.</summary>
    public static Part LiftPump { get; } = new("lift-pump", "lift pump");

    /// <summary>The lift pump's inlet: pressure there against the fuel's vapour pressure.</summary>
    public static Part LiftSuction { get; } = new("lift-suction", "lift pump inlet");

    /// <summary>A filter of the lift circuit: the flow through it against the maximum at which its loss is known.</summary>
    public static Part LiftFilter { get; } = new("lift-filter", "lift filter");

    /// <summary>The lift pump's feed: voltage drop against its limit.</summary>
    public static Part LiftFeed { get; } = new("lift-feed", "lift pump feed");

    /// <summary>The wire of the lift pump's feed: current against its ampacity.</summary>
    public static Part LiftWire { get; } = new("lift-wire", "lift pump wire ampacity");

    /// <summary>The fuse of the lift pump's feed: its load, and whether it protects the wire.</summary>
    public static Part LiftFuse { get; } = new("lift-fuse", "lift pump fuse");

    /// <summary>The relay of the lift pump's feed: current against what its contacts carry continuously.</summary>
    public static Part LiftRelay { get; } = new("lift-relay", "lift pump relay");

    /// <summary>Surge tank and lift hoses: the highest pressure in them against what they stand.</summary>
    public static Part SurgeTank { get; } = new("surge-tank", "surge tank and lift hoses");

    /// <summary>The line from the lift pump to the surge tank: whether its loss is counted.</summary>
    public static Part LiftLine { get; } = new("lift-line", "lift line");

    /// <summary>The line by which the surge tank overflows: whether the pressure that it makes is counted.</summary>
    public static Part OverflowLine { get; } = new("overflow-line", "overflow line");

    /// <summary>The secondary injectors' flow: duty cycle against its limit.</summary>
    public static Part SecondaryInjectors { get; } = new("secondary-injectors", "secondary injectors");

    /// <summary>The secondary injectors' pulse against their minimum linear pulse width, from the hand-over on.</summary>
    public static Part SecondaryMinimumPulse { get; } = new("secondary-minimum-pulse", "minimum pulse width, secondary injectors");

    /// <summary>Differential pressure across the secondary injectors against the maximum at which they open.</summary>
    public static Part SecondaryOpeningPressure { get; } = new("secondary-opening-pressure", "maximum opening differential pressure, secondary injectors");

    /// <summary>The pump of a second stream: what it delivers at the pressure that is set at the nozzles, compared with what they pass there, with reserve.</summary>
    public static Part StreamPump { get; } = new("stream-pump", "second stream pump");

    /// <summary>The nozzles of a second stream: the pressure in what they spray into against that at the nozzles.</summary>
    public static Part StreamNozzles { get; } = new("stream-nozzles", "second stream nozzles");

    /// <summary>The mixture that the engine gets if a second stream stops for which main fuel is taken back.</summary>
    public static Part StreamStopped { get; } = new("stream-stopped", "mixture if the second stream stops");

    /// <summary>The tank of a second stream: how long it lasts against how long it has to.</summary>
    public static Part StreamTank { get; } = new("stream-tank", "second stream tank");

    /// <summary>Lines and wiring of a second stream, which are not judged.</summary>
    public static Part StreamLines { get; } = new("stream-lines", "second stream lines and wiring");

    /// <summary>A fuse while its motors start: the time that they take against how long it carries what they draw.</summary>
    public static Part FuseStart { get; } = new("fuse-start", "fuse at the start");

    /// <summary>A fuse on a locked rotor: within what it opens against the time that is allowed.</summary>
    public static Part LockedRotor { get; } = new("locked-rotor", "fuse on a locked rotor");

    /// <summary>The fuse of the lift pump's feed while that starts.</summary>
    public static Part LiftFuseStart { get; } = new("lift-fuse-start", "lift pump fuse at the start");

    /// <summary>The fuse of the lift pump's feed on a locked rotor.</summary>
    public static Part LiftLockedRotor { get; } = new("lift-locked-rotor", "lift pump fuse on a locked rotor");

    /// <summary>A stable code of lower-case words with hyphens, for files and programs.</summary>
    public string Code { get; }

    /// <summary>The name in running text.</summary>
    public string Name { get; }

    /// <summary>Names what a check of one's own judges.</summary>
    /// <param name="code">1 to 40 lower-case letters, digits, hyphens and dots; one's own prefix keeps it apart from others.</param>
    /// <param name="name">The name in running text, 1 to 80 characters.</param>
    /// <returns>The part.</returns>
    /// <exception cref="ArgumentException">The code or the name cannot be shown.</exception>
    public static Part Of(string code, string name)
    {
        ArgumentNullException.ThrowIfNull(code);
        return code.Length is >= 1 and <= 40 && code.All(letter => letter is (>= 'a' and <= 'z') or (>= '0' and <= '9') or '-' or '.')
            ? new(code, Guard.Name(name, nameof(name)))
            : throw new ArgumentException(
                $"code is \"{code}\"; it must be 1 to 40 lower-case letters, digits, hyphens or dots. Give a code such as \"own.return-cooling\".",
                nameof(code));
    }

    /// <inheritdoc/>
    public bool Equals(Part? other) => other is not null && other.Code == Code;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Part);

    /// <inheritdoc/>
    public override int GetHashCode() => Code.GetHashCode(StringComparison.Ordinal);

    /// <summary>True if both have the same code.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    public static bool operator ==(Part? left, Part? right) => left is null ? right is null : left.Equals(right);

    /// <summary>True if their codes differ.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    public static bool operator !=(Part? left, Part? right) => !(left == right);

    /// <summary>The name.</summary>
    /// <returns>The name.</returns>
    public override string ToString() => Name;
}
