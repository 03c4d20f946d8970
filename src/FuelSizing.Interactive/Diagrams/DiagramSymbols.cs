namespace FuelSizing.Interactive;

/// <summary>Symbols after the conventions of ISO 1219-1, drawn about the middle of a line that runs up or down.</summary>
internal static class DiagramSymbols
{
    public const double PumpRadius = 17;
    private const double MotorRadius = 10;
    private const double MotorDistance = PumpRadius + 6 + MotorRadius;
    private const double Half = 17;

    /// <summary>How far a symbol reaches to the left of its line, to the right, and above and below its middle.</summary>
    public static (double Left, double Right, double Half) SizeOf(DiagramSymbol symbol) => symbol switch
    {
        DiagramSymbol.Pump => (MotorDistance + MotorRadius + 2, PumpRadius + 1, 34),
        DiagramSymbol.Filter => (18, 18, 20),
        DiagramSymbol.Regulator or DiagramSymbol.PumpController => (26, 36, 26),
        DiagramSymbol.CheckValve => (9, 9, 14),
        DiagramSymbol.Line => (8, 8, 20),
        DiagramSymbol.Place => (5, 5, 10),
        _ => (4, 4, 0),
    };

    /// <summary>Draws a symbol.</summary>
    /// <param name="canvas">To draw on.</param>
    /// <param name="part">The part.</param>
    /// <param name="x">Its line.</param>
    /// <param name="y">The middle.</param>
    /// <param name="to">−1 where fuel flows up, 1 where it flows down.</param>
    public static void Draw(DiagramCanvas canvas, DiagramPart part, double x, double y, int to)
    {
        switch (part.Symbol)
        {
            case DiagramSymbol.Pump:
                Pump(canvas, x, y, to);
                break;
            case DiagramSymbol.Feed:
                // An open terminal, and the wire from it to the motor.
                canvas.Line(DiagramStroke.Thin, (x - MotorDistance, y + MotorRadius), (x - MotorDistance, y + 27));
                canvas.Circle(x - MotorDistance, y + 30, 3, DiagramCanvas.Ground, DiagramStroke.Thin);
                break;
            case DiagramSymbol.Converter:
                // In the wire: a square with its diagonal, one voltage in and another out.
                canvas.Rectangle(x - MotorDistance - 6, y + 12, 12, 12, DiagramCanvas.Ground, DiagramStroke.Thin);
                canvas.Line(DiagramStroke.Thin, (x - MotorDistance - 6, y + 24), (x - MotorDistance + 6, y + 12));
                break;
            case DiagramSymbol.Filter:
                canvas.Polygon(DiagramCanvas.Ground, (x, y - Half), (x + Half, y), (x, y + Half), (x - Half, y));
                canvas.Line(DiagramStroke.Pilot, (x - Half, y), (x + Half, y));
                break;
            case DiagramSymbol.CheckValve:
                canvas.Area(DiagramCanvas.Ground, (x - 9, y - 11), (x + 9, y - 11), (x + 9, y + 11), (x - 9, y + 11));
                canvas.Line(DiagramStroke.Fuel, (x, y + (-to * 11)), (x, y + (-to * 7)));
                canvas.Line(DiagramStroke.Fuel, (x, y + (to * 9)), (x, y + (to * 11)));
                canvas.Line(DiagramStroke.Outline, (x - 8, y + (to * 3)), (x, y + (-to * 7)), (x + 8, y + (to * 3)));
                canvas.Circle(x, y + (to * 3), 5, DiagramCanvas.Ground);
                break;
            case DiagramSymbol.Line:
                canvas.Line(DiagramStroke.Fuel, (x, y - 18), (x, y + 18));
                canvas.Line(DiagramStroke.Outline, (x - 6, y - 18), (x + 6, y - 18));
                canvas.Line(DiagramStroke.Outline, (x - 6, y + 18), (x + 6, y + 18));
                canvas.Arrow(x, y, 0, to);
                break;
            case DiagramSymbol.Place:
                canvas.Circle(x, y, 4, DiagramCanvas.Ground);
                break;
            case DiagramSymbol.Regulator:
                Regulator(canvas, part, x, y);
                break;
            case DiagramSymbol.PumpController:
                canvas.Rectangle(x - Half, y - Half, 2 * Half, 2 * Half, DiagramCanvas.Ground);
                canvas.Line(DiagramStroke.Thin, (x - 10, y + 10), (x + 8, y - 8));
                canvas.Area(DiagramCanvas.Ink, (x + 11, y - 11), (x + 9.5, y - 4), (x + 4, y - 9.5));
                if (part.Reference is not null)
                {
                    canvas.Line(DiagramStroke.Pilot, (x + Half, y), (x + 38, y));
                }

                break;
        }
    }

    /// <summary>Injectors on a rail: a stem, a body and a spray each.</summary>
    public static void Injectors(DiagramCanvas canvas, int count, double left, double right, double rail)
    {
        double pitch = (right - left) / count;
        double half = Math.Min(6, pitch * 0.36);
        for (int injector = 0; injector < count; injector++)
        {
            double x = left + (pitch * (injector + 0.5));
            canvas.Line(DiagramStroke.Outline, (x, rail), (x, rail - 7));
            canvas.Rectangle(x - half, rail - 17, 2 * half, 10, DiagramCanvas.Ground);
            canvas.Area(DiagramCanvas.Ink, (x - (half / 2), rail - 17), (x, rail - 22), (x + (half / 2), rail - 17));
            foreach (int side in (int[])[-1, 0, 1])
            {
                canvas.Line(DiagramStroke.Thin, (x + (side * half * 0.35), rail - 25), (x + (side * half), rail - 33));
            }
        }
    }

    private static void Pump(DiagramCanvas canvas, double x, double y, int to)
    {
        // The shaft, two lines, behind both circles.
        canvas.Line(DiagramStroke.Outline, (x - MotorDistance, y - 2), (x, y - 2));
        canvas.Line(DiagramStroke.Outline, (x - MotorDistance, y + 2), (x, y + 2));
        canvas.Circle(x, y, PumpRadius, DiagramCanvas.Ground);
        canvas.Area(DiagramCanvas.Ink, (x, y + (to * PumpRadius)), (x - 7.5, y + (to * 4)), (x + 7.5, y + (to * 4)));
        canvas.Circle(x - MotorDistance, y, MotorRadius, DiagramCanvas.Ground);
        canvas.Text("M", x - MotorDistance, y + 5, bold: false, anchor: "middle");
    }

    /// <summary>A valve that its inlet's pressure opens against a spring; what acts on the spring's side besides comes by a pilot line.</summary>
    private static void Regulator(DiagramCanvas canvas, DiagramPart part, double x, double y)
    {
        const double Spring = 14;
        canvas.Line(DiagramStroke.Pilot, (x, y - Half - 6), (x - Half - 7, y - Half - 6), (x - Half - 7, y), (x - Half, y));
        canvas.Rectangle(x - Half, y - Half, 2 * Half, 2 * Half, DiagramCanvas.Ground);

        // Shut at rest: the arrow stands beside the ports, and the pilot pressure pushes it between them.
        canvas.Line(DiagramStroke.Outline, (x - 8, y - 13), (x - 8, y + 6));
        canvas.Area(DiagramCanvas.Ink, (x - 8, y + 14), (x - 12, y + 5), (x - 4, y + 5));
        canvas.Line(
            DiagramStroke.Outline,
            (x + Half, y), (x + Half + 2, y - 6), (x + Half + 5, y + 6), (x + Half + 8, y - 6), (x + Half + 11, y + 6), (x + Half + Spring, y));
        if (part.Reference is not null)
        {
            canvas.Line(DiagramStroke.Pilot, (x + Half + Spring, y), (x + 46, y));
        }
    }
}
