using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Xml.Linq;

namespace FuelSizing.Interactive;

/// <summary>Puts a system's pieces together: the feed goes up on the left, the return comes down on the right, tanks lie across both.</summary>
/// <remarks>So it stays as narrow as a phone whatever the system, and only grows taller.</remarks>
internal sealed class DiagramLayout
{
    private const double Margin = 8;
    private const double MinimumText = 90;
    private const double TextGap = 14;

    // Between the left column of text and the right line: a regulator's pilot line; between that line and its text.
    private const double LeftOfLane = 32;
    private const double RightOfLane = 30;
    private const double Spray = 36;
    private const double RailHeight = 10;
    private const double Bend = 18;

    private readonly DiagramParts _parts;
    private readonly DiagramCanvas _canvas = new();
    private readonly double _width;
    private readonly double _axis;
    private readonly double _text;
    private readonly double _textWidth;
    private readonly double _lane;
    private readonly double _laneText;
    private readonly double _outer;

    public DiagramLayout(DiagramParts parts)
    {
        _parts = parts;
        StackBlock[] feeds = [parts.Before, parts.After, .. parts.Lifting is { } lifting ? new[] { lifting } : []];
        _axis = Margin + Math.Max(40, feeds.Max(feed => feed.Left));
        _text = _axis + feeds.Max(feed => feed.Right) + TextGap;
        double outer = parts.PassesSurgeTank ? 18 : 0;
        double taken = _text + LeftOfLane + RightOfLane + outer + Margin;
        _textWidth = Math.Max(MinimumText, (PlotStyle.Width - taken) / 2);
        _width = Math.Max(PlotStyle.Width, taken + (2 * _textWidth));
        _lane = _text + _textWidth + LeftOfLane;
        _laneText = _lane + RightOfLane;
        _outer = _width - Margin - 2;
        foreach (StackBlock feed in feeds)
        {
            feed.Measure(_textWidth);
        }

        parts.Back.Measure(_textWidth);
        parts.Overflow?.Measure(_textWidth);
    }

    /// <summary>The whole drawing.</summary>
    public XElement Svg(string title, string description)
    {
        double bottom = Draw();
        XElement root = new(
            DiagramCanvas.Svg + "svg",
            new XAttribute("viewBox", string.Create(CultureInfo.InvariantCulture, $"0 0 {_width:0.##} {bottom:0.##}")),
            new XAttribute("role", "img"),
            new XAttribute("preserveAspectRatio", "xMinYMin meet"),
            new XAttribute("font-family", PlotStyle.Font),
            new XAttribute("stroke-linejoin", "round"),
            new XAttribute("style", $"display:block;width:100%;height:auto;max-width:{BlockStyle.FigureWidth}px"),
            new XElement(DiagramCanvas.Svg + "title", title),
            new XElement(DiagramCanvas.Svg + "desc", description),
            _canvas.Content);

        // A tall drawing is made to fit a sheet of A4 or Letter, where nothing can be scrolled.
        string id = "fs" + Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(root.ToString())))[..10].ToLowerInvariant();
        root.SetAttributeValue("id", id);
        root.Elements().ElementAt(1).AddAfterSelf(new XElement(DiagramCanvas.Svg + "style", $"@media print{{#{id}{{max-height:200mm}}}}"));
        return root;
    }

    private double Draw()
    {
        double y = Injectors();
        y = Main(y);
        return _parts.SurgeTank is { } tank ? MainTank(Lift(tank, y)) : MainTank(y);
    }

    /// <summary>Injectors and the top of the rail.</summary>
    private double Injectors()
    {
        const double Inset = 16;
        DiagramTextBlock text = new(_parts.Injectors, _width - Inset - Margin - 4, isMain: true);
        double rail = Margin + text.Height + 6 + Spray;
        _canvas.Part(_parts.Injectors, () =>
        {
            text.Draw(_canvas, Inset, Margin, null);
            DiagramSymbols.Injectors(_canvas, _parts.Injectors.Count, _axis + 14, RailEnd - 30, rail);
        });
        return rail;
    }

    private double RailEnd => _parts.Joins ? _width - Margin - 10 : _lane + 14;

    /// <summary>From the rail down to the tank that the pumps draw from; answers where that begins.</summary>
    private double Main(double rail)
    {
        double start = rail + RailHeight;
        DiagramTextBlock text = new(_parts.Rail, _textWidth, isMain: true);
        double railText = text.Height + 12;
        _canvas.Part(_parts.Rail, () =>
        {
            _canvas.Rectangle(_axis - 16, rail, RailEnd - _axis + 16, RailHeight, DiagramCanvas.Wet);
            text.Draw(_canvas, _text, start + 6, start);
        });
        _canvas.Line(DiagramStroke.Fuel, (_axis, start), (_axis, start + railText));
        _canvas.Arrow(_axis, start + 9, 0, -1);
        double y = start + railText;
        _parts.After.Draw(_canvas, _axis, y, _text, -1);
        y += _parts.After.Height;
        double laneFrom = start;
        if (_parts.Joins)
        {
            // The regulator branches off here, on a row that no text stands in.
            double row = y + (Bend / 2);
            _canvas.Line(DiagramStroke.Fuel, (_axis, y), (_axis, y + Bend));
            _canvas.Line(DiagramStroke.Fuel, (_axis, row), (_lane, row), (_lane, row + (Bend / 2)));
            _canvas.Joint(_axis, row);
            y += Bend;
            laneFrom = y;
        }

        _parts.Before.Draw(_canvas, _axis, y, _text, -1);
        y += _parts.Before.Height;
        double head = _parts.Joins ? 0 : 10;
        double laneTo = laneFrom + head + _parts.Back.Height + (_parts.Returns ? 0 : 4);
        double end = Math.Max(y, laneTo) + 8;
        _canvas.Line(DiagramStroke.Fuel, (_axis, y), (_axis, end));
        if (_parts.Returns)
        {
            _canvas.Line(DiagramStroke.Fuel, (_lane, laneFrom), (_lane, laneFrom + head));
            _canvas.Line(DiagramStroke.Fuel, (_lane, laneTo), (_lane, end));
        }
        else
        {
            // The controller reads the rail and feeds the pumps: signals, not fuel.
            _canvas.Line(DiagramStroke.Signal, (_lane, laneFrom), (_lane, laneTo));
            _canvas.Arrow(_lane, laneTo, 0, 1);
        }

        _parts.Back.Draw(_canvas, _lane, laneFrom + head, _laneText, 1);
        return end;
    }

    /// <summary>The surge tank and its lift circuit; answers where the main tank begins.</summary>
    private double Lift(DiagramPart tank, double top)
    {
        double right = _lane - 14;
        double inlet = _lane - 30;
        double y = top + Bend;
        DiagramTextBlock text = new(tank, inlet - 16 - _text, isMain: true);
        double height = Math.Max(60, text.Height + 22);
        double bottom = y + height;
        double level = y + 10;
        if (_parts.Returns && !_parts.PassesSurgeTank)
        {
            _canvas.Line(DiagramStroke.Fuel, (_lane, top), (_lane, top + (Bend / 2)), (inlet, top + (Bend / 2)), (inlet, y));
        }
        else if (_parts.PassesSurgeTank)
        {
            _canvas.Line(DiagramStroke.Fuel, (_lane, top), (_lane, top + (Bend / 2)), (_outer, top + (Bend / 2)), (_outer, y));
        }

        _canvas.Line(DiagramStroke.Fuel, (_axis, top), (_axis, y));
        double lift = _axis - 28;
        _canvas.Part(tank, () =>
        {
            _canvas.Area(DiagramCanvas.Wet, (Margin, level), (right, level), (right, bottom), (Margin, bottom));
            _canvas.Rectangle(Margin, y, right - Margin, height, "none");
            _canvas.Line(DiagramStroke.Thin, (Margin, level), (right, level));
            _canvas.Line(DiagramStroke.Fuel, (_axis, y), (_axis, bottom - 12));
            _canvas.Line(DiagramStroke.Fuel, (lift, bottom), (lift, bottom - 16));
            _canvas.Arrow(lift, bottom - 18, 0, -1);
            if (_parts.Returns && !_parts.PassesSurgeTank)
            {
                _canvas.Line(DiagramStroke.Fuel, (inlet, y), (inlet, y + 20));
                _canvas.Arrow(inlet, y + 22, 0, 1);
            }

            text.Draw(_canvas, _text, y + 13, y + (height / 2));
        });

        // The overflow leaves at the level, on the right.
        double below = bottom + Bend;
        _canvas.Line(DiagramStroke.Fuel, (right, level), (_lane, level), (_lane, below));
        _canvas.Line(DiagramStroke.Fuel, (lift, bottom), (lift, bottom + (Bend / 2)), (_axis, bottom + (Bend / 2)), (_axis, below));
        _parts.Lifting!.Draw(_canvas, _axis, below, _text, -1);
        _parts.Overflow!.Draw(_canvas, _lane, below, _laneText, 1);
        double end = below + Math.Max(_parts.Lifting.Height, _parts.Overflow.Height) + 4;
        _canvas.Line(DiagramStroke.Fuel, (_axis, below + _parts.Lifting.Height), (_axis, end));
        _canvas.Line(DiagramStroke.Fuel, (_lane, below + _parts.Overflow.Height), (_lane, end));
        if (_parts.PassesSurgeTank)
        {
            _canvas.Line(DiagramStroke.Fuel, (_outer, y), (_outer, end));
        }

        return end;
    }

    /// <summary>The tank at the bottom, open at its top; answers the height of the whole.</summary>
    private double MainTank(double y)
    {
        bool returns = _parts.SurgeTank is not null || _parts.Returns;
        DiagramTextBlock text = new(_parts.MainTank, (returns ? _lane - 18 : _width - Margin - 8) - _text, isMain: true);
        double height = Math.Max(52, text.Height + 26);
        double bottom = y + height;
        double level = y + 14;
        double right = _width - Margin + 4;
        _canvas.Part(_parts.MainTank, () =>
        {
            _canvas.Area(DiagramCanvas.Wet, (Margin - 4, level), (right, level), (right, bottom), (Margin - 4, bottom));
            _canvas.Line(DiagramStroke.Outline, (Margin - 4, y), (Margin - 4, bottom), (right, bottom), (right, y));
            _canvas.Line(DiagramStroke.Thin, (Margin - 4, level), (right, level));
            _canvas.Line(DiagramStroke.Fuel, (_axis, y), (_axis, bottom - 12));
            _canvas.Arrow(_axis, level + 14, 0, -1);
            foreach (double lane in (double[])[.. returns ? [_lane] : Array.Empty<double>(), .. _parts.PassesSurgeTank ? [_outer] : Array.Empty<double>()])
            {
                _canvas.Line(DiagramStroke.Fuel, (lane, y), (lane, y + 24));
                _canvas.Arrow(lane, y + 26, 0, 1);
            }

            text.Draw(_canvas, _text, y + 19, y + (height / 2));
        });
        return bottom + 4;
    }
}
