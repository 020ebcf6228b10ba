namespace CopperPath.Quantities;

/// <summary>
/// A quantity read from text, or what was wrong with it in the words of a
/// <see cref="Diagnostics.Diagnostic"/> ("found ...; expected ...").
/// </summary>
/// <param name="Quantity">The quantity, or null when the text was not accepted.</param>
/// <param name="Found">What stood there; empty when accepted.</param>
/// <param name="Expected">What would have been right, with an example; empty when accepted.</param>
public readonly record struct QuantityReading(Quantity? Quantity, string Found, string Expected);
