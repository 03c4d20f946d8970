using FuelSizing.Site;

// Finishes the documentation site once its pages are built: see .ci/site.
if (args is not [var site])
{
    Console.Error.WriteLine("usage: FuelSizing.Site SITE");
    return 2;
}

int faults = 0;
foreach (string name in (string[])["equations.html", "symbols.html"])
{
    string path = Path.Combine(site, name);
    EquationPage page = EquationPage.Of(File.ReadAllText(path));
    File.WriteAllText(path, page.Html);
    foreach (string text in page.Left)
    {
        Console.Error.WriteLine($"{name}: not read as a formula: {text}");
        faults++;
    }

    Console.WriteLine($"{name}: {page.Equations} equations and {page.Parts} other formulas and symbols set as MathML");
}

IReadOnlySet<string> anchors = NotebookPage.AnchorsOf(File.ReadAllText(Path.Combine(site, "equations.html")));
int links = 0;
foreach (string path in Directory.GetFiles(Path.Combine(site, "notebooks"), "*.html"))
{
    NotebookPage page = NotebookPage.Of(File.ReadAllText(path), anchors);
    File.WriteAllText(path, page.Html);
    links += page.Links;
    foreach (string name in page.Left.Distinct())
    {
        Console.Error.WriteLine($"{Path.GetFileName(path)}: {name} is not in the index of equations");
        faults++;
    }
}

Console.WriteLine($"notebooks: {links} lines of workings linked to their equations");
return faults == 0 && links > 0 ? 0 : 1;
