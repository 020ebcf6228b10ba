using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>A line of equal value with the plates that say which.</summary>
/// <param name="Level">The value, in the unit of the scale.</param>
/// <param name="Line">Its way, pixels; a closed line ends where it starts.</param>
/// <param name="Labels">One or two plates on the line; their text is among the layout's.</param>
public sealed record PlacedContour(double Level, SKPoint[] Line, IReadOnlyList<SKRect> Labels);
