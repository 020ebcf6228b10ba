namespace CopperPath.Polygons;

/// <summary>
/// Snap rounding of a set of segments to the integer grid: every segment end and every crossing makes its unit
/// square ("hot pixel") hot, and each segment is bent through the centres of all hot pixels it meets. The bent
/// segments then meet at grid points only, however close the input was to being degenerate
/// (J. D. Hobby, "Practical segment intersection with finite precision output", Computational Geometry 13, 1999).
/// </summary>
/// <remarks>
/// A hot pixel lies in exactly one tile of a grid, and everything that decides about it passes through that tile, so
/// tiles need nothing from each other: they run on any number of cores, and their results follow each other in the
/// order of the tiles.
/// </remarks>
internal static class SnapRounding
{
    private const int SegmentsPerTile = 64;
    private const int SegmentsPerTask = 16_384;

    /// <summary>Snap-rounds the segments; the parts together hold every hot pixel once.</summary>
    public static CellNoder[] Run(Segment[] segments)
    {
        if (segments.Length == 0)
        {
            return [];
        }

        var tiles = TileGrid.Over(segments, SegmentsPerTile);
        List<int> firstTileOfTask = [];
        for (int tile = 0, load = SegmentsPerTask; tile < tiles.TileCount; tile++)
        {
            if (load >= SegmentsPerTask)
            {
                firstTileOfTask.Add(tile);
                load = 0;
            }

            load += tiles.SegmentsIn(tile).Length;
        }

        CellNoder[] parts = new CellNoder[firstTileOfTask.Count];
        firstTileOfTask.Add(tiles.TileCount);
        Parallel.For(0, parts.Length, task =>
        {
            var noder = new CellNoder(segments);
            for (int tile = firstTileOfTask[task]; tile < firstTileOfTask[task + 1]; tile++)
            {
                noder.Node(tiles.SegmentsIn(tile), tiles.BoxOf(tile));
            }

            parts[task] = noder;
        });
        return parts;
    }
}
