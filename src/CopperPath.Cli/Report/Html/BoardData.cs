using System.Globalization;
using System.Text;
using System.Text.Json;
using CopperPath.Cli.Overlays;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Judging;
using CopperPath.Nets;
using CopperPath.OutsideText;

namespace CopperPath.Cli.Report.Html;

/// <summary>What the board view draws and reads values from: a description as JSON, and the bulk of numbers as bytes.</summary>
internal sealed class BoardData
{
    private const int ShadeCount = 256;

    private readonly Review _review;
    private readonly ConductorRating _rating;
    private readonly IReadOnlyList<FieldGrid> _grids;
    private readonly ReviewScales _scales;
    private readonly PackedGrid[] _packed;
    private readonly PackedBytes _bytes = new();
    private readonly PointNm _origin;

    private BoardData(Review review, ConductorRating rating, IReadOnlyList<FieldGrid> grids, ReviewScales scales)
    {
        (_review, _rating, _grids, _scales) = (review, rating, grids, scales);
        _packed = OnAllCores.Of(grids, PackedGrid.Of);
        _origin = new PointNm(review.Board!.Bounds.MinX, review.Board.Bounds.MinY);
    }

    /// <summary>The two parts, ready to be embedded.</summary>
    public static (string Json, string Bytes) Of(
        Review review, ConductorRating rating, IReadOnlyList<FieldGrid> grids, ReviewScales scales)
    {
        BoardData data = new(review, rating, grids, scales);
        string json = data.Json();
        return (json, data._bytes.Deflated());
    }

    private string Json()
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream))
        {
            BoxNm box = _review.Board!.Bounds;
            json.WriteStartObject();
            json.WriteNumber("leftMm", Mm(box.MinX));
            json.WriteNumber("bottomMm", Mm(box.MinY));
            json.WriteNumber("widthMm", Mm(box.WidthNm));
            json.WriteNumber("heightMm", Mm(box.HeightNm));
            json.WriteNumber("outlineUnitMm", Mm(OutlinePacking.UnitNm));
            json.WriteString("shades", Shades());
            json.WriteNumber("profileAt", OutlinePacking.Add(_bytes, _review.Board.Profile, _origin));
            WriteQuantities(json);
            WriteLayers(json);
            WriteStretches(json);
            WriteGrids(json);
            WriteFindings(json);
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private void WriteQuantities(Utf8JsonWriter json)
    {
        json.WriteStartArray("quantities");
        WriteQuantity(json, "density", 1e-6, _scales.Density);
        WriteQuantity(json, "drop", 1e3, stretch => FieldScale.Drop(_grids.Where(grid => stretch is null || grid.Stretch == stretch)));
        if (_grids.Any(grid => grid.RiseK is not null))
        {
            WriteQuantity(json, "rise", 1, _scales.Rise);
        }

        json.WriteEndArray();
    }

    /// <summary>A quantity with a scale for all stretches and one for each alone.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="id">The script's name of it.</param>
    /// <param name="perSi">Shown unit over SI unit.</param>
    /// <param name="scaleOf">Scale of a stretch, or of all for null.</param>
    private void WriteQuantity(Utf8JsonWriter json, string id, double perSi, Func<int?, ScaleSpec> scaleOf)
    {
        ScaleSpec all = scaleOf(null);
        json.WriteStartObject();
        json.WriteString("id", id);
        json.WriteString("name", all.QuantityName);
        json.WriteString("unit", all.UnitSymbol);
        json.WriteNumber("perSi", perSi);
        json.WriteBoolean("isLogarithmic", all.Kind == ScaleKind.Logarithmic);
        json.WriteStartArray("scales");
        WriteScale(json, all);
        for (int n = 0; n < _review.Nets.Count; n++)
        {
            WriteScale(json, scaleOf(n));
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteScale(Utf8JsonWriter json, ScaleSpec spec)
    {
        ValueScale scale = ValueScale.For(spec, []);
        json.WriteStartObject();
        json.WriteNumber("bottom", scale.Bottom);
        json.WriteNumber("top", scale.Top);
        json.WriteStartArray("ticks");
        foreach (ScaleTick tick in scale.Ticks)
        {
            json.WriteStartObject();
            json.WriteNumber("place", Rounded(scale.PlaceOf(tick.Value)));
            json.WriteString("label", tick.Label);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private void WriteLayers(Utf8JsonWriter json)
    {
        NetList board = _review.Board!.Nets!;
        HashSet<Net> reviewed = [.. _review.Nets.Select(net => net.Bound.Net)];
        json.WriteStartArray("layers");
        foreach (Copper.CopperLayer layer in board.Layers)
        {
            json.WriteStartObject();
            json.WriteNumber("number", layer.Number);
            json.WriteNumber("quietAt", OutlinePacking.Add(_bytes, board.Nets.Where(net => !reviewed.Contains(net))
                .SelectMany(net => net.SheetOn(layer.Number)?.Islands ?? []), _origin));
            json.WriteNumber("reviewedAt", OutlinePacking.Add(_bytes, board.Nets.Where(reviewed.Contains)
                .SelectMany(net => net.SheetOn(layer.Number)?.Islands ?? []), _origin));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private void WriteStretches(Utf8JsonWriter json)
    {
        json.WriteStartArray("stretches");
        foreach (SolvedNet net in _review.Nets)
        {
            json.WriteStartObject();
            json.WriteString("name", VisibleText.Of(net.Bound.Review.Name));
            json.WriteStartArray("holes");
            foreach (IGrouping<object, BarrelCurrent> hole in net.Conduction.Barrels
                .GroupBy(barrel => (object)barrel.Barrel, ReferenceEqualityComparer.Instance))
            {
                WriteHole(json, hole);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>x, y and diameter in millimetres, then upper layer, lower layer, amperes and rise of each stretch of the barrel.</summary>
    private void WriteHole(Utf8JsonWriter json, IGrouping<object, BarrelCurrent> hole)
    {
        Barrel barrel = (Barrel)hole.Key;
        json.WriteStartArray();
        json.WriteNumberValue(Mm(barrel.Centre.X));
        json.WriteNumberValue(Mm(barrel.Centre.Y));
        json.WriteNumberValue(Mm(barrel.Feature.ToolDiameterNm));
        foreach (BarrelCurrent current in hole)
        {
            json.WriteNumberValue(current.UpperLayer);
            json.WriteNumberValue(current.LowerLayer);
            json.WriteNumberValue(ThreeDigits(Math.Abs(current.CurrentA)));
            json.WriteNumberValue(Math.Round(_rating.BarrelRiseK(current), 1));
        }

        json.WriteEndArray();
    }

    private void WriteGrids(Utf8JsonWriter json)
    {
        json.WriteStartArray("grids");
        foreach (PackedGrid packed in _packed)
        {
            FieldGrid grid = packed.Grid;
            json.WriteStartObject();
            json.WriteNumber("stretch", grid.Stretch);
            json.WriteNumber("layer", grid.Layer);
            json.WriteNumber("pitchMm", Mm(grid.PitchNm));
            json.WriteNumber("leftMm", Mm(grid.LeftNm));
            json.WriteNumber("topMm", Mm(grid.TopNm));
            json.WriteNumber("columns", grid.Columns);
            json.WriteNumber("rows", grid.Rows);
            json.WriteNumber("density", _bytes.Add(packed.Density));
            json.WriteNumber("drop", _bytes.Add(packed.Drop));
            if (packed.Rise is { } rise)
            {
                json.WriteNumber("rise", _bytes.Add(rise));
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private void WriteFindings(Utf8JsonWriter json)
    {
        json.WriteStartArray("findings");
        foreach (Finding finding in _review.Findings)
        {
            json.WriteStartObject();
            json.WriteNumber("layer", finding.Layer);
            json.WriteNumber("xMm", Rounded(finding.XM * 1e3));
            json.WriteNumber("yMm", Rounded(finding.YM * 1e3));
            if (finding.Extent is { } extent)
            {
                json.WriteStartArray("boxMm");
                foreach (long nm in (long[])[extent.MinX, extent.MinY, extent.MaxX, extent.MaxY])
                {
                    json.WriteNumberValue(Mm(nm));
                }

                json.WriteEndArray();
            }

            json.WriteString("subject", VisibleText.Of(finding.Subject));
            json.WriteString("rule", finding.Rule);
            json.WriteBoolean("isBeyond", FindingMark.IsBeyond(finding));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string Shades()
    {
        StringBuilder text = new(6 * ShadeCount);
        for (int i = 0; i < ShadeCount; i++)
        {
            SkiaSharp.SKColor shade = ColourMap.Viridis.At(i / (ShadeCount - 1.0));
            text.Append(CultureInfo.InvariantCulture, $"{shade.Red:x2}{shade.Green:x2}{shade.Blue:x2}");
        }

        return text.ToString();
    }

    private static double Mm(long nm) => nm / 1e6;

    private static double Rounded(double value) => Math.Round(value, 6);

    private static double ThreeDigits(double value) =>
        double.Parse(value.ToString("E2", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>A grid and the bytes of its fields.</summary>
    private sealed record PackedGrid(FieldGrid Grid, byte[] Density, byte[] Drop, byte[]? Rise)
    {
        public static PackedGrid Of(FieldGrid grid) => new(
            grid, GridPacking.Of(grid.DensityAPerM2), GridPacking.Of(grid.DropV), grid.RiseK is { } rise ? GridPacking.Of(rise) : null);
    }
}
