using CopperPath.Quantities;
using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// Places the parts of a picture. Everything is measured in em, the height of the running text, so that pictures of
/// different widths look alike. Wide boards have legend and list below the view, tall boards beside it.
/// </summary>
internal sealed class OverlayArranger
{
    private const float SmallestEmPx = 11;
    private const float EmsPerWidth = 100;
    private const float BesideFromAspect = 0.8f;
    private const float WideFromEms = 75;
    private const float ViaAirEms = 0.2f;
    private const int MostContourSteps = 8;
    private const float WidestKeyMapEms = 16;
    private const float TallestKeyMapEms = 18;

    private readonly OverlayScene _scene;
    private readonly FieldSummary _field;
    private readonly float _em;
    private readonly List<TextRun> _texts = [];
    private readonly List<KeySwatch> _keys = [];
    private readonly List<NumberPlate> _listedPlates = [];
    private readonly List<SKRect> _rules = [];
    private LegendBar? _fieldLegend;
    private LegendBar? _viaLegend;
    private LengthBar? _lengthBar;
    private KeyMap? _keyMap;
    private double _levelStep;
    private bool _hasContours;

    private OverlayArranger(OverlayScene scene, FieldSummary field)
    {
        _scene = scene;
        _field = field;
        _em = Math.Max(SmallestEmPx, scene.WidthPx / EmsPerWidth);
    }

    private float Margin => 2 * _em;

    private SKSize Plate
    {
        get
        {
            int widest = _scene.CallOuts.Count == 0 ? 0 : _scene.CallOuts.Max(c => c.Number);
            string digits = new('8', RoundNumbers.Text(widest, 1).Length);
            return new(Math.Max(1.5f * _em, PictureFonts.WidthPx(digits, 0.95f * _em, true) + (0.8f * _em)), 1.5f * _em);
        }
    }

    private float Gap => 0.35f * _em;

    public static OverlayLayout Arrange(OverlayScene scene, FieldSummary field) => new OverlayArranger(scene, field).Arrange();

    private OverlayLayout Arrange()
    {
        float width = _scene.WidthPx - (2 * Margin);
        float y = PlaceTitle(Margin, Margin, width);
        _rules.Add(SKRect.Create(Margin, y, width, Math.Max(1, _em / 16)));
        y += 1.2f * _em;

        float aspect = (float)_scene.ViewNm.HeightNm / Math.Max(1, _scene.ViewNm.WidthNm);
        bool isBeside = aspect > BesideFromAspect && width > WideFromEms * _em;
        float frameWidth = isBeside ? (0.64f * width) : width;
        float tallestPx = isBeside ? 1.6f * frameWidth : 0.85f * frameWidth;
        (SKRect frame, SKRect view, int rows) = PlaceFrame(Margin, y, frameWidth, tallestPx, aspect);
        ViewTransform transform = new(
            _scene.ViewNm, view.Left, view.Top, view.Width / Math.Max(1, _scene.ViewNm.WidthNm), _scene.SeenFromBelow);
        IReadOnlyList<PlacedVia> vias = PlacedVia.Of(_scene.Vias, transform, _field.ViaScale, _em);
        using SKPath net = CopperPaths.Of(_scene.NetCopper, transform);
        using SKPath quiet = CopperPaths.Of(_scene.QuietCopper, transform);
        CoverMap cover = new(view, _em / 4, net, quiet, [.. vias.Select(via => SKRect.Inflate(via.Box, ViaAirEms * _em, ViaAirEms * _em))]);
        IReadOnlyList<PlacedCallOut> callOuts = PlaceCallOuts(frame, view, rows, transform, vias, cover);
        IReadOnlyList<PlacedContour> contours = PlaceContours(view, transform, vias, callOuts, cover);

        float bottom;
        if (isBeside)
        {
            float left = frame.Right + (2 * _em);
            float columnWidth = Margin + width - left;
            float below = PlaceLegends(left, y, columnWidth, transform);
            bottom = Math.Max(frame.Bottom, PlaceList(left, below + _em, columnWidth, callOuts));
        }
        else
        {
            float below = PlaceLegends(Margin, frame.Bottom + (1.2f * _em), width, transform);
            bottom = PlaceList(Margin, below + _em, width, callOuts);
        }

        bottom = PlaceFooter(Margin, bottom + (1.2f * _em), width);
        SKSizeI size = new(_scene.WidthPx, (int)Math.Ceiling(bottom + (0.6f * Margin)));
        return new(
            size, frame, view, transform, _texts, _fieldLegend, _viaLegend, _lengthBar!, _keyMap, _keys, contours, vias, callOuts, _listedPlates, _rules);
    }

    private float PlaceTitle(float left, float top, float width)
    {
        TitleBlock title = _scene.Title;
        string headline = Joined(" \u00B7 ", title.Subject, _scene.Scale.QuantityName);
        string board = Joined(", ", title.Board, title.Revision.Length == 0 ? "" : $"revision {title.Revision}");
        string side = _scene.SeenFromBelow ? "seen from below (mirrored)" : "seen from above";
        float y = PlaceLines(headline, left, top, width, 1.9f * _em, true, Ink.Main);
        y = PlaceLines(Joined(" \u00B7 ", board, title.Layer, side), left, y + (0.15f * _em), width, 1.2f * _em, false, Ink.Main);
        if (title.Conditions.Count > 0)
        {
            y = PlaceLines(Joined(" \u00B7 ", [.. title.Conditions]), left, y + (0.15f * _em), width, _em, false, Ink.Muted);
        }

        return y + (0.5f * _em);
    }

    private (SKRect Frame, SKRect View, int Rows) PlaceFrame(float left, float top, float width, float tallestPx, float aspect)
    {
        int shown = _scene.CallOuts.Count(c => _scene.ViewNm.Contains(c.SpotNm));
        int wanted = shown == 0 ? 0 : (int)(1.25 * shown) + 8;
        for (int rows = shown == 0 ? 0 : 1; ; rows++)
        {
            float gutterX = rows == 0 ? _em : (rows * (Plate.Width + Gap)) + (2 * Gap);
            float gutterY = rows == 0 ? _em : (rows * (Plate.Height + Gap)) + (2 * Gap);
            float viewWidth = width - (2 * gutterX);
            float viewHeight = viewWidth * aspect;
            if (viewHeight > tallestPx)
            {
                viewHeight = tallestPx;
                viewWidth = viewHeight / aspect;
            }

            SKRect frame = SKRect.Create(left, top, width, viewHeight + (2 * gutterY));
            SKRect view = SKRect.Create(frame.MidX - (viewWidth / 2), top + gutterY, viewWidth, viewHeight);
            bool hasRoom = CallOutPlacement.GutterSlots(frame, Plate, Gap, rows).Count >= wanted;
            bool isCramped = width - (2 * (gutterX + Plate.Width + Gap)) < 0.5f * width;
            if (hasRoom || isCramped)
            {
                return (frame, view, rows);
            }
        }
    }

    private List<PlacedCallOut> PlaceCallOuts(
        SKRect frame, SKRect view, int rows, ViewTransform transform, IReadOnlyList<PlacedVia> vias, CoverMap cover)
    {
        CallOut[] shown = [.. _scene.CallOuts.Where(c => _scene.ViewNm.Contains(c.SpotNm)).OrderBy(c => c.Number)];
        SKPoint[] spots = Array.ConvertAll(shown, c => transform.Map(c.SpotNm));
        float[] rings = CallOutPlacement.RingRadii(spots, 0.7f * _em, 0.3f * _em);
        SKRect?[] extents = [.. shown.Select((callOut, i) => ExtentOf(callOut, rings[i], transform))];
        CallOutObstacles obstacles = new(extents, [.. vias.Where(via => via.Via.IsOverLimit).Select(via => via.Box)]);
        IReadOnlyList<SKPoint> slots = CallOutPlacement.GutterSlots(frame, Plate, Gap, rows);
        SKPoint?[] centres = CallOutPlacement.Find(view, cover, Plate, Gap, spots, rings, obstacles, slots);

        List<PlacedCallOut> placed = [];
        for (int i = 0; i < shown.Length; i++)
        {
            NumberPlate? plate = centres[i] is SKPoint c
                ? new NumberPlate(CallOutPlacement.BoxAround(c, Plate), shown[i].Number, shown[i].Rank)
                : null;
            SKPoint centre = centres[i] ?? spots[i];
            placed.Add(new(
                shown[i],
                spots[i],
                rings[i],
                extents[i],
                plate,
                extents[i] is { } extent
                    ? CallOutPlacement.BoxEdgeTowards(centre, spots[i], extent)
                    : CallOutPlacement.RingEdgeTowards(centre, spots[i], rings[i]),
                CallOutPlacement.PlateEdgeTowards(spots[i], centre, Plate)));
            if (plate is not null)
            {
                PlaceNumber(plate, shown[i].Number);
            }
        }

        return placed;
    }

    private List<PlacedContour> PlaceContours(
        SKRect view, ViewTransform transform, IReadOnlyList<PlacedVia> vias, IReadOnlyList<PlacedCallOut> callOuts, CoverMap cover)
    {
        if (_scene.Levels is not { } levels)
        {
            return [];
        }

        using SKPath board = CopperPaths.Of(_scene.Outline, transform);
        SKRect[] marks = [.. vias.Where(via => via.Via.IsOverLimit).Select(via => via.Box)];
        ContourPlacement placement = new(_em, IsFree, cover);
        double[] values = [.. levels.Values.Where(double.IsFinite)];
        double range = values.Length == 0 ? 0 : values.Max() - values.Min();
        if (range == 0)
        {
            return [];
        }

        _levelStep = Math.Max(levels.LeastStep, RoundNumbers.Step(range, MostContourSteps));
        List<PlacedContour> placed = [];
        foreach (double level in RoundNumbers.Multiples(values.Min(), values.Max(), _levelStep))
        {
            string text = $"{RoundNumbers.Text(level, _levelStep)} {_scene.Scale.UnitSymbol}";
            float size = 0.85f * _em;
            SKSize plate = new(PictureFonts.WidthPx(text, size, false) + (0.7f * _em), 1.25f * _em);
            foreach (PlacedContour contour in ContourLines.Of(levels, level, transform)
                .Select(line => placement.Place(level, line, plate)).OfType<PlacedContour>())
            {
                placed.Add(contour);
                foreach (SKRect label in contour.Labels)
                {
                    PlaceText(text, label.Left + (0.35f * _em), label.MidY + CapMiddle(size), size, false, Ink.Main);
                }
            }
        }

        _hasContours = placed.Count > 0;
        return placed;

        bool IsFree(SKRect box)
        {
            SKRect air = SKRect.Inflate(box, 0.3f * _em, 0.3f * _em);
            return view.Contains(air)
                && (_scene.Outline.Count == 0 || Corners(air).All(corner => board.Contains(corner.X, corner.Y)))
                && !marks.Any(mark => mark.IntersectsWith(air))
                && callOuts.All(callOut => !callOut.Covers(air));
        }
    }

    private static IEnumerable<SKPoint> Corners(SKRect box) =>
        [new(box.Left, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom), new(box.Left, box.Bottom)];

    /// <summary>The extent with some air around it, where it reaches beyond the ring.</summary>
    private SKRect? ExtentOf(CallOut callOut, float ring, ViewTransform transform)
    {
        if (callOut.ExtentNm is not { } extent)
        {
            return null;
        }

        SKRect box = SKRect.Inflate(BoxOf(extent, transform), 0.6f * _em, 0.6f * _em);
        return Math.Max(box.Width, box.Height) > 2 * ring ? box : null;
    }

    private float PlaceLegends(float left, float top, float width, ViewTransform transform)
    {
        List<Func<float, float, float, float>> cells = [PlaceFieldLegend];
        List<float> shares = [5];
        if (_scene.Vias.Count > 0)
        {
            cells.Add(PlaceViaLegend);
            shares.Add(3);
        }

        cells.Add((x, y, w) => PlaceLengthBarAndKeys(x, y, w, transform));
        shares.Add(3);
        if (_scene.WholeNm is { } whole)
        {
            cells.Add((x, y, w) => PlaceKeyMap(x, y, w, whole));
            shares.Add(2);
        }

        bool isOneRow = width > WideFromEms * _em;
        float gap = 3 * _em;
        float bottom = top;
        float x = left;
        float y = top;
        for (int i = 0; i < cells.Count; i++)
        {
            float cellWidth = isOneRow ? (width - (gap * (cells.Count - 1))) * shares[i] / shares.Sum() : width;
            float cellBottom = cells[i](x, y, cellWidth);
            bottom = Math.Max(bottom, cellBottom);
            if (isOneRow)
            {
                x += cellWidth + gap;
            }
            else
            {
                y = cellBottom + (1.1f * _em);
            }
        }

        return bottom;
    }

    private float PlaceFieldLegend(float left, float top, float width)
    {
        ScaleSpec spec = _scene.Scale;
        if (!_field.HasValues)
        {
            return PlaceLines(
                $"{spec.QuantityName}: nothing on this layer has a value", left, top, width, _em, true, Ink.Main);
        }

        string least = _field.Least < _field.Scale.Bottom ? "" : $"least {RoundNumbers.ThreeDigits(_field.Least)}, ";
        string remark = $"{least}most {RoundNumbers.ThreeDigits(_field.Most)} {spec.UnitSymbol}";
        if (_field.ShareAbove > 0)
        {
            remark += $"; above the scale: {PercentOf(_field.ShareAbove)} of the shaded copper";
        }
        else if (RunsOver(_field.Most, _field.Scale))
        {
            remark += "; above the scale: specks at corners";
        }

        if (_field.ShareBelow > 0)
        {
            string copper = _field.ShareAbove > 0 ? "" : " of the shaded copper";
            remark += $"; below: {PercentOf(_field.ShareBelow)}{copper}";
        }

        if (_hasContours)
        {
            remark += $"; lines every {RoundNumbers.Plain(_levelStep)} {spec.UnitSymbol} across the layer, where their values fit";
        }

        (_fieldLegend, float bottom) = PlaceLegendBar(
            $"{spec.QuantityName}, {spec.UnitSymbol}", remark, _field.Scale, _field.Most, isWedge: false, left, top, width);
        return bottom;
    }

    /// <summary>Whether a value lies above a scale by more than rounding.</summary>
    private static bool RunsOver(double value, ValueScale scale) => value > scale.Top * (1 + 1e-9);

    private float PlaceViaLegend(float left, float top, float width)
    {
        string remark = $"{Counted.Of(_scene.Vias.Count, "plated hole")}, most {RoundNumbers.ThreeDigits(_field.MostViaA)} A; the larger the dot, the larger the current";
        (_viaLegend, float bottom) = PlaceLegendBar(
            "Current in each plated hole, A", remark, _field.ViaScale, _field.MostViaA, isWedge: true, left, top, width);
        return bottom;
    }

    private (LegendBar Legend, float Bottom) PlaceLegendBar(
        string heading, string remark, ValueScale scale, double most, bool isWedge, float left, float top, float width)
    {
        float y = PlaceLines(heading, left, top, width, _em, true, Ink.Main) + (0.45f * _em);
        bool runsOver = RunsOver(most, scale);
        float over = 1.1f * _em;
        SKRect bar = SKRect.Create(left, y, width - over, 1.1f * _em);
        float size = 0.9f * _em;
        float baseline = bar.Bottom + (0.45f * _em) + Ascent(size);
        List<float> ticks = [];
        float free = float.NegativeInfinity;
        foreach (ScaleTick tick in scale.Ticks)
        {
            float x = bar.Left + (bar.Width * (float)scale.PlaceOf(tick.Value));
            ticks.Add(x);
            float labelWidth = PictureFonts.WidthPx(tick.Label, size, false);
            float labelLeft = Math.Clamp(x - (labelWidth / 2), left, Math.Max(left, left + width - labelWidth));
            if (labelLeft >= free)
            {
                PlaceText(tick.Label, labelLeft, baseline, size, false, Ink.Main);
                free = labelLeft + labelWidth + (0.6f * _em);
            }
        }

        float peak = bar.Left + (bar.Width * (float)scale.PlaceOf(most));
        y = baseline + Descent(size) + (0.3f * _em);
        y = PlaceLines(remark, left, y, width, size, false, Ink.Muted);
        return (new LegendBar(bar, scale, ticks, peak, runsOver, isWedge), y);
    }

    private float PlaceLengthBarAndKeys(float left, float top, float width, ViewTransform transform)
    {
        double pixelsPerMm = transform.PixelsPerNm * Units.NmPerMm;
        double lengthMm = RoundNumbers.AtMost(Math.Min(0.75 * width, 18 * _em) / pixelsPerMm);
        float y = PlaceLines($"Length, {RoundNumbers.Plain(lengthMm)} mm", left, top, width, _em, true, Ink.Main) + (0.45f * _em);
        _lengthBar = new(SKRect.Create(left, y, (float)(lengthMm * pixelsPerMm), 0.5f * _em), lengthMm);
        y += 1.2f * _em;

        List<(KeyKind Kind, string Text)> keys = [];
        if (_scene.QuietCopper.Count > 0)
        {
            keys.Add((KeyKind.OtherCopper, "other copper"));
        }

        if (_field.HasUnsolvedCopper)
        {
            keys.Add((KeyKind.UnsolvedCopper, "reviewed copper without a shade: contacts, pads without current"));
        }

        if (_scene.Vias.Count > 0)
        {
            keys.Add((KeyKind.Via, "plated hole"));
        }

        if (_scene.Vias.Any(v => v.IsOverLimit))
        {
            keys.Add((KeyKind.ViaOverLimit, "plated hole over its limit"));
        }

        y = PlaceFlow(keys, left, y, width);
        return _scene.SeenFromBelow
            ? PlaceLines("Seen from below: left and right are swapped", left, y, width, 0.9f * _em, true, Ink.Main)
            : y;
    }

    private float PlaceKeyMap(float left, float top, float width, Geometry.BoxNm whole)
    {
        float y = PlaceLines("Part of the board shown", left, top, width, _em, true, Ink.Main) + (0.45f * _em);
        double pixelsPerNm = Math.Min(Math.Min(width, WidestKeyMapEms * _em) / whole.WidthNm, TallestKeyMapEms * _em / whole.HeightNm);
        SKRect box = SKRect.Create(left, y, (float)(whole.WidthNm * pixelsPerNm), (float)(whole.HeightNm * pixelsPerNm));
        ViewTransform transform = new(whole, box.Left, box.Top, pixelsPerNm, _scene.SeenFromBelow);
        _keyMap = new KeyMap(box, transform, BoxOf(_scene.ViewNm, transform));
        return box.Bottom;
    }

    private static SKRect BoxOf(Geometry.BoxNm box, ViewTransform transform)
    {
        SKPoint a = transform.Map(new Geometry.PointNm(box.MinX, box.MinY));
        SKPoint b = transform.Map(new Geometry.PointNm(box.MaxX, box.MaxY));
        return new SKRect(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y));
    }

    private float PlaceFlow(List<(KeyKind Kind, string Text)> keys, float left, float top, float width)
    {
        float size = 0.9f * _em;
        float box = 1.1f * _em;
        float x = left;
        float y = top;
        foreach ((KeyKind kind, string text) in keys)
        {
            float indent = box + (0.5f * _em);
            IReadOnlyList<string> lines = PictureFonts.Wrap(text, size, false, width - indent);
            float needed = indent + lines.Max(line => PictureFonts.WidthPx(line, size, false));
            if (x > left && x + needed > left + width)
            {
                x = left;
                y += 1.5f * _em;
            }

            _keys.Add(new(SKRect.Create(x, y, box, box), kind));
            float baseline = y + (box / 2) + CapMiddle(size);
            foreach (string line in lines)
            {
                PlaceText(line, x + indent, baseline, size, false, Ink.Main);
                baseline += 1.3f * size;
            }

            y += 1.3f * size * (lines.Count - 1);
            x += needed + (1.4f * _em);
        }

        return keys.Count == 0 ? top : y + (1.4f * _em);
    }

    private float PlaceList(float left, float top, float width, IReadOnlyList<PlacedCallOut> placed)
    {
        if (_scene.CallOuts.Count == 0)
        {
            string elsewhere = _scene.Vias.Any(via => via.IsOverLimit)
                ? " Holes over their limit are called out on the upper of the two layers between which they are." : "";
            return PlaceLines("No finding lies on this layer." + elsewhere, left, top, width, 0.9f * _em, false, Ink.Muted);
        }

        _rules.Add(SKRect.Create(left, top, width, Math.Max(1, _em / 16)));
        float y = PlaceListHeading(left, top + (0.9f * _em), width);
        HashSet<int> withoutPlate = [.. placed.Where(p => p.Plate is null).Select(p => p.CallOut.Number)];
        List<ListRow> rows = [];
        float columnGap = 2.5f * _em;
        int columns = Math.Clamp((int)((width + columnGap) / (28 * _em)), 1, 3);
        columns = Math.Min(columns, _scene.CallOuts.Count);
        float columnWidth = (width - (columnGap * (columns - 1))) / columns;
        float textWidth = columnWidth - Plate.Width - (0.8f * _em);
        foreach (CallOut callOut in _scene.CallOuts.OrderBy(c => c.Number))
        {
            bool isInside = _scene.ViewNm.Contains(callOut.SpotNm);
            string where = $"x {Millimetres(callOut.SpotNm.X)}  y {Millimetres(callOut.SpotNm.Y)} mm"
                + (!isInside ? ", outside this view" : withoutPlate.Contains(callOut.Number) ? ", ring only: no room for its number" : "");
            rows.Add(new(
                callOut,
                PictureFonts.Wrap(callOut.Text, _em, false, textWidth),
                PictureFonts.Wrap(where, 0.85f * _em, false, textWidth)));
        }

        float[] heights = [.. rows.Select(RowHeight)];
        float shareOfColumn = Math.Max(heights.Max(), heights.Sum() / columns);
        float bottom = y;
        float columnTop = y;
        int column = 0;
        float done = 0;
        for (int i = 0; i < rows.Count; i++)
        {
            // A row goes to the column in which its middle falls.
            int wanted = Math.Min(columns - 1, (int)((done + (heights[i] / 2)) / shareOfColumn));
            if (wanted > column)
            {
                column = wanted;
                y = columnTop;
            }

            PlaceRow(rows[i], left + (column * (columnWidth + columnGap)), y);
            y += heights[i];
            done += heights[i];
            bottom = Math.Max(bottom, y);
        }

        return bottom;
    }

    private float PlaceListHeading(float left, float top, float width)
    {
        const string Heading = "Call-outs";
        float y = PlaceLines(Heading, left, top, width, 1.1f * _em, true, Ink.Main);
        float x = left + PictureFonts.WidthPx(Heading, 1.1f * _em, true) + (2 * _em);
        float middle = (top + y) / 2;
        float size = 0.9f * _em;
        foreach ((CallOutRank rank, string word) in new[]
        {
            (CallOutRank.Fail, "over a limit"), (CallOutRank.Caution, "remark"), (CallOutRank.Note, "note"),
        })
        {
            int count = _scene.CallOuts.Count(c => c.Rank == rank);
            if (count == 0)
            {
                continue;
            }

            string text = $"{count} {word}{(count == 1 || rank == CallOutRank.Fail ? "" : "s")}";
            float box = 1.1f * _em;
            float needed = box + (0.5f * _em) + PictureFonts.WidthPx(text, size, false);
            if (x + needed > left + width)
            {
                x = left;
                middle += 1.5f * _em;
                y += 1.5f * _em;
            }

            _listedPlates.Add(new(SKRect.Create(x, middle - (box / 2), box, box), null, rank));
            PlaceText(text, x + box + (0.5f * _em), middle + CapMiddle(size), size, false, Ink.Muted);
            x += needed + (1.4f * _em);
        }

        return y + (0.7f * _em);
    }

    private float RowHeight(ListRow row)
    {
        float lines = (row.Text.Count * 1.3f * _em) + (row.Where.Count * 1.15f * _em);
        return Math.Max(Plate.Height, lines) + (0.75f * _em);
    }

    private void PlaceRow(ListRow row, float left, float top)
    {
        NumberPlate plate = new(SKRect.Create(left, top, Plate.Width, Plate.Height), row.CallOut.Number, row.CallOut.Rank);
        _listedPlates.Add(plate);
        PlaceNumber(plate, row.CallOut.Number);
        float x = left + Plate.Width + (0.8f * _em);
        float baseline = top + (Plate.Height / 2) + CapMiddle(_em);
        foreach (string line in row.Text)
        {
            PlaceText(line, x, baseline, _em, false, Ink.Main);
            baseline += 1.3f * _em;
        }

        baseline -= 0.05f * _em;
        foreach (string line in row.Where)
        {
            PlaceText(line, x, baseline, 0.85f * _em, false, Ink.Muted);
            baseline += 1.15f * _em;
        }
    }

    private float PlaceFooter(float left, float top, float width)
    {
        _rules.Add(SKRect.Create(left, top, width, Math.Max(1, _em / 16)));
        string hash = _scene.Title.InputHash.Length == 0 ? "" : $"inputs {_scene.Title.InputHash}";
        return PlaceLines(
            Joined(" \u00B7 ", _scene.Title.ToolVersion, hash), left, top + (0.6f * _em), width, 0.85f * _em, false, Ink.Muted);
    }

    private void PlaceNumber(NumberPlate plate, int number)
    {
        string digits = RoundNumbers.Text(number, 1);
        float size = 0.95f * _em;
        float x = plate.Box.MidX - (PictureFonts.WidthPx(digits, size, true) / 2);
        Ink ink = plate.Rank == CallOutRank.Fail ? Ink.OnAccent : Ink.Main;
        PlaceText(digits, x, plate.Box.MidY + CapMiddle(size), size, true, ink);
    }

    private float PlaceLines(string text, float left, float top, float width, float size, bool isStrong, Ink ink)
    {
        float y = top;
        foreach (string line in PictureFonts.Wrap(text, size, isStrong, width))
        {
            PlaceText(line, left, y + Ascent(size), size, isStrong, ink);
            y += 1.3f * size;
        }

        return y;
    }

    private void PlaceText(string text, float x, float baseline, float size, bool isStrong, Ink ink)
    {
        SKRect bounds = SKRect.Create(
            x, baseline - Ascent(size), PictureFonts.WidthPx(text, size, isStrong), Ascent(size) + Descent(size));
        _texts.Add(new(text, new SKPoint(x, baseline), size, isStrong, ink, bounds));
    }

    private static float Ascent(float size) => -PictureFonts.Of(size, false).Metrics.Ascent;

    private static float Descent(float size) => PictureFonts.Of(size, false).Metrics.Descent;

    private static float CapMiddle(float size) => PictureFonts.Of(size, false).Metrics.CapHeight / 2;

    private static string Joined(string separator, params string[] parts) =>
        string.Join(separator, parts.Where(p => p.Length > 0));

    private static string PercentOf(double share) =>
        share < 1e-4 ? "less than 0.01 %" : $"{RoundNumbers.Text(100 * share, share < 0.0995 ? 0.01 : 0.1)} %";

    private static string Millimetres(long nm) => RoundNumbers.Text((double)nm / Units.NmPerMm, 0.01);

    private sealed record ListRow(CallOut CallOut, IReadOnlyList<string> Text, IReadOnlyList<string> Where);
}
