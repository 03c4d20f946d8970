using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace FuelSizing.Notebooks.Tests;

/// <summary>What follows another's work keeps that work's notice: in the source, on the page of notices, and in the packages.</summary>
public partial class NoticeTests
{
    private static string Page { get; } = OneLine(File.ReadAllText(Repository.PathOf("docs", "notices.md")));

    /// <summary>The notices of fdlibm 5.3, e_log.c and e_exp.c, read in copies of those files.</summary>
    [Theory]
    [InlineData(
        "Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved. Developed at SunSoft, a Sun Microsystems, Inc. business. "
        + "Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved.")]
    [InlineData(
        "Copyright (C) 2004 by Sun Microsystems, Inc. All rights reserved. "
        + "Permission to use, copy, modify, and distribute this software is freely granted, provided that this notice is preserved.")]
    public void Notice_OfFdlibm_IsOnThePageAndAboveTheCode(string notice)
    {
        string code = File.ReadAllText(Repository.PathOf("src", "FuelSizing", "Numerics", "Elementary.cs"));

        Assert.Contains(notice, Page, StringComparison.Ordinal);
        Assert.Contains(notice, OneLine(code.Replace("//", "", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void Copyright_OfAnotherInAnySource_IsOnThePage()
    {
        string[] lines =
        [
            .. from file in Directory.GetFiles(Repository.PathOf("src"), "*.cs", SearchOption.AllDirectories)
               where !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
               from Match match in Copyright().Matches(File.ReadAllText(file))
               select OneLine(match.Value),
        ];

        Assert.NotEmpty(lines);
        Assert.All(lines, line => Assert.Contains(line, Page, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("FuelSizing")]
    [InlineData("FuelSizing.Interactive")]
    public void Package_CarriesTheNotices(string project)
    {
        // What both packages have in common stands in a file that each imports.
        XElement import = Assert.Single(XDocument.Load(Repository.PathOf("src", project, $"{project}.csproj")).Descendants("Import"));
        XDocument file = XDocument.Load(Repository.PathOf("src", project, import.Attribute("Project")!.Value));
        XElement packed = Assert.Single(
            file.Descendants("None"), item => item.Attribute("Include")!.Value.EndsWith("docs/notices.md", StringComparison.Ordinal));

        Assert.Equal(("true", "NOTICES.md"), (packed.Attribute("Pack")?.Value, packed.Attribute("PackagePath")?.Value));
    }

    private static string OneLine(string text) => Space().Replace(text, " ").Trim();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();

    [GeneratedRegex(@"Copyright \([cC]\)[^\r\n]*")]
    private static partial Regex Copyright();
}
