namespace CopperPath.Reading.Gerber;

/// <summary>How a Gerber file is read.</summary>
public sealed record GerberReadOptions
{
    public static readonly GerberReadOptions Default = new();

    /// <summary>
    /// Largest distance between a curve and the chords that replace it, nanometres. Corners are placed so that areas
    /// stay right to first order; see the remarks on the flattening in Artwork.
    /// </summary>
    public double ChordToleranceNm { get; init; } = 500;

    /// <summary>
    /// Most objects of the finished image, blocks and step-and-repeat expanded. Beyond it the file is refused:
    /// a few bytes can ask for a thousand million copies.
    /// </summary>
    public long MaximumObjects { get; init; } = 2_000_000;

    /// <summary>
    /// Most vertices of the finished image, rings shared between objects counted at each use; four times the
    /// largest layer of the real boards the tests read.
    /// </summary>
    public long MaximumVertices { get; init; } = 4_000_000;

    /// <summary>What all images of the run may hold together; null for an image on its own.</summary>
    public ImageBudget? Budget { get; init; }

    /// <summary>
    /// True when the image is, or may be, copper: a negative image and unknown commands are then errors.
    /// False, for masks, paste, legend and drawings, makes them warnings.
    /// </summary>
    public bool PurposeIsCopper { get; init; } = true;
}
