using System.Text.Json;

namespace CopperPath.Cli.Report.Html;

/// <summary>
/// Values of the solved field at a few points of every stretch and layer, for <c>results.json</c>: centres of cells of
/// the report's grids, so that whoever reads both can hold them against each other.
/// </summary>
internal static class FieldProbe
{
    private const int PerGrid = 12;

    public static void Write(Utf8JsonWriter json, Review review, IReadOnlyList<FieldGrid> grids)
    {
        json.WriteStartArray("probes");
        foreach (FieldGrid grid in grids)
        {
            foreach ((int column, int row) in Spread(grid))
            {
                json.WriteStartObject();
                json.WriteString("stretch", review.Nets[grid.Stretch].Bound.Review.Name);
                json.WriteNumber("layer", grid.Layer);
                json.WriteNumber("xM", Math.Round(grid.CentreXM(column), 9));
                json.WriteNumber("yM", Math.Round(grid.CentreYM(row), 9));
                json.WriteNumber("currentDensityAPerM2", grid.DensityAPerM2[column, row]);
                json.WriteNumber("dropV", grid.DropV[column, row]);
                if (grid.RiseK is { } rise && float.IsFinite(rise[column, row]))
                {
                    json.WriteNumber("riseK", rise[column, row]);
                }

                json.WriteEndObject();
            }
        }

        json.WriteEndArray();
    }

    /// <summary>Cells with both values, evenly spread through the order of reading.</summary>
    private static List<(int Column, int Row)> Spread(FieldGrid grid)
    {
        List<(int, int)> cells = [];
        for (int row = 0; row < grid.Rows; row++)
        {
            for (int column = 0; column < grid.Columns; column++)
            {
                if (float.IsFinite(grid.DensityAPerM2[column, row]) && float.IsFinite(grid.DropV[column, row]))
                {
                    cells.Add((column, row));
                }
            }
        }

        int count = Math.Min(PerGrid, cells.Count);
        return [.. Enumerable.Range(0, count).Select(i => cells[(int)((2L * i + 1) * cells.Count / (2 * count))])];
    }
}
