using System.Xml.Linq;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace FuelSizing.Packaging;

/// <summary>The documentation that the compiler writes covers every member; a package's reader can use the public ones alone.</summary>
internal static class PublicDocumentation
{
    /// <summary>Takes what is not public out of the documentation beside an assembly. The compiler itself says what is public, and how it is called there.</summary>
    /// <exception cref="InvalidOperationException">Nothing public is documented.</exception>
    public static void Keep(string assembly)
    {
        string file = Path.ChangeExtension(assembly, ".xml");
        HashSet<string> visible = VisibleIn(assembly);
        XDocument documentation = XDocument.Load(file, LoadOptions.PreserveWhitespace);
        XElement[] members = [.. documentation.Descendants("member")];
        XElement[] kept = [.. members.Where(member => visible.Contains(member.Attribute("name")!.Value))];
        if (kept.Length == 0)
        {
            throw new InvalidOperationException($"{file} documents nothing public.");
        }

        foreach (XElement member in members.Except(kept))
        {
            // With the line that it stood on.
            (member.NextNode as XText)?.Remove();
            member.Remove();
        }

        // What public words refer to and a reader cannot see keeps its name, and is no link.
        string own = $"{Path.GetFileNameWithoutExtension(assembly)}.";
        foreach (XElement see in kept.SelectMany(member => member.Descendants()).Where(element => element.Attribute("cref") is not null).ToArray())
        {
            string reference = see.Attribute("cref")!.Value;
            if (reference.Length > 2 && reference[2..].StartsWith(own, StringComparison.Ordinal) && !visible.Contains(reference))
            {
                see.ReplaceWith(new XElement("c", reference[2..].Split('(')[0].Split('.')[^1]));
            }
        }

        using (StreamWriter written = new(file))
        {
            documentation.Save(written, SaveOptions.DisableFormatting);
        }

        Console.WriteLine(FormattableString.Invariant($"{Path.GetFileName(file)}: {kept.Length} public members of {members.Length}"));
    }

    private static HashSet<string> VisibleIn(string assembly)
    {
        // Names of types elsewhere are those that the assembly's own references say: nothing else need be loaded.
        MetadataReference reference = MetadataReference.CreateFromFile(assembly);
        CSharpCompilation compilation = CSharpCompilation.Create("documentation", references: [reference, MetadataReference.CreateFromFile(typeof(object).Assembly.Location)]);
        HashSet<string> visible = [];
        Add(((IAssemblySymbol)compilation.GetAssemblyOrModuleSymbol(reference)!).GlobalNamespace);
        return visible;

        void Add(INamespaceOrTypeSymbol container)
        {
            foreach (ISymbol member in container.GetMembers())
            {
                if (member is INamespaceSymbol inner)
                {
                    Add(inner);
                }
                else if (member.DeclaredAccessibility is Accessibility.Public or Accessibility.Protected or Accessibility.ProtectedOrInternal)
                {
                    visible.Add(member.GetDocumentationCommentId()!);
                    if (member is INamedTypeSymbol type)
                    {
                        Add(type);
                    }
                }
            }
        }
    }
}
