using FuelSizing.Quantities;
using Microsoft.DotNet.Interactive.Formatting;

namespace FuelSizing.Interactive;

/// <summary>Tells the kernel's formatters how a type is shown. A later registration for the same type replaces an earlier one.</summary>
internal static class Shown
{
    /// <summary>A type that has a block of its own.</summary>
    public static void As<T>(Func<T, TextStyle, IDisplayBlock> block)
    {
        Formatter.Register<T>((value, writer) => writer.Write(block(value, Units.Current).ToHtml()), HtmlFormatter.MimeType);
        Formatter.Register<T>((value, writer) => writer.Write(block(value, Units.Current).ToPlainText()), PlainTextFormatter.MimeType);
        Formatter.SetPreferredMimeTypesFor(typeof(T), HtmlFormatter.MimeType, PlainTextFormatter.MimeType);
    }

    /// <summary>A type that is shown line by line, and a list of it as one table.</summary>
    public static void By<T>(Func<T, TextStyle, Facts> facts)
    {
        As<T>((value, style) => facts(value, style).Table());
        Listed(facts);
    }

    /// <summary>A list of a type that shows itself in its own way where it stands alone.</summary>
    public static void Listed<T>(Func<T, TextStyle, Facts> facts) => As<IEnumerable<T>>((values, style) => Facts.List(values.Select(value => facts(value, style)), style));
}
