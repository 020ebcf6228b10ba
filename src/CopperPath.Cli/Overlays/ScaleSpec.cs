namespace CopperPath.Cli.Overlays;

/// <summary>What the shades of a picture stand for.</summary>
/// <param name="QuantityName">Name of the quantity, such as "Current density".</param>
/// <param name="UnitSymbol">Unit of the values and of the legend, such as "A/mm²".</param>
/// <param name="Kind">Linear or logarithmic.</param>
/// <param name="Top">Value of the last shade; null takes the next round number above the data.</param>
/// <param name="Bottom">Value of the first shade; null takes a round number below the data.</param>
public sealed record ScaleSpec(
    string QuantityName,
    string UnitSymbol,
    ScaleKind Kind,
    double? Top = null,
    double? Bottom = null);

/// <summary>How values are spread over the shades.</summary>
public enum ScaleKind
{
    /// <summary>Equal steps of value are equal steps of shade.</summary>
    Linear,

    /// <summary>Equal ratios of value are equal steps of shade; values at or below zero take the first shade.</summary>
    Logarithmic,
}
