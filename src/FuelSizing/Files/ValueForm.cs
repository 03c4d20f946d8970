namespace FuelSizing.Files;

/// <summary>How a value is written in a file.</summary>
internal enum ValueForm
{
    /// <summary>A spreadsheet's cell, which may hold anything.</summary>
    Cell,

    /// <summary>A JSON text, in quotes.</summary>
    Text,

    /// <summary>A JSON number.</summary>
    Number,

    /// <summary>JSON's <c>true</c> or <c>false</c>.</summary>
    Truth,
}
