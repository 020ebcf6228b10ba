namespace CopperPath.Polygons;

/// <summary>
/// Tells where segments run through a box side by side, however close: where none ends in it and none crosses another,
/// nothing there can be hot. The strokes of a hatched fill do so, and the borders of shapes that lie on each other.
/// </summary>
/// <remarks>
/// Lines that do not cross have one order all along the box. They are sorted where they enter it and looked at again
/// where they leave it, which takes n log n comparisons for n lines.
/// </remarks>
internal sealed class PassingLines(Segment[] segments)
{
    /// <summary>Nearer than this, in nanometres, exact arithmetic decides which of two lines is higher.</summary>
    private const double Doubt = 1e-3;

    private readonly List<Segment> _lines = [];

    /// <summary>Comparisons made so far.</summary>
    public long Work { get; private set; }

    /// <summary>Whether no segment ends in the box and no two cross there; false too where that is not easily told.</summary>
    public bool RunSideBySide(ReadOnlySpan<int> list, PixelBox box)
    {
        bool areFlat = true, areSteep = true, areLevel = true, areUpright = true;
        foreach (int listed in list)
        {
            if (CoverGrid.IsWinding(listed))
            {
                continue;
            }

            ref readonly Segment s = ref segments[listed];
            areFlat &= Math.Abs(s.Dy) <= s.Dx;
            areSteep &= Math.Abs(s.Dy) >= s.Dx;
            areLevel &= s.Dy == 0;
            areUpright &= s.Dx == 0;
            if (!(areFlat || areSteep) || box.Contains(s.Ax, s.Ay) || box.Contains(s.Bx, s.By))
            {
                return false;
            }
        }

        if (areLevel || areUpright)
        {
            return true;
        }

        if (areFlat && areSteep)
        {
            return false;
        }

        _lines.Clear();
        foreach (int listed in list)
        {
            if (!CoverGrid.IsWinding(listed))
            {
                // Steep lines are looked at from the side, where they are flat.
                ref readonly Segment s = ref segments[listed];
                _lines.Add(!areSteep ? s : s.Dy >= 0 ? new(s.Ay, s.Ax, s.By, s.Bx, 0, 1) : new(s.By, s.Bx, s.Ay, s.Ax, 0, 1));
            }
        }

        if (areSteep)
        {
            box = new PixelBox(box.MinY, box.MinX, box.MaxY, box.MaxX);
        }

        return KeepTheirOrder(box.MinX, box.MaxX + 1);
    }

    /// <summary>Whether the lines have one order from the left side of one column to the left side of another.</summary>
    private bool KeepTheirOrder(long from, long to)
    {
        _lines.Sort((s, t) => Compare(s, t, from) is var order && order != 0 ? order : Compare(s, t, to));
        Work += _lines.Count * (long)(2 + System.Numerics.BitOperations.Log2((uint)_lines.Count));
        for (int i = 1; i < _lines.Count; i++)
        {
            int order = Compare(_lines[i - 1], _lines[i], to);

            // Lines that part at the side they enter by meet in a pixel of the box: its left side belongs to it, its right side does not.
            if (order > 0 || (order < 0 && Compare(_lines[i - 1], _lines[i], from) == 0))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Compares the heights of two lines at the left side of a column; exactly.</summary>
    private static int Compare(in Segment s, in Segment t, long column)
    {
        double above = s.Ay - t.Ay + (s.Dy * ((column - 0.5 - s.Ax) / s.Dx)) - (t.Dy * ((column - 0.5 - t.Ax) / t.Dx));
        if (Math.Abs(above) > Doubt)
        {
            return above > 0 ? 1 : -1;
        }

        return Int128.Sign(s.TwiceHeightAbove(t, column));
    }
}
