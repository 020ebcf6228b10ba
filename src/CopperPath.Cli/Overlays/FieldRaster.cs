using System.Numerics;
using System.Runtime.InteropServices;
using CopperPath.Meshing;
using CopperPath.Quantities;
using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// The field sampled at pixel centres. Values are interpolated first and coloured afterwards, so that every pixel has
/// a colour of the map: mixing the corner colours of a large triangle would leave it.
/// </summary>
internal sealed class FieldRaster
{
    private readonly float[] _values;

    private FieldRaster(int width, int height)
    {
        Width = width;
        Height = height;
        _values = new float[width * height];
        Array.Fill(_values, float.NaN);
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>Value at a pixel, NaN where no triangle lies.</summary>
    public float this[int x, int y] => _values[(y * Width) + x];

    /// <summary>All values, row by row.</summary>
    public ReadOnlySpan<float> Values => _values;

    /// <summary>Samples sheets; where several lie, as where two stretches share copper, the largest value counts.</summary>
    /// <param name="sheets">Sheets with finite values where they are to be shaded.</param>
    /// <param name="transform">Board to picture.</param>
    /// <param name="area">Pixels of the picture to sample; pixel (0, 0) of the result is its top left.</param>
    public static FieldRaster Sample(IReadOnlyList<ShadedSheet> sheets, ViewTransform transform, SKRectI area)
    {
        FieldRaster raster = SampleWithinMesh(sheets, transform, area);
        raster.Bleed();
        raster.Bleed();
        return raster;
    }

    /// <summary>The same, but with a value only where a triangle covers the pixel's centre: for reading, not for painting.</summary>
    public static FieldRaster SampleWithinMesh(IReadOnlyList<ShadedSheet> sheets, ViewTransform transform, SKRectI area)
    {
        FieldRaster raster = new(area.Width, area.Height);
        foreach (ShadedSheet sheet in sheets)
        {
            raster.Add(sheet, transform, area);
        }

        return raster;
    }

    /// <summary>Other values in the same pixels: where this raster has none, the result has none.</summary>
    /// <param name="valueAt">Value at a column and row.</param>
    public FieldRaster Revalued(Func<int, int, double> valueAt)
    {
        FieldRaster raster = new(Width, Height);
        for (int y = 0; y < Height; y++)
        {
            for (int x = 0; x < Width; x++)
            {
                if (float.IsFinite(this[x, y]))
                {
                    raster._values[(y * Width) + x] = (float)valueAt(x, y);
                }
            }
        }

        return raster;
    }

    /// <summary>The samples in colour, transparent where there is none; what lies above the scale is hatched.</summary>
    /// <param name="scale">Where each value stands.</param>
    /// <param name="map">The colours.</param>
    /// <param name="stripePx">Width of a stripe of the hatching, at least 1.</param>
    public SKImage Coloured(ValueScale scale, ColourMap map, int stripePx)
    {
        ShadeTable shades = new(scale, map);
        using SKBitmap bitmap = new(new SKImageInfo(Width, Height, SKColorType.Rgba8888, SKAlphaType.Premul));
        Span<uint> pixels = MemoryMarshal.Cast<byte, uint>(bitmap.GetPixelSpan());
        float top = (float)scale.Top;
        for (int i = 0; i < pixels.Length; i++)
        {
            float value = _values[i];
            pixels[i] = float.IsNaN(value) ? 0
                : value > top && IsStripe(i % Width, i / Width, stripePx) ? shades.First
                : shades.Of(value);
        }

        bitmap.SetImmutable();
        return SKImage.FromBitmap(bitmap);
    }

    /// <summary>Whether a pixel lies on a stripe of the hatching that marks what is above a scale: one in three, slanted.</summary>
    internal static bool IsStripe(int x, int y, int stripePx) => (x + y) / stripePx % 3 == 0;

    private void Add(ShadedSheet sheet, ViewTransform transform, SKRectI area)
    {
        SheetMesh mesh = sheet.Mesh;
        double[] x = [.. mesh.XM.Select(m => transform.XPx(Units.NmFromMetres(m)) - area.Left)];
        double[] y = [.. mesh.YM.Select(m => transform.YPx(Units.NmFromMetres(m)) - area.Top)];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            int a = mesh.Triangles[3 * t];
            int b = mesh.Triangles[(3 * t) + 1];
            int c = mesh.Triangles[(3 * t) + 2];
            if (!HoldsACentre(x[a], x[b], x[c], Width) || !HoldsACentre(y[a], y[b], y[c], Height))
            {
                continue;
            }

            Plane plane = sheet.Shading switch
            {
                FieldShading.PerVertex => Through(sheet.Values[a], sheet.Values[b], sheet.Values[c]),
                FieldShading.PerCorner => Through(sheet.Values[3 * t], sheet.Values[(3 * t) + 1], sheet.Values[(3 * t) + 2]),
                _ => new Plane(sheet.Values[t]),
            };
            Plane Through(double atA, double atB, double atC) => Plane.Through(x[a], y[a], atA, x[b], y[b], atB, x[c], y[c], atC);
            if (plane.IsFinite)
            {
                Fill(x[a], y[a], x[b], y[b], x[c], y[c], plane);
            }
        }
    }

    /// <summary>Whether the centre of any column (or row) lies between the least and the largest of three places.</summary>
    private static bool HoldsACentre(double a, double b, double c, int count)
    {
        double least = Math.Clamp(Math.Min(a, Math.Min(b, c)) - 0.5, 0, count);
        double most = Math.Clamp(Math.Max(a, Math.Max(b, c)) - 0.5, 0, count);
        return Math.Ceiling(least) < Math.Ceiling(most);
    }

    // Rows are cut at pixel centres and each edge is always walked from its upper end, so neighbours agree to the bit
    // on the crossing they share: no pixel is missed or painted by both.
    private void Fill(double ax, double ay, double bx, double by, double cx, double cy, Plane plane)
    {
        double top = Math.Min(ay, Math.Min(by, cy));
        double bottom = Math.Max(ay, Math.Max(by, cy));
        int firstRow = (int)Math.Ceiling(Math.Clamp(top - 0.5, 0, Height));
        int endRow = (int)Math.Ceiling(Math.Clamp(bottom - 0.5, 0, Height));
        for (int row = firstRow; row < endRow; row++)
        {
            double yc = row + 0.5;
            double left = double.PositiveInfinity;
            double right = double.NegativeInfinity;
            Cut(ax, ay, bx, by, yc, ref left, ref right);
            Cut(bx, by, cx, cy, yc, ref left, ref right);
            Cut(cx, cy, ax, ay, yc, ref left, ref right);
            if (left > right)
            {
                continue;
            }

            int first = (int)Math.Ceiling(Math.Clamp(left - 0.5, 0, Width));
            int end = (int)Math.Ceiling(Math.Clamp(right - 0.5, 0, Width));
            Span<float> line = _values.AsSpan(row * Width, Width);
            for (int column = first; column < end; column++)
            {
                float value = (float)plane.At(column + 0.5, yc);
                line[column] = line[column] >= value ? line[column] : value;
            }
        }
    }

    private static void Cut(double px, double py, double qx, double qy, double yc, ref double left, ref double right)
    {
        if (py <= yc == qy <= yc)
        {
            return;
        }

        double x = py < qy ? px + ((qx - px) * ((yc - py) / (qy - py))) : qx + ((px - qx) * ((yc - qy) / (py - qy)));
        left = Math.Min(left, x);
        right = Math.Max(right, x);
    }

    // The mesh's chords may fall short of the copper's rounded edge by a pixel or two; the copper's own path trims
    // what spills over.
    private void Bleed()
    {
        float[] before = (float[])_values.Clone();
        for (int y = 0; y < Height; y++)
        {
            int row = y * Width;
            ReadOnlySpan<float> above = before.AsSpan(Math.Max(0, row - Width), Width);
            ReadOnlySpan<float> here = before.AsSpan(row, Width);
            ReadOnlySpan<float> below = before.AsSpan(Math.Min(row + Width, before.Length - Width), Width);
            Span<float> result = _values.AsSpan(row, Width);
            int x = 1;
            for (; x + Vector<float>.Count < Width; x += Vector<float>.Count)
            {
                Vector<float> value = new(here[x..]);
                value = PresentOf(value, new Vector<float>(here[(x - 1)..]));
                value = PresentOf(value, new Vector<float>(here[(x + 1)..]));
                value = PresentOf(value, new Vector<float>(above[x..]));
                PresentOf(value, new Vector<float>(below[x..])).CopyTo(result[x..]);
            }

            BleedInto(result, 0, here, above, below);
            for (; x < Width; x++)
            {
                BleedInto(result, x, here, above, below);
            }
        }
    }

    private static Vector<float> PresentOf(Vector<float> first, Vector<float> second) =>
        Vector.ConditionalSelect(Vector.Equals(first, first), first, second);

    private static void BleedInto(
        Span<float> result, int x, ReadOnlySpan<float> here, ReadOnlySpan<float> above, ReadOnlySpan<float> below)
    {
        float value = PresentOf(here[x], x > 0 ? here[x - 1] : float.NaN);
        value = PresentOf(value, x < here.Length - 1 ? here[x + 1] : float.NaN);
        result[x] = PresentOf(PresentOf(value, above[x]), below[x]);
    }

    private static float PresentOf(float first, float second) => float.IsNaN(first) ? second : first;

    /// <summary>A value over the picture, kept between the least and the most of the corners that define it.</summary>
    private readonly struct Plane
    {
        private readonly double _base;
        private readonly double _slopeX;
        private readonly double _slopeY;
        private readonly double _least;
        private readonly double _most;

        public Plane(double level)
        {
            _base = level;
            _least = level;
            _most = level;
        }

        private Plane(double atOrigin, double slopeX, double slopeY, double least, double most)
        {
            _base = atOrigin;
            _slopeX = slopeX;
            _slopeY = slopeY;
            _least = least;
            _most = most;
        }

        public bool IsFinite => double.IsFinite(_base);

        public static Plane Through(
            double ax, double ay, double av, double bx, double by, double bv, double cx, double cy, double cv)
        {
            double twiceArea = ((bx - ax) * (cy - ay)) - ((cx - ax) * (by - ay));
            if (twiceArea == 0)
            {
                return new Plane((av + bv + cv) / 3);
            }

            double slopeX = (((bv - av) * (cy - ay)) - ((cv - av) * (by - ay))) / twiceArea;
            double slopeY = (((cv - av) * (bx - ax)) - ((bv - av) * (cx - ax))) / twiceArea;
            return new Plane(
                av - (slopeX * ax) - (slopeY * ay),
                slopeX,
                slopeY,
                Math.Min(av, Math.Min(bv, cv)),
                Math.Max(av, Math.Max(bv, cv)));
        }

        public double At(double x, double y) => Math.Clamp(_base + (_slopeX * x) + (_slopeY * y), _least, _most);
    }
}
