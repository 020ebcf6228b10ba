namespace CopperPath.DemoBoards.Kit;

/// <summary>A plain single-line alphabet of capital height 1, each glyph drawn on a grid of 5 columns by 7 rows.</summary>
public static class StrokeFont
{
    private const double GridStep = 1.0 / 6;
    private const double AdvanceColumns = 5.5;

    // A stroke is a run of digit pairs, column (0-4) then row (0-6); strokes are parted by a blank.
    private static readonly Dictionary<char, string> _glyphs = new()
    {
        ['0'] = "103041453616050110",
        ['1'] = "1030 202615",
        ['2'] = "0516364544010040",
        ['3'] = "0516364544334241301001 1333",
        ['4'] = "30360242",
        ['5'] = "460603334241301001",
        ['6'] = "4536160501103041423303",
        ['7'] = "064610",
        ['8'] = "13040516364544331302011030414233",
        ['9'] = "0110304145361605041343",
        ['A'] = "000416364440 0343",
        ['B'] = "00063645443303 3342413000",
        ['C'] = "4536160501103041",
        ['D'] = "00062644422000",
        ['E'] = "40000646 0333",
        ['F'] = "000646 0333",
        ['G'] = "45361605011030414323",
        ['H'] = "0006 4046 0343",
        ['I'] = "1030 1636 2026",
        ['J'] = "0110203136",
        ['K'] = "0006 460340",
        ['L'] = "060040",
        ['M'] = "0006234640",
        ['N'] = "00064046",
        ['O'] = "103041453616050110",
        ['P'] = "00063645443303",
        ['Q'] = "103041453616050110 2240",
        ['R'] = "00063645443303 2340",
        ['S'] = "453616050413334241301001",
        ['T'] = "0646 2026",
        ['U'] = "060110304146",
        ['V'] = "062046",
        ['W'] = "0610243046",
        ['X'] = "0046 0640",
        ['Y'] = "062346 2320",
        ['Z'] = "06460040",
        ['+'] = "0343 2125",
        ['-'] = "0343",
        ['.'] = "2021",
        [' '] = "",
    };

    /// <summary>Width of a line of text in units of its capital height.</summary>
    public static double WidthOf(string text) => ((text.Length * AdvanceColumns) - 1.5) * GridStep;

    /// <summary>The strokes of a line of text, lower left at the origin; a character without a glyph is an error in the board's drawing.</summary>
    public static IEnumerable<IReadOnlyList<PointMm>> StrokesOf(string text)
    {
        for (var position = 0; position < text.Length; position++)
        {
            foreach (var stroke in _glyphs[text[position]].Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                var points = new PointMm[stroke.Length / 2];
                for (var i = 0; i < points.Length; i++)
                {
                    var column = (stroke[2 * i] - '0') + (position * AdvanceColumns);
                    points[i] = new(column * GridStep, (stroke[(2 * i) + 1] - '0') * GridStep);
                }

                yield return points;
            }
        }
    }
}
