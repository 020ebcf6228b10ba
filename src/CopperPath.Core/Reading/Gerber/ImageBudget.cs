using System.Globalization;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Gerber;

/// <summary>
/// What all images of a board may hold together; each alone is bounded by <see cref="GerberReadOptions"/>. Several may be read at
/// a time: once the budget is spent no further one is begun, and the set as a whole is refused, so that the answer does not
/// depend on which came first.
/// </summary>
public sealed class ImageBudget
{
    private long _objects;
    private long _vertices;

    /// <summary>Most objects of all images, blocks and step-and-repeat expanded.</summary>
    public long MaximumObjects { get; init; } = 4_000_000;

    /// <summary>Most vertices of all images, rings shared between objects counted at each use.</summary>
    public long MaximumVertices { get; init; } = 20_000_000;

    /// <summary>True once the images read hold more than is allowed.</summary>
    public bool IsSpent => Interlocked.Read(ref _objects) > MaximumObjects || Interlocked.Read(ref _vertices) > MaximumVertices;

    /// <summary>Counts an image.</summary>
    /// <param name="objects">Its objects.</param>
    /// <param name="vertices">Their vertices.</param>
    public void Spend(long objects, long vertices)
    {
        Interlocked.Add(ref _objects, objects);
        Interlocked.Add(ref _vertices, vertices);
    }

    /// <summary>The one remark when the budget is spent.</summary>
    /// <param name="board">Folder or archive of the board.</param>
    public Diagnostic Refusal(string board) => new(
        GerberCode.TooMuchInAll, Severity.Error, SourcePosition.WholeFile(board),
        string.Create(CultureInfo.InvariantCulture, $"more than {MaximumObjects} objects or {MaximumVertices} vertices in all images"),
        "a board within these bounds; take one board out of its panel, or draw planes as regions instead of strokes", AffectsCopper: true);
}
