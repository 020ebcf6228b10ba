using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// Outlines that meet each other so often that an operation's work budget was spent. There is no result; the same
/// outlines end in the same way on any machine.
/// </summary>
/// <param name="source">Number of the step or input that was drawn first where outlines are most crowded.</param>
/// <param name="place">Where they are most crowded.</param>
public sealed class EntangledOutlinesException(int source, PointNm place)
    : Exception("outlines cross and touch each other too often")
{
    /// <summary>Number of the step or input that was drawn first where outlines are most crowded.</summary>
    public int SourceNumber { get; } = source;

    /// <summary>Where outlines are most crowded, nanometres.</summary>
    public PointNm Place { get; } = place;
}
