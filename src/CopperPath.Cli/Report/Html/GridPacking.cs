using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Report.Html;

/// <summary>A raster as codes of three decimal digits, each row as differences from left to right: low bytes, then high bytes.</summary>
internal static class GridPacking
{
    public static byte[] Of(FieldRaster raster)
    {
        int count = raster.Values.Length;
        byte[] packed = new byte[2 * count];
        for (int y = 0; y < raster.Height; y++)
        {
            ReadOnlySpan<float> row = raster.Values.Slice(y * raster.Width, raster.Width);
            float lastValue = float.NaN;
            ushort last = DecimalCode.None;
            for (int x = 0; x < row.Length; x++)
            {
                // Equal neighbours, most of all the absent ones, differ by nothing: their bytes stay zero.
                if (row[x].Equals(lastValue))
                {
                    continue;
                }

                ushort code = DecimalCode.Of(row[x]);
                ushort step = (ushort)(code - last);
                packed[(y * raster.Width) + x] = (byte)step;
                packed[count + (y * raster.Width) + x] = (byte)(step >> 8);
                (lastValue, last) = (row[x], code);
            }
        }

        return packed;
    }
}
