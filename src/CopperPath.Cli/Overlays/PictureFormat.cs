namespace CopperPath.Cli.Overlays;

/// <summary>What a review picture is written as.</summary>
public enum PictureFormat
{
    Png,

    /// <summary>Curves and text as such, the field as a raster within.</summary>
    Svg,

    /// <summary>The same on a page as wide as an A3 sheet.</summary>
    Pdf,
}
