using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>
/// How long a neck is: how far along the current, both ways, its section stays within <see cref="WidestRatio"/> times the least and
/// carries the same current. Cuts are made from middle to middle, so that bends are followed.
/// </summary>
public static class NeckLength
{
    /// <summary>Copper this many times wider than the least is the end of a neck.</summary>
    public const double WidestRatio = 1.2;

    /// <summary>A neck's current may change along it by this share before it is another conductor's.</summary>
    internal const double SameCurrentShare = 0.2;

    /// <summary>Steps along the current as shares of the width: they grow while the copper goes on, and shrink at its end.</summary>
    private const double FirstStep = 0.25, Growth = 1.5, LargestStep = 2, LeastStep = 1.0 / 32;

    /// <summary>Cuts made at most each way: what reaches so far is long by any measure.</summary>
    private const int MostCuts = 120;

    /// <param name="field">The layer of the section.</param>
    /// <param name="section">One that was found on this field.</param>
    /// <returns>Length, metres: at least this where the number of cuts ended it.</returns>
    public static double Of(SheetField field, Section section)
    {
        SectionSearch search = new(field, _ => 0);
        MeshWalker walker = new(field.Mesh);
        return section.Triangle < 0 || !(section.WidthM > 0) ? 0 : Reach(1) + Reach(-1);

        double Reach(int sense)
        {
            (int triangle, double x, double y) = MiddleOf(section);
            double reached = 0, step = FirstStep;
            for (int cut = 0; cut < MostCuts && step >= LeastStep; cut++)
            {
                (double alongX, double alongY) = search.DirectionIn(triangle);
                double stepM = sense * step * section.WidthM;
                int next = walker.Reach(triangle, x, y, x + (stepM * alongX), y + (stepM * alongY));
                Section? onward = next < 0 || field.Mesh.IsHeld(next) ? null : search.SquareAt(next, x + (stepM * alongX), y + (stepM * alongY));
                if (onward is null || onward.WidthM > WidestRatio * section.WidthM
                    || Math.Abs(onward.CurrentA - section.CurrentA) > SameCurrentShare * section.CurrentA)
                {
                    step /= 2;
                    continue;
                }

                reached += Math.Abs(stepM);
                (triangle, x, y) = MiddleOf(onward);
                step = Math.Min(LargestStep, step * Growth);
            }

            return reached;
        }

        // Beside a hole the densest point of a cut lies on its rim, from where lines of flow part.
        (int Triangle, double X, double Y) MiddleOf(Section cut)
        {
            double x = (cut.FromXM + cut.ToXM) / 2, y = (cut.FromYM + cut.ToYM) / 2;
            int middle = walker.Reach(cut.Triangle, cut.AtXM, cut.AtYM, x, y);
            return middle < 0 || field.Mesh.IsHeld(middle) ? (cut.Triangle, cut.AtXM, cut.AtYM) : (middle, x, y);
        }
    }
}
