namespace CopperPath.Artwork;

/// <summary>A component pin as the X2 <c>.P</c> attribute names it.</summary>
/// <param name="Component">Reference designator, e.g. <c>U3</c>.</param>
/// <param name="Pin">Pin number or name, e.g. <c>7</c> or <c>A4</c>.</param>
/// <param name="Function">Pin function text where given, else null.</param>
public sealed record PinName(string Component, string Pin, string? Function = null)
{
    /// <summary>Component and pin as briefs and findings write them, e.g. <c>U3.7</c>.</summary>
    public string Text => $"{Component}.{Pin}";
}

/// <summary>
/// What the file claims about an object (X2 attributes at its creation). Claims never join copper: geometry does.
/// </summary>
/// <param name="Nets">Net names of <c>.N</c>; more than one means the nets are tied at this object; empty when none.</param>
/// <param name="Pin">Pin of <c>.P</c>, or null.</param>
/// <param name="Component">Component of <c>.C</c>, or null.</param>
/// <param name="ApertureFunction">Value of <c>.AperFunction</c> including its fields joined by commas, or null.</param>
public sealed record ObjectLabels(
    IReadOnlyList<string> Nets,
    PinName? Pin,
    string? Component,
    string? ApertureFunction)
{
    public static readonly ObjectLabels None = new([], null, null, null);
}
