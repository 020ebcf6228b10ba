namespace CopperPath.Electrical;

/// <summary>
/// Climbs from one cut to the worst one nearby by a pattern search over its place and direction (R. Hooke and
/// T. A. Jeeves, J. ACM 8, 1961).
/// </summary>
internal sealed class SectionSearch(SheetField field, Func<Section, double> severity)
{
    private readonly MeshWalker _walker = new(field.Mesh);

    private const double FirstShiftM = 0.2e-3;
    private const double FirstTurnRad = 0.2;

    /// <summary>Steps are halved this often: down to 6 um and a third of a degree.</summary>
    private const int Halvings = 5;

    /// <summary>A search does not leave its start by more than this, metres: the next square has its own.</summary>
    private const double ReachM = SectionFinder.SpacingM;

    /// <summary>The cut square to the current of a triangle.</summary>
    public Section Across(int triangle) => Start(triangle).Section;

    /// <summary>The worst cut near that one.</summary>
    public Section From(int triangle)
    {
        Cut best = Start(triangle);
        (double x, double y) = (best.X, best.Y);
        double shift = FirstShiftM, turn = FirstTurnRad;
        for (int halving = 0; halving < Halvings;)
        {
            Cut better = Neighbours(best, shift, turn)
                .Where(cut => Math.Sqrt(((cut.X - x) * (cut.X - x)) + ((cut.Y - y) * (cut.Y - y))) <= ReachM)
                .Prepend(best).MaxBy(cut => cut.Severity)!;
            if (ReferenceEquals(better, best))
            {
                shift /= 2;
                turn /= 2;
                halving++;
            }

            best = better;
        }

        return best.Section;
    }

    /// <summary>The narrower of two cuts through a point of a triangle: square to the current there, and square to a direction.</summary>
    public Section Narrower(int triangle, double x, double y, double direction)
    {
        Section square = Through(triangle, x, y, Math.Atan2(field.SheetCurrentYAPerM[triangle], field.SheetCurrentXAPerM[triangle])).Section;
        Section given = Through(triangle, x, y, direction).Section;
        return given.WidthM < square.WidthM ? given : square;
    }

    /// <summary>Unit vector along the current of a triangle.</summary>
    public (double X, double Y) DirectionIn(int triangle)
    {
        (double sin, double cos) = Math.SinCos(Math.Atan2(field.SheetCurrentYAPerM[triangle], field.SheetCurrentXAPerM[triangle]));
        return (cos, sin);
    }

    private Cut Start(int triangle)
    {
        (double x, double y) = MeshWalker.Centroid(field.Mesh, triangle);
        return Through(triangle, x, y, Math.Atan2(field.SheetCurrentYAPerM[triangle], field.SheetCurrentXAPerM[triangle]));
    }

    /// <summary>Along the current and back, turned either way, and both at once.</summary>
    private IEnumerable<Cut> Neighbours(Cut cut, double shift, double turn)
    {
        for (int along = -1; along <= 1; along++)
        {
            double x = cut.X + (along * shift * Math.Cos(cut.Direction));
            double y = cut.Y + (along * shift * Math.Sin(cut.Direction));
            int triangle = along == 0 ? cut.Triangle : _walker.Reach(cut.Triangle, cut.X, cut.Y, x, y);
            for (int turned = -1; turned <= 1 && triangle >= 0; turned++)
            {
                if (along != 0 || turned != 0)
                {
                    yield return Through(triangle, x, y, cut.Direction + (turned * turn));
                }
            }
        }
    }

    private Cut Through(int triangle, double x, double y, double direction)
    {
        double alongX = Math.Cos(direction), alongY = Math.Sin(direction);
        double width = 0, conducting = 0, current = 0, peak = 0;

        void Cross(int t, double length)
        {
            if (!field.Mesh.IsHeld(t))
            {
                width += length;
                conducting += length / field.CopperShare(t);
                current += length * ((field.SheetCurrentXAPerM[t] * alongX) + (field.SheetCurrentYAPerM[t] * alongY));
                peak = Math.Max(peak, field.CopperCurrentAPerM(t));
            }
        }

        (double toX, double toY) = _walker.Walk(triangle, x, y, -alongY, alongX, Cross);
        (double fromX, double fromY) = _walker.Walk(triangle, x, y, alongY, -alongX, Cross);
        Section section = new(field.Layer, fromX, fromY, toX, toY, x, y, width, Math.Abs(current), peak)
        {
            ThicknessRatio = width > 0 ? conducting / width : 1,
            Triangle = triangle,
        };
        return new Cut(triangle, x, y, direction, section, severity(section));
    }

    private sealed record Cut(int Triangle, double X, double Y, double Direction, Section Section, double Severity);
}
