namespace CopperPath.Electrical;

/// <summary>
/// A neck around its worst joint section: the sections before and behind it that are not much larger. A wider place no longer
/// than the neck is wide, such as the copper between two rows of clearances, does not end it.
/// </summary>
/// <param name="LengthM">How far it reaches along the current, metres.</param>
/// <param name="Reach">Squares it passes and those around them.</param>
internal sealed record JointNeck(double LengthM, HashSet<(int Column, int Row)> Reach)
{
    /// <param name="levelsV">Potentials, rising.</param>
    /// <param name="groups">Groups at each.</param>
    /// <param name="level">Level of the worst section.</param>
    /// <param name="worst">The worst section.</param>
    /// <param name="resistivityOhmM">Of the copper.</param>
    public static JointNeck Along(double[] levelsV, IReadOnlyList<JointGroup>[] groups, int level, JointGroup worst, double resistivityOhmM)
    {
        HashSet<(int, int)> reach = [], ofLast = [];
        worst.AddReachTo(reach);
        double lengthM = 0, widestM2 = NeckLength.WidestRatio * worst.SectionM2;
        foreach (int step in (ReadOnlySpan<int>)[-1, 1])
        {
            JointGroup last = worst;
            double widerM = 0;
            for (int next = level + step; next >= 0 && next < levelsV.Length && widerM <= worst.WidthM; next += step)
            {
                ofLast.Clear();
                last.AddReachTo(ofLast);
                if (groups[next].Where(group =>
                        Math.Abs(group.CurrentA - worst.CurrentA) <= NeckLength.SameCurrentShare * worst.CurrentA && group.LiesIn(ofLast))
                    .MinBy(group => Math.Abs(group.CurrentA - worst.CurrentA)) is not { } group)
                {
                    break;
                }

                // The field of a uniform current is resistivity times current over section: a step of potential is a step of length.
                double stepM = Math.Abs(levelsV[next] - levelsV[next - step]) * (last.SectionM2 + group.SectionM2) / 2 / (resistivityOhmM * worst.CurrentA);
                double narrowM = stepM * NarrowShare(last.SectionM2, group.SectionM2, widestM2);
                if (group.SectionM2 <= widestM2)
                {
                    lengthM += widerM + stepM;
                    widerM = 0;
                    group.AddReachTo(reach);
                }
                else
                {
                    lengthM += widerM == 0 ? narrowM : 0;
                    widerM += stepM - (widerM == 0 ? narrowM : 0);
                }

                last = group;
            }
        }

        return new JointNeck(lengthM, reach);
    }

    /// <summary>How much of a step from one section to a wider one is not yet too wide.</summary>
    private static double NarrowShare(double fromM2, double toM2, double widestM2) =>
        toM2 <= widestM2 ? 1 : fromM2 >= widestM2 ? 0 : (widestM2 - fromM2) / (toM2 - fromM2);
}
