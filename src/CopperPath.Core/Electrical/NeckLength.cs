using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>
/// How long a neck is: how far along the current, both ways, its section stays within <see cref="WidestRatio"/> times the least and
/// carries half of the current or more. A wider place no longer than the neck is wide does not end it. Cuts are made from middle to
/// middle, so that bends are followed.
/// </summary>
public static class NeckLength
{
    /// <summary>Copper this many times wider than the least is the end of a neck.</summary>
    public const double WidestRatio = 1.2;

    /// <summary>A current that differs by no more than this share is the same one: what several layers share may change along a neck.</summary>
    public const double SameCurrentShare = 0.2;

    /// <summary>Along the copper of one layer the current may fall to this share, as where holes and contacts feed it.</summary>
    private const double LeastCurrentShare = 0.5;

    /// <summary>Steps along the current as shares of the width: they grow while the copper goes on, and shrink at its end.</summary>
    private const double FirstStep = 0.25, Growth = 1.5, LargestStep = 2, LeastStep = 1.0 / 256;

    /// <summary>Places looked at behind a wider one, up to a width away.</summary>
    private const int WiderSteps = 4;

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
            Section at = section;
            double reached = 0, step = FirstStep;
            for (int cuts = 0; cuts < MostCuts; cuts++)
            {
                if (step < LeastStep)
                {
                    // The neck goes on behind a wider place that is shorter than it is wide.
                    if (Enumerable.Range(1, WiderSteps).Select(k => (double)k / WiderSteps).FirstOrDefault(share => Next(at, sense * share) is not null) is not (> 0 and var beyond))
                    {
                        break;
                    }

                    step = beyond;
                }

                if (Next(at, sense * step) is not { } onward)
                {
                    step /= 2;
                    continue;
                }

                reached += step * section.WidthM;
                at = onward;
                step = Math.Min(LargestStep, step * Growth);
            }

            return reached;
        }

        // The cut some widths farther along, or null where it is no longer the neck's.
        Section? Next(Section at, double widths)
        {
            (int from, double x, double y) = MiddleOf(at);
            double dx = at.ToXM - at.FromXM, dy = at.ToYM - at.FromYM, across = Math.Sqrt((dx * dx) + (dy * dy));
            double toX = x + (widths * section.WidthM * dy / across), toY = y - (widths * section.WidthM * dx / across);
            int triangle = walker.Reach(from, x, y, toX, toY);
            Section? cut = triangle < 0 || field.Mesh.IsHeld(triangle) ? null : search.Narrower(triangle, toX, toY, Math.Atan2(-dx, dy));
            return cut is not null && cut.WidthM <= WidestRatio * section.WidthM
                && cut.CurrentA >= LeastCurrentShare * section.CurrentA ? OneWay(cut, dx, dy) : null;
        }

        // A cut has no sense of its own: its ends are named as those of the one before.
        static Section OneWay(Section cut, double dx, double dy) =>
            ((cut.ToXM - cut.FromXM) * dx) + ((cut.ToYM - cut.FromYM) * dy) >= 0 ? cut
            : cut with { FromXM = cut.ToXM, FromYM = cut.ToYM, ToXM = cut.FromXM, ToYM = cut.FromYM };

        // Beside a hole the densest point of a cut lies on its rim, from where lines of flow part.
        (int Triangle, double X, double Y) MiddleOf(Section cut)
        {
            double x = (cut.FromXM + cut.ToXM) / 2, y = (cut.FromYM + cut.ToYM) / 2;
            int middle = walker.Reach(cut.Triangle, cut.AtXM, cut.AtYM, x, y);
            return middle < 0 || field.Mesh.IsHeld(middle) ? (cut.Triangle, cut.AtXM, cut.AtYM) : (middle, x, y);
        }
    }
}
