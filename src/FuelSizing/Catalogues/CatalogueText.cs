namespace FuelSizing.Catalogues;

/// <summary>One catalogue file's name and text.</summary>
/// <param name="Name">As the reader was given it.</param>
/// <param name="Text">Everything in it.</param>
internal readonly record struct CatalogueText(string Name, string Text);
