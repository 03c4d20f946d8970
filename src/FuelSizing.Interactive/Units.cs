using System.Runtime.CompilerServices;
using FuelSizing.Quantities;
using Microsoft.DotNet.Interactive;

namespace FuelSizing.Interactive;

/// <summary>The units and the culture in which a notebook's tables, plots and sheets are written.</summary>
/// <remarks>
/// <c>Units.Use(TextStyle.UsCustomary);</c> in a notebook's first cell sets them for that notebook's kernel alone: two notebooks in one process do not
/// disturb each other. Every table and plot also takes a style of its own. Outside a notebook there is nothing to set.
/// </remarks>
public static class Units
{
    /// <summary>The running notebook's style; metric where none was chosen, and outside notebooks.</summary>
    public static TextStyle Current => HasKernels && Kernels.Chosen is { } style ? style : TextStyle.Metric;

    // A program that shows tables without a notebook brings no kernel: its assembly must not be asked for.
    internal static bool HasKernels =>
        AppDomain.CurrentDomain.GetAssemblies().Any(assembly => assembly.GetName().Name == "Microsoft.DotNet.Interactive");

    /// <summary>Chooses the style of the running notebook.</summary>
    /// <param name="style">Units and culture.</param>
    /// <exception cref="ArgumentNullException">There is no style.</exception>
    /// <exception cref="InvalidOperationException">No notebook is running.</exception>
    public static void Use(TextStyle style)
    {
        ArgumentNullException.ThrowIfNull(style);
        if (!HasKernels || !Kernels.TryChoose(style))
        {
            throw new InvalidOperationException("No notebook is running. In a program give each table and plot its style instead.");
        }
    }

    /// <summary>The styles of the notebooks that run in this process.</summary>
    private static class Kernels
    {
        // A style lives as long as its kernel, and no longer.
        private static readonly ConditionalWeakTable<Kernel, TextStyle> Styles = new();

        public static TextStyle? Chosen
        {
            [MethodImpl(MethodImplOptions.NoInlining)]
            get => Running is { } kernel && Styles.TryGetValue(kernel, out TextStyle? style) ? style : null;
        }

        private static Kernel? Running => KernelInvocationContext.Current?.HandlingKernel?.RootKernel;

        [MethodImpl(MethodImplOptions.NoInlining)]
        public static bool TryChoose(TextStyle style)
        {
            if (Running is not { } kernel)
            {
                return false;
            }

            Styles.AddOrUpdate(kernel, style);
            return true;
        }
    }
}
