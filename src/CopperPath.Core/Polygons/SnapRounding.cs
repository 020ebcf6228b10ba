using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// Snap rounding of a set of segments to the integer grid: every segment end and every crossing makes its unit
/// square ("hot pixel") hot, and each segment is bent through the centres of all hot pixels it meets. The bent
/// segments then meet at grid points only, however close the input was to being degenerate
/// (J. D. Hobby, "Practical segment intersection with finite precision output", Computational Geometry 13, 1999).
/// </summary>
/// <remarks>
/// A hot pixel lies in exactly one tile of a grid, and everything that decides about it passes through that tile, so
/// tiles need nothing from each other: bands of tiles run on any number of cores, and their results follow each other
/// in the order of the bands.
/// </remarks>
internal static class SnapRounding
{
    private const int SegmentsPerTile = 4;
    private const int TilesPerSegment = 16;
    private const int MostBands = 32;

    /// <summary>Snap-rounds the segments; the parts together hold every hot pixel that matters once.</summary>
    /// <param name="segments">Segments; those of one source follow each other.</param>
    /// <param name="rule">What covers a place; with it, pixels inside what is covered may be left out. May be null.</param>
    /// <param name="workers">Most cores to use, or -1 for all there are; the result is the same.</param>
    /// <exception cref="EntangledOutlinesException">It would take too much work.</exception>
    public static TileNoder[] Run(Segment[] segments, CoverageRule? rule, int workers = -1) =>
        Run(segments, rule, WorkBudget.For(segments.Length), workers);

    /// <summary>The same within a budget of one's own, which tells the work afterwards.</summary>
    public static TileNoder[] Run(Segment[] segments, CoverageRule? rule, WorkBudget budget, int workers = -1)
    {
        if (segments.Length == 0)
        {
            return [];
        }

        SourceSpan[] sources = SourceSpan.Of(segments);
        PixelBox box = new(sources.Min(s => s.Box.MinX), sources.Min(s => s.Box.MinY),
            sources.Max(s => s.Box.MaxX), sources.Max(s => s.Box.MaxY));
        int shift = CoverGrid.ShiftFor(
            box, segments.Length / SegmentsPerTile, sources.Sum(s => s.WidthsAndHeightsNm), segments.Length, TilesPerSegment);
        long rows = ((box.MaxY - box.MinY) >> shift) + 1;
        long rowsPerBand = (rows + MostBands - 1) / MostBands;
        PixelBox[] bands = new PixelBox[(rows + rowsPerBand - 1) / rowsPerBand];
        for (int band = 0; band < bands.Length; band++)
        {
            long bottom = box.MinY + ((band * rowsPerBand) << shift);
            bands[band] = box with { MinY = bottom, MaxY = Math.Min(box.MaxY, bottom + (rowsPerBand << shift) - 1) };
        }

        TileNoder[] parts = new TileNoder[bands.Length];
        ParallelOptions options = new() { MaxDegreeOfParallelism = workers };
        try
        {
            Parallel.For(0, parts.Length, options, () => new CoverGrid(segments, rule), (band, _, grid) =>
            {
                parts[band] = new TileNoder(segments, rule, budget);
                DrawBand(grid, sources, bands[band], shift);
                parts[band].Node(grid);
                return grid;
            }, static _ => { });
        }
        catch (AggregateException failure) when (failure.InnerExceptions.All(inner => inner is SpentBudgetException))
        {
            throw MostCrowded(segments, sources, bands, shift);
        }

        return parts;
    }

    /// <summary>Says where most segments pass one tile: the same place, whatever tile the budget was spent in.</summary>
    private static EntangledOutlinesException MostCrowded(
        Segment[] segments, SourceSpan[] sources, PixelBox[] bands, int shift)
    {
        (int Length, int Source, PointNm Place) most = default;
        CoverGrid grid = new(segments, null);
        foreach (PixelBox band in bands)
        {
            DrawBand(grid, sources, band, shift);
            for (int tile = 0; tile < grid.TileCount; tile++)
            {
                ReadOnlySpan<int> list = grid.ListOf(tile);
                if (list.Length > most.Length)
                {
                    PixelBox box = grid.BoxOf(tile);
                    most = (list.Length, segments[list[0]].Source, new PointNm((box.MinX + box.MaxX) / 2, (box.MinY + box.MaxY) / 2));
                }
            }
        }

        return new EntangledOutlinesException(most.Source, most.Place);
    }

    private static void DrawBand(CoverGrid grid, SourceSpan[] sources, PixelBox band, int shift)
    {
        grid.Reset(band, shift, 0);
        foreach (SourceSpan span in sources)
        {
            if (span.Box.MinY <= band.MaxY + CoverGrid.Margin && span.Box.MaxY >= band.MinY - CoverGrid.Margin)
            {
                grid.Begin(span.Source);
                for (int i = span.First; i < span.End; i++)
                {
                    grid.Draw(i);
                }

                grid.End(0);
            }
        }

        grid.Finish();
    }

    /// <summary>The segments of one source, and the box around them.</summary>
    private readonly record struct SourceSpan(int Source, int First, int End, PixelBox Box, double WidthsAndHeightsNm)
    {
        public static SourceSpan[] Of(Segment[] segments)
        {
            List<SourceSpan> spans = [];
            for (int first = 0; first < segments.Length;)
            {
                long minX = long.MaxValue, minY = long.MaxValue, maxX = long.MinValue, maxY = long.MinValue;
                int source = segments[first].Source, end = first;
                double widthsAndHeightsNm = 0;
                for (; end < segments.Length && segments[end].Source == source; end++)
                {
                    minX = Math.Min(minX, segments[end].Ax);
                    maxX = Math.Max(maxX, segments[end].Bx);
                    minY = Math.Min(minY, segments[end].MinY);
                    maxY = Math.Max(maxY, segments[end].MaxY);
                    widthsAndHeightsNm += segments[end].Dx + Math.Abs(segments[end].Dy);
                }

                spans.Add(new SourceSpan(source, first, end, new PixelBox(minX, minY, maxX, maxY), widthsAndHeightsNm));
                first = end;
            }

            return [.. spans];
        }
    }
}
