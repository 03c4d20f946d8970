using OxyPlot;

namespace FuelSizing.Interactive;

/// <summary>A piece of a diagram round one upright line, which enters it at one end and leaves at the other. Pieces compose.</summary>
/// <remarks>Symbols and lines stay left of a column of text, so that no line ever crosses a text whatever the pieces are made of.</remarks>
internal abstract class DiagramBlock
{
    /// <summary>How far it reaches to the left of its line.</summary>
    public abstract double Left { get; }

    /// <summary>How far its symbols and lines reach to the right of its line.</summary>
    public abstract double Right { get; }

    /// <summary>Its height, once <see cref="Measure"/> has been called.</summary>
    public double Height { get; protected set; }

    /// <summary>Breaks its texts to a column's width.</summary>
    public abstract void Measure(double width);

    /// <summary>Draws it.</summary>
    /// <param name="canvas">To draw on.</param>
    /// <param name="x">Its line.</param>
    /// <param name="top">Its upper end.</param>
    /// <param name="text">Where its column of text begins.</param>
    /// <param name="to">−1 where fuel flows up, 1 where it flows down.</param>
    public abstract void Draw(DiagramCanvas canvas, double x, double top, double text, int to);
}

/// <summary>One part with its text, and what belongs to it: a pump with its feed and converter.</summary>
internal sealed class PartBlock(DiagramPart part, params DiagramPart[] attached) : DiagramBlock
{
    private const double Pad = 6;

    // A reference line needs room between the spring and its text.
    private const double ReferenceRoom = 20;

    private readonly DiagramPart[] _parts = [part, .. attached];
    private DiagramTextBlock[] _texts = [];
    private double _above;
    private double _width;

    /// <inheritdoc/>
    public override double Left => DiagramSymbols.SizeOf(part.Symbol).Left;

    /// <inheritdoc/>
    public override double Right => DiagramSymbols.SizeOf(part.Symbol).Right;

    private double Inset => part.Symbol is DiagramSymbol.Regulator or DiagramSymbol.PumpController ? ReferenceRoom : 0;

    /// <inheritdoc/>
    public override void Measure(double width)
    {
        _width = width - Inset;
        _texts = [.. _parts.Select((one, place) => new DiagramTextBlock(one, _width, isMain: place == 0))];
        double text = _texts.Sum(block => block.Height);
        double half = DiagramSymbols.SizeOf(part.Symbol).Half;

        // The line that a pilot line leads to stands at the middle of the symbol; else the text's middle does.
        double before = _texts[0].ReferenceMiddle ?? text / 2;
        _above = Math.Max(half, before) + Pad;
        Height = _above + Math.Max(half, text - before) + Pad;
    }

    /// <inheritdoc/>
    public override void Draw(DiagramCanvas canvas, double x, double top, double text, int to)
    {
        double middle = top + _above;
        double height = _texts.Sum(block => block.Height);
        double left = text + Inset;
        double at = middle - (_texts[0].ReferenceMiddle ?? height / 2);
        if (part.Symbol != DiagramSymbol.PumpController)
        {
            canvas.Line(DiagramStroke.Fuel, (x, top), (x, top + Height));
        }

        // What is attached lies under the part that it is attached to.
        double[] tops = new double[_parts.Length];
        for (int one = 0; one < _parts.Length; one++)
        {
            (tops[one], at) = (at, at + _texts[one].Height);
        }

        for (int one = 0; one < _parts.Length; one++)
        {
            int own = one;
            canvas.Part(_parts[own], () =>
            {
                DiagramSymbols.Draw(canvas, _parts[own], x, middle, to);
                _texts[own].Draw(canvas, left, tops[own], part.Reference is null ? middle : null);
            });
        }
    }
}

/// <summary>Pieces on one line, in the order of flow.</summary>
internal sealed class StackBlock(IReadOnlyList<DiagramBlock> blocks) : DiagramBlock
{
    /// <inheritdoc/>
    public override double Left => blocks.Select(block => block.Left).DefaultIfEmpty(0).Max();

    /// <inheritdoc/>
    public override double Right => blocks.Select(block => block.Right).DefaultIfEmpty(0).Max();

    /// <inheritdoc/>
    public override void Measure(double width)
    {
        foreach (DiagramBlock block in blocks)
        {
            block.Measure(width);
        }

        Height = blocks.Sum(block => block.Height);
    }

    /// <inheritdoc/>
    public override void Draw(DiagramCanvas canvas, double x, double top, double text, int to)
    {
        foreach (DiagramBlock block in to < 0 ? blocks.Reverse() : blocks)
        {
            block.Draw(canvas, x, top, text, to);
            top += block.Height;
        }
    }
}

/// <summary>A piece with a check valve around it, on a lane of its own to the right.</summary>
internal sealed class BypassBlock(DiagramBlock around, DiagramPart valve) : DiagramBlock
{
    private const double End = 12;
    private const double Lane = 12;

    private readonly DiagramRow _row = new(valve);

    /// <inheritdoc/>
    public override double Left => around.Left;

    /// <inheritdoc/>
    public override double Right => around.Right + Lane + 11;

    /// <inheritdoc/>
    public override void Measure(double width)
    {
        around.Measure(width);
        _row.Measure(width);
        Height = around.Height + _row.Height + (2 * End);
    }

    /// <inheritdoc/>
    public override void Draw(DiagramCanvas canvas, double x, double top, double text, int to)
    {
        double lane = x + around.Right + Lane;
        double row = top + End;
        double bottom = top + Height;
        canvas.Line(DiagramStroke.Fuel, (x, top), (x, row + _row.Height));
        canvas.Line(DiagramStroke.Fuel, (x, bottom - End), (x, bottom));
        canvas.Line(DiagramStroke.Fuel, (x, bottom - (End / 2)), (lane, bottom - (End / 2)), (lane, top + (End / 2)), (x, top + (End / 2)));
        canvas.Joint(x, top + (End / 2));
        canvas.Joint(x, bottom - (End / 2));
        around.Draw(canvas, x, row + _row.Height, text, to);
        _row.Draw(canvas, lane, row, text, to);
    }
}

/// <summary>Branches in parallel, one above the other between an inlet line on the left and an outlet line on the right, each with its check valve, or one within it.</summary>
internal sealed class ParallelBlock(IReadOnlyList<(DiagramBlock Branch, DiagramPart? Valve)> branches) : DiagramBlock
{
    private const double End = 18;
    private const double Bus = 10;
    private const double Gap = 10;

    private readonly DiagramRow?[] _rows = [.. branches.Select(branch => branch.Valve is { } valve ? new DiagramRow(valve) : null)];

    /// <inheritdoc/>
    public override double Left => Inner + Bus + 3;

    /// <inheritdoc/>
    public override double Right => Outer + Bus + 3;

    private double Inner => branches.Max(branch => branch.Branch.Left);

    private double Outer => branches.Max(branch => branch.Branch.Right);

    /// <inheritdoc/>
    public override void Measure(double width)
    {
        Height = (2 * End) + (Gap * (branches.Count - 1));
        for (int branch = 0; branch < branches.Count; branch++)
        {
            branches[branch].Branch.Measure(width);
            _rows[branch]?.Measure(width);
            Height += branches[branch].Branch.Height + (_rows[branch]?.Height ?? 0) + Gap;
        }
    }

    /// <inheritdoc/>
    public override void Draw(DiagramCanvas canvas, double x, double top, double text, int to)
    {
        (double inlet, double outlet) = (x - Inner - Bus, x + Outer + Bus);
        (double first, double last) = (double.NaN, double.NaN);
        double bottom = top + Height - End;
        for (int branch = 0; branch < branches.Count; branch++)
        {
            DiagramBlock block = branches[branch].Branch;
            DiagramRow? row = _rows[branch];
            double start = bottom;
            double blockTop = start - (Gap / 2) - block.Height;
            double rowTop = blockTop - (row?.Height ?? 0);
            double end = rowTop - (Gap / 2);
            canvas.Line(DiagramStroke.Fuel, (inlet, start), (x, start), (x, blockTop + block.Height));
            block.Draw(canvas, x, blockTop, text, to);
            canvas.Line(DiagramStroke.Fuel, (x, blockTop), (x, end), (outlet, end));
            row?.Draw(canvas, x, rowTop, text, to);
            if (branch > 0)
            {
                canvas.Joint(outlet, end);
            }

            if (branch < branches.Count - 1)
            {
                canvas.Joint(inlet, start);
            }

            first = branch == 0 ? end : first;
            last = start;
            bottom = end - Gap;
        }

        double below = top + Height;
        canvas.Line(DiagramStroke.Fuel, (x, below), (x, below - (End / 3)), (inlet, below - (End / 3)), (inlet, last));
        canvas.Line(DiagramStroke.Fuel, (outlet, first), (outlet, top + (End / 3)), (x, top + (End / 3)), (x, top));
    }
}

/// <summary>A check valve with a line of text, on a lane of its own.</summary>
internal sealed class DiagramRow(DiagramPart valve)
{
    private DiagramTextBlock? _text;

    public double Height { get; private set; }

    public void Measure(double width)
    {
        _text = new(valve, width, isMain: false);
        Height = Math.Max(28, _text.Height + 8);
    }

    public void Draw(DiagramCanvas canvas, double lane, double top, double text, int to)
    {
        double middle = top + (Height / 2);
        canvas.Part(valve, () =>
        {
            DiagramSymbols.Draw(canvas, valve, lane, middle, to);
            _text!.Draw(canvas, text, middle - (_text.Height / 2), middle);
        });
    }
}

/// <summary>The text of a part, broken to a width: its name, its reference, its lines, its marks.</summary>
internal sealed class DiagramTextBlock
{
    private readonly DiagramPart _part;
    private readonly List<(string Text, bool Bold, bool Marked)> _lines = [];
    private readonly double _width;

    public DiagramTextBlock(DiagramPart part, double width, bool isMain)
    {
        (_part, _width) = (part, width);
        Add(part.Name, bold: isMain);
        if (part.Reference is { } reference)
        {
            ReferenceMiddle = (_lines.Count + 0.5) * DiagramCanvas.LineHeight;
            Add(reference, bold: false);
        }

        foreach (string line in part.Lines)
        {
            Add(line, bold: false);
        }

        foreach (DiagramMark mark in part.Marks)
        {
            Add(mark.Short, bold: true, marked: true);
        }

        if (part.Worst is not null && ReferenceMiddle is { } middle)
        {
            ReferenceMiddle = middle + FrameRoom;
        }
    }

    /// <summary>Height with the frame that a mark needs.</summary>
    public double Height => (_lines.Count * DiagramCanvas.LineHeight) + (_part.Worst is null ? 0 : 2 * FrameRoom);

    /// <summary>From the top to the middle of the line that says what a pilot line leads to; none without one.</summary>
    public double? ReferenceMiddle { get; }

    private static double FrameRoom => 5;

    /// <summary>Writes it, a frame around it where the part is marked, which points at a height where the symbol is to the left of it.</summary>
    public void Draw(DiagramCanvas canvas, double left, double top, double? middle)
    {
        double baseline = top + (_part.Worst is null ? 0 : FrameRoom) + 13;
        foreach ((string text, bool bold, bool marked) in _lines)
        {
            canvas.Text(text, left, baseline, bold, marked && _part.Worst is { } worst ? DiagramCanvas.ColourOf(worst) : DiagramCanvas.Ink);
            baseline += DiagramCanvas.LineHeight;
        }

        if (_part.Worst is { } mark)
        {
            canvas.Frame(mark, left - 5, top + 1, left + _width + 2, top + Height - 1, middle);
        }
    }

    private void Add(string text, bool bold, bool marked = false) =>
        _lines.AddRange(PlotText.Wrap(VisibleText.Unbroken(text), _width, bold ? FontWeights.Bold : FontWeights.Normal).Split('\n').Select(line => (line, bold, marked)));
}
