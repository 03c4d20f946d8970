using System.Globalization;
using FuelSizing.Numerics;

namespace FuelSizing.Workings;

/// <summary>Writes how a table was read between its points, so that a reader with the table and a calculator gets the same figure.</summary>
/// <remarks>Points are numbered through the whole working. A figure read at one of a table's points needs no lines.</remarks>
internal static class TableReading
{
    private const string Straight = "straight between two points";
    private const string Chord = "chord between two points";
    private const string Inner = "slope at a point between others: harmonic mean of the chords";
    private const string End = "slope at the end of a table: parabola through three points, held to where the curve does not turn";
    private const string Smooth = "monotone cubic between two points";

    /// <summary>Reads a curve.</summary>
    /// <param name="to">Where to write.</param>
    /// <param name="curve">The table.</param>
    /// <param name="at">Where it is read; past an end it is read there.</param>
    /// <param name="axes">What it is a table of, and its units.</param>
    /// <param name="line">The figure that is read.</param>
    /// <returns>The figure as the library read it.</returns>
    public static Traced Of(Derivation to, Curve curve, Traced at, in TableAxes axes, in ReadFigure line)
    {
        double value = curve.Nearest(at.Value);
        if (at.Value <= curve.First || at.Value >= curve.Last)
        {
            return to.Table(line.Name, line.Symbol, value, axes.UnitOfY, line.Readable, line.Source, line.IsIntermediate);
        }

        int before = curve.PieceFor(at.Value);
        if (curve.PointAt(before).X == at.Value)
        {
            return to.Table(line.Name, line.Symbol, value, axes.UnitOfY, line.Readable, line.Source, line.IsIntermediate);
        }

        bool bends = curve.IsSmooth;
        int first = bends ? Math.Max(before - 1, 0) : before;
        int last = bends ? Math.Min(before + 2, curve.Count - 1) : before + 1;
        Points points = new(to, axes, curve, first, last);
        return bends
            ? to.Read(line, points.Bent(before - first, at), value, axes.UnitOfY, Smooth)
            : to.Read(line, points.Level(at), value, axes.UnitOfY, Straight);
    }

    // The points that count, and what lies between them.
    private readonly struct Points
    {
        private readonly Derivation _to;
        private readonly TableAxes _axes;
        private readonly (Traced X, Traced Y)[] _points;
        private readonly string[] _marks;

        public Points(Derivation to, in TableAxes axes, Curve curve, int first, int last)
        {
            (_to, _axes) = (to, axes);
            _points = new (Traced, Traced)[last - first + 1];
            _marks = new string[_points.Length];
            for (int place = 0; place < _points.Length; place++)
            {
                (double x, double y) = curve.PointAt(first + place);
                string mark = to.NextPoint().ToString(CultureInfo.InvariantCulture);
                string source = $"point {(first + place + 1).ToString(CultureInfo.InvariantCulture)} of the {axes.Table}";
                _marks[place] = mark;
                _points[place] = (
                    to.Given($"{axes.NameOfX} of point {mark}", Derivation.Marked("X_t", mark), x, axes.UnitOfX, axes.ReadableX(x), source, intermediate: true),
                    to.Given($"{axes.NameOfY} of point {mark}", Derivation.Marked("Y_t", mark), y, axes.UnitOfY, axes.ReadableY(y), source, intermediate: true));
            }
        }

        private string UnitOfSlope => $"{(_axes.UnitOfY == "1" ? "1" : _axes.UnitOfY)}/({_axes.UnitOfX})";

        public Traced Level(Traced at) => StraightLine.Through(_points[0].X, _points[0].Y, _points[1].X, _points[1].Y, at);

        public Traced Bent(int before, Traced at)
        {
            (Traced Width, Traced Slope)[] chords = new (Traced, Traced)[_points.Length - 1];
            for (int piece = 0; piece < chords.Length; piece++)
            {
                string mark = _marks[piece];
                ((Traced x0, Traced y0), (Traced x1, Traced y1)) = (_points[piece], _points[piece + 1]);
                chords[piece] = (
                    Line($"from point {mark} to the next", "h_t", mark, x1 - x0, _axes.UnitOfX, "difference"),
                    Line($"slope of the chord from point {mark} to the next", "c_t", mark, StraightLine.Slope(x0, y0, x1, y1), UnitOfSlope, Chord));
            }

            Traced slope = SlopeAt(before, chords);
            Traced slopeAfter = SlopeAt(before + 1, chords);
            Traced along = Line($"from point {_marks[before]} to where the table is read", "s_t", _marks[before], at - _points[before].X, _axes.UnitOfX, "difference");
            return MonotoneCubic.At(_points[before].Y, slope, chords[before].Slope, chords[before].Width, slopeAfter, along);
        }

        private Traced SlopeAt(int point, (Traced Width, Traced Slope)[] chords)
        {
            bool isEnd = point == 0 || point == chords.Length;
            (int own, int next) = point == 0 ? (0, 1) : point == chords.Length ? (chords.Length - 1, chords.Length - 2) : (point - 1, point);
            Traced slope = isEnd
                ? MonotoneCubic.EndSlope(chords[own].Width, chords[own].Slope, chords[next].Width, chords[next].Slope)
                : MonotoneCubic.InnerSlope(chords[own].Width, chords[own].Slope, chords[next].Width, chords[next].Slope);
            return Line($"slope of the curve at point {_marks[point]}", "m_t", _marks[point], slope, UnitOfSlope, slope.Value == 0 ? "zero, where points turn or lie level" : isEnd ? End : Inner);
        }

        private Traced Line(string name, string symbol, string mark, Traced number, string unit, string source) =>
            _to.Step(name, Derivation.Marked(symbol, mark), number, unit, Term.Text(number.Value), source, intermediate: true);
    }
}

/// <summary>What a table is of.</summary>
/// <param name="Table">Which, for instance <c>dead-time table of injector A</c>.</param>
/// <param name="NameOfX">The quantity that it is read by.</param>
/// <param name="UnitOfX">SI.</param>
/// <param name="ReadableX">As reports write it.</param>
/// <param name="NameOfY">The quantity that it gives.</param>
/// <param name="UnitOfY">SI.</param>
/// <param name="ReadableY">As reports write it.</param>
internal readonly record struct TableAxes(
    string Table, string NameOfX, string UnitOfX, Func<double, string> ReadableX, string NameOfY, string UnitOfY, Func<double, string> ReadableY);

/// <summary>A line whose figure is read from a table.</summary>
/// <param name="Name">The quantity.</param>
/// <param name="Symbol">Its symbol.</param>
/// <param name="Readable">The value as reports write it.</param>
/// <param name="Source">Which table, and where.</param>
/// <param name="IsIntermediate">True for a line that a short table leaves out.</param>
internal readonly record struct ReadFigure(string Name, string Symbol, string Readable, string Source, bool IsIntermediate = false);
