using CopperPath.Geometry;
using SkiaSharp;

namespace CopperPath.Cli.Overlays.Stages;

/// <summary>Lays out a stage picture: title, ribbon, view with axes, plates.</summary>
internal static class StageArranger
{
    private const float MostHeightShare = 0.78f;
    private const int TicksAcross = 12;

    public static StageLayout Arrange(StageScene scene)
    {
        float unit = scene.UnitPx;
        float margin = 36 * unit;
        List<TextRun> texts = [];
        float y = Head(scene, unit, margin, texts);
        List<RibbonChip> ribbon = RibbonOf(scene, unit, margin, ref y);
        float axis = 44 * unit;
        float width = scene.WidthPx - (2 * margin) - axis;
        double pixelsPerNm = Math.Min(width / scene.ViewNm.WidthNm, MostHeightShare * scene.WidthPx / scene.ViewNm.HeightNm);
        float viewWidth = (float)(scene.ViewNm.WidthNm * pixelsPerNm);
        float left = margin + axis + ((width - viewWidth) / 2);
        SKRect view = SKRect.Create(left, y, viewWidth, (float)(scene.ViewNm.HeightNm * pixelsPerNm));
        ViewTransform transform = new(scene.ViewNm, view.Left, view.Top, pixelsPerNm, scene.SeenFromBelow);
        List<AxisTick> ticks = TicksOf(scene, view, transform);
        float foot = view.Bottom + (52 * unit);
        texts.Add(Line($"mm from the files' origin{(scene.SeenFromBelow ? ", seen from below" : "")}{string.Concat(scene.Title.Conditions.Select(condition => "   ·   " + condition))}", margin, foot + (14 * unit), 15 * unit, false, Ink.Muted));
        texts.Add(Line($"{scene.Title.ToolVersion}{(scene.Title.InputHash.Length > 0 ? $"   ·   inputs {scene.Title.InputHash}" : "")}", margin, foot + (38 * unit), 15 * unit, false, Ink.Muted));

        List<SKPath> paths = [.. scene.Fills.Select(fill => CopperPaths.Of(fill.Copper, transform))];
        FillMap map = new(view, DrawingOrder(scene.Fills).Select(i => (i, paths[i])));
        List<PlacedEnd> ends = EndsOf(scene, transform, view, unit, map);
        List<PlacedPart> parts = [.. scene.Parts.Select(part => PartOf(part, transform, unit, ends))];
        List<StageLabel> labels = LabelsOf(scene, map, unit);
        paths.ForEach(path => path.Dispose());
        return new StageLayout(new SKSizeI(scene.WidthPx, (int)Math.Ceiling(foot + (56 * unit))), view, transform, texts, ribbon, ticks, labels, ends, parts);
    }

    /// <summary>The return lies under all, since its planes do; switch nodes on top, since they are smallest.</summary>
    public static IEnumerable<int> DrawingOrder(IReadOnlyList<StageFill> fills) => Enumerable.Range(0, fills.Count).OrderBy(i => fills[i].Kind switch
    {
        StageKind.Return => 0,
        StageKind.Other => 1,
        StageKind.Output => 2,
        StageKind.Input => 3,
        StageKind.Feed => 4,
        _ => 5,
    }).ThenBy(i => i);

    private static float Head(StageScene scene, float unit, float margin, List<TextRun> texts)
    {
        string revision = scene.Title.Revision.Length > 0 ? $", revision {scene.Title.Revision}" : "";
        texts.Add(Line(scene.Title.Board + revision, margin, 58 * unit, 34 * unit, true, Ink.Main));
        texts.Add(Line($"{scene.Title.Subject}   ·   {scene.Title.Layer}", margin, 90 * unit, 18 * unit, false, Ink.Muted));
        return 112 * unit;
    }

    /// <summary>As wide as the picture, the chips alike.</summary>
    private static List<RibbonChip> RibbonOf(StageScene scene, float unit, float margin, ref float y)
    {
        float gap = 34 * unit;
        float width = (scene.WidthPx - (2 * margin) - (gap * (scene.Ribbon.Count - 1))) / Math.Max(1, scene.Ribbon.Count);
        float room = width - (30 * unit);
        IReadOnlyList<string>[] facts = [.. scene.Ribbon.Select(stage => PictureFonts.Wrap(stage.Facts, 15 * unit, false, room))];
        float height = (38 + (20 * facts.Select(lines => lines.Count).DefaultIfEmpty(0).Max())) * unit;
        float top = y;
        List<RibbonChip> chips = [.. scene.Ribbon.Select((stage, k) => new RibbonChip(
            SKRect.Create(margin + (k * (width + gap)), top, width, height), stage.Kind, Fitted(stage.Name, 17 * unit, true, room), facts[k]))];
        y += chips.Count == 0 ? 0 : height + (24 * unit);
        return chips;
    }

    private static List<AxisTick> TicksOf(StageScene scene, SKRect view, ViewTransform transform)
    {
        double stepMm = RoundNumbers.Step(Math.Max(scene.ViewNm.WidthNm, scene.ViewNm.HeightNm) * 1e-6, TicksAcross);
        List<AxisTick> ticks = [];
        foreach (double mm in RoundNumbers.Multiples(scene.ViewNm.MinX * 1e-6, scene.ViewNm.MaxX * 1e-6, stepMm))
        {
            ticks.Add(new AxisTick(new SKPoint((float)transform.XPx(mm * 1e6), view.Bottom), true, RoundNumbers.Text(mm, stepMm)));
        }

        foreach (double mm in RoundNumbers.Multiples(scene.ViewNm.MinY * 1e-6, scene.ViewNm.MaxY * 1e-6, stepMm))
        {
            ticks.Add(new AxisTick(new SKPoint(view.Left, (float)transform.YPx(mm * 1e6)), false, RoundNumbers.Text(mm, stepMm)));
        }

        return ticks;
    }

    private static PlacedPart PartOf(StagePartMark part, ViewTransform transform, float unit, List<PlacedEnd> ends)
    {
        SKPoint a = transform.Map(new PointNm(part.Box.MinX, part.Box.MaxY));
        SKPoint b = transform.Map(new PointNm(part.Box.MaxX, part.Box.MinY));
        SKRect box = SKRect.Inflate(new SKRect(Math.Min(a.X, b.X), a.Y, Math.Max(a.X, b.X), b.Y), 3 * unit, 3 * unit);
        float size = 12 * unit;
        float width = PictureFonts.WidthPx(part.Name, size, true);
        SKRect text = SKRect.Create(box.MidX - (width / 2), box.MidY - (size * 0.7f), width, size * 1.4f);
        bool hasRoom = width <= box.Width + (6 * unit) && box.Height >= size && !ends.Exists(end => SKRect.Inflate(DiscOf(end.At, end.RadiusPx), 2, 2).IntersectsWith(text));
        return new PlacedPart(part, box, hasRoom ? new SKPoint(text.Left, box.MidY + (size * 0.36f)) : null);
    }

    /// <summary>All marks first, the largest currents before others; amperes only where they touch neither marks nor each other.</summary>
    private static List<PlacedEnd> EndsOf(StageScene scene, ViewTransform transform, SKRect view, float unit, FillMap map)
    {
        float radius = 8 * unit;
        float size = 13 * unit;
        List<PlacedEnd> marks = [];
        foreach (StageEnd end in scene.Ends.OrderByDescending(end => Math.Abs(end.CurrentA)))
        {
            SKPoint at = transform.Map(end.At);
            if (view.Contains(DiscOf(at, radius)) && !marks.Exists(other => SKPoint.Distance(other.At, at) < 2.2f * radius))
            {
                marks.Add(new PlacedEnd(end, at, radius, null));
                map.Take(SKRect.Inflate(DiscOf(at, radius), 3 * unit, 3 * unit));
            }
        }

        List<SKRect> taken = [.. marks.Select(mark => SKRect.Inflate(DiscOf(mark.At, radius), 2 * unit, 2 * unit))];
        for (int i = 0; i < marks.Count && scene.EndsHaveText; i++)
        {
            SKPoint at = marks[i].At;
            float width = PictureFonts.WidthPx(marks[i].End.Text, size, true);
            float gap = radius + (4 * unit);
            SKRect[] places =
            [
                SKRect.Create(at.X + gap, at.Y - (size * 0.7f), width, size * 1.4f), SKRect.Create(at.X - gap - width, at.Y - (size * 0.7f), width, size * 1.4f),
                SKRect.Create(at.X - (width / 2), at.Y + radius, width, size * 1.4f), SKRect.Create(at.X - (width / 2), at.Y - radius - (size * 1.4f), width, size * 1.4f),
            ];
            foreach (SKRect text in places.Where(place => view.Contains(place) && !taken.Where((_, k) => k != i).Any(box => box.IntersectsWith(place))).Take(1))
            {
                marks[i] = marks[i] with { TextAt = new SKPoint(text.Left, text.Top + (size * 1.06f)) };
                taken.Add(text);
                map.Take(SKRect.Inflate(text, 3 * unit, 3 * unit));
            }
        }

        return marks;
    }

    private static SKRect DiscOf(SKPoint at, float radius) => SKRect.Create(at.X - radius, at.Y - radius, 2 * radius, 2 * radius);

    /// <summary>Plates of the smallest fills first: they have the least room.</summary>
    private static List<StageLabel> LabelsOf(StageScene scene, FillMap map, float unit)
    {
        List<StageLabel> labels = [];
        foreach (int i in Enumerable.Range(0, scene.Fills.Count).Where(i => map.CellsOf(i) > 0).OrderBy(map.CellsOf).ThenBy(i => i))
        {
            string[] lines = scene.Fills[i].Facts.Length > 0 ? [scene.Fills[i].Name, scene.Fills[i].Facts] : [scene.Fills[i].Name];
            SKSize size = new(lines.Select((line, n) => PictureFonts.WidthPx(line, 15 * unit, n == 0)).Max() + (18 * unit), ((lines.Length * 19) + 11) * unit);
            if (map.PlaceFor(i, size) is { } place)
            {
                labels.Add(new StageLabel(i, place.Plate, lines, place.Anchor));
                map.Take(SKRect.Inflate(place.Plate, 5 * unit, 5 * unit));
            }
        }

        return labels;
    }

    private static TextRun Line(string text, float x, float baseline, float size, bool isStrong, Ink ink) =>
        new(text, new SKPoint(x, baseline), size, isStrong, ink, SKRect.Create(x, baseline - size, PictureFonts.WidthPx(text, size, isStrong), size * 1.25f));

    private static string Fitted(string text, float size, bool isStrong, float width)
    {
        if (PictureFonts.WidthPx(text, size, isStrong) <= width)
        {
            return text;
        }

        int length = text.Length;
        while (length > 1 && PictureFonts.WidthPx(text[..length].TrimEnd() + "…", size, isStrong) > width)
        {
            length--;
        }

        return text[..length].TrimEnd() + "…";
    }
}
