using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Report.Html;

/// <summary>A raster as codes of three decimal digits, each row as differences from left to right: low bytes, then high bytes.</summary>
internal static class GridPacking
{
    /// <returns>Where it starts.</returns>
    public static int Add(PackedBytes bytes, FieldRaster raster)
    {
        int start = bytes.Length;
        ushort[] steps = new ushort[raster.Width * raster.Height];
        for (int y = 0; y < raster.Height; y++)
        {
            ushort last = DecimalCode.None;
            for (int x = 0; x < raster.Width; x++)
            {
                ushort code = DecimalCode.Of(raster[x, y]);
                steps[(y * raster.Width) + x] = (ushort)(code - last);
                last = code;
            }
        }

        foreach (ushort step in steps)
        {
            bytes.Add((byte)step);
        }

        foreach (ushort step in steps)
        {
            bytes.Add((byte)(step >> 8));
        }

        return start;
    }
}
