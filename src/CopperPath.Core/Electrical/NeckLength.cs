namespace CopperPath.Electrical;

/// <summary>
/// How long a neck is: how far along the current, both ways, its section stays within <see cref="WidestRatio"/> times the least and
/// carries half of the current or more. A wider place about as long as the neck is wide, such as a corner, does not end it. Cuts are
/// made along a line of flow, so that bends are followed.
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

    /// <summary>The line of flow is followed in chords of this share of the width.</summary>
    private const double LongestChord = 0.25;

    /// <summary>Places looked at behind a wider one, each a chord farther: a right-angled corner is a width long on its middle line.</summary>
    private const int WiderChords = 5;

    private const double NearMiddle = 0.487;

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
                    // The neck may go on behind a wider place.
                    if (Enumerable.Range(1, WiderChords).Select(k => k * LongestChord).FirstOrDefault(share => Next(at, sense * share) is not null) is not (> 0 and var beyond))
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

        // The cut some widths farther along the line of flow, or null where it is no longer the neck's.
        Section? Next(Section at, double widths)
        {
            (int triangle, double x, double y) = MiddleOf(at);
            int chords = (int)Math.Ceiling(Math.Abs(widths) / LongestChord);
            for (int chord = 0; chord < chords; chord++)
            {
                (double alongX, double alongY) = search.DirectionIn(triangle);
                double stepM = widths / chords * section.WidthM;
                double toX = x + (stepM * alongX), toY = y + (stepM * alongY);
                triangle = walker.Reach(triangle, x, y, toX, toY);
                if (triangle < 0 || field.Mesh.IsHeld(triangle))
                {
                    return null;
                }

                (x, y) = (toX, toY);
            }

            Section cut = search.Narrower(triangle, x, y, Math.Atan2(at.FromXM - at.ToXM, at.ToYM - at.FromYM));
            return cut.WidthM <= WidestRatio * section.WidthM && cut.CurrentA >= LeastCurrentShare * section.CurrentA ? cut : null;
        }

        // Beside a hole the densest point of a cut lies on its rim, from where lines of flow part. The very middle of a straight
        // trace may be a row of edges of its mesh, along which no triangle lies ahead.
        (int Triangle, double X, double Y) MiddleOf(Section cut)
        {
            double x = cut.FromXM + (NearMiddle * (cut.ToXM - cut.FromXM)), y = cut.FromYM + (NearMiddle * (cut.ToYM - cut.FromYM));
            int middle = walker.Reach(cut.Triangle, cut.AtXM, cut.AtYM, x, y);
            return middle < 0 || field.Mesh.IsHeld(middle) ? (cut.Triangle, cut.AtXM, cut.AtYM) : (middle, x, y);
        }
    }
}
