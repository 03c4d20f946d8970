using FuelSizing.Packaging;

// Makes what a package holds and the tree does not: see PreparePackage in src/Package.targets, which runs it when a package is packed.
if (args is not [var package, var version, var readme, var changelog, var folder, .. [_, ..] assemblies])
{
    Console.Error.WriteLine("usage: FuelSizing.Packaging PACKAGE VERSION README CHANGELOG FOLDER ASSEMBLY...");
    return 2;
}

Directory.CreateDirectory(folder);
File.WriteAllText(Path.Combine(folder, "README.md"), PackageReadme.Of(File.ReadAllText(readme), package));
File.WriteAllText(Path.Combine(folder, "notes.md"), ReleaseNotes.Of(File.ReadAllText(changelog), version));
foreach (string assembly in assemblies)
{
    PublicDocumentation.Keep(assembly);
}

return 0;
