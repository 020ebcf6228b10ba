using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>The drawn image of one Gerber file: its objects in painting order and the file's own attributes.</summary>
/// <param name="File">File name as given to the reader.</param>
/// <param name="Objects">Objects in painting order, blocks and step-and-repeat already expanded.</param>
/// <param name="FileAttributes">X2 file attributes: name (with its leading dot) to its fields.</param>
/// <param name="Bounds">Bounds of all dark objects; empty when nothing is drawn.</param>
public sealed record LayerArtwork(
    string File,
    IReadOnlyList<PaintedObject> Objects,
    IReadOnlyDictionary<string, IReadOnlyList<string>> FileAttributes,
    BoxNm Bounds)
{
    /// <summary>Joined when first asked for: of a board's layers only its profile is ever asked.</summary>
    private readonly Lazy<IReadOnlyList<PointNm[]>> _contours = new([]);

    internal LayerArtwork(
        string file,
        IReadOnlyList<PaintedObject> objects,
        IReadOnlyDictionary<string, IReadOnlyList<string>> fileAttributes,
        BoxNm bounds,
        Func<IReadOnlyList<PointNm[]>> contours)
        : this(file, objects, fileAttributes, bounds) =>
        _contours = new Lazy<IReadOnlyList<PointNm[]>>(contours);

    /// <summary>
    /// Centre lines of all strokes joined end to end where they meet, in order of appearance
    /// (used to read a profile drawn with a thin pen); regions are not included.
    /// </summary>
    public IReadOnlyList<PointNm[]> Contours => _contours.Value;
}
