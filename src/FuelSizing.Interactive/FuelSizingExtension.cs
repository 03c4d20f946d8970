namespace FuelSizing.Interactive;

/// <summary>Teaches a C# notebook kernel to show this library's values.</summary>
/// <remarks>
/// A notebook that loads the package with <c>#r "nuget:FuelSizing.Interactive,…"</c> runs this by itself:
/// the package carries <c>interactive-extensions/dotnet/extension.dib</c>, which the kernel executes after restoring it.
/// A program that hosts a kernel calls <see cref="Register"/>.
/// </remarks>
public static class FuelSizingExtension
{
    /// <summary>Registers the formatters. Registering again changes nothing.</summary>
    public static void Register()
    {
        Shown.As<IDisplayBlock>((block, _) => block);
        Shown.As<IEnumerable<IDisplayBlock>>((blocks, _) => new BlockList(blocks));
        FuelShown.Register();
        EngineShown.Register();
        BoostShown.Register();
        InjectorShown.Register();
        RegulatorShown.Register();
        PumpShown.Register();
        BenchShown.Register();
        ControllerFiguresShown.Register();
        WiringShown.Register();
        LineShown.Register();
        SystemShown.Register();
        ResultShown.Register();
        ControllerShown.Register();
        MixtureShown.Register();
        WorkingShown.Register();
        SizingShown.Register();
        SelectionShown.Register();
        UncertaintyShown.Register();
        RunShown.Register();
        FindingShown.Register();
        FrontShown.Register();
        ConformanceShown.Register();
    }
}
