namespace CopperPath.Electrical;

/// <summary>A neck around its worst joint section: the sections before and behind it that are not much larger.</summary>
/// <param name="LengthM">How far it reaches along the current, metres.</param>
/// <param name="Groups">Its sections.</param>
internal sealed record JointNeck(double LengthM, IReadOnlyList<JointGroup> Groups)
{
    /// <param name="levelsV">Potentials, rising.</param>
    /// <param name="groups">Groups at each.</param>
    /// <param name="level">Level of the worst section.</param>
    /// <param name="worst">The worst section.</param>
    /// <param name="resistivityOhmM">Of the copper.</param>
    public static JointNeck Along(double[] levelsV, IReadOnlyList<JointGroup>[] groups, int level, JointGroup worst, double resistivityOhmM)
    {
        List<JointGroup> neck = [worst];
        double lengthM = 0;
        foreach (int step in (ReadOnlySpan<int>)[-1, 1])
        {
            JointGroup last = worst;
            for (int next = level + step; next >= 0 && next < levelsV.Length; next += step)
            {
                if (groups[next].Where(group => group.Touches(last) && Math.Abs(group.CurrentA - worst.CurrentA) <= NeckLength.SameCurrentShare * worst.CurrentA)
                    .MinBy(group => Math.Abs(group.CurrentA - worst.CurrentA)) is not { } group)
                {
                    break;
                }

                // The field of a uniform current is resistivity times current over section: a step of potential is a step of length.
                double stepV = Math.Abs(levelsV[next] - levelsV[next - step]);
                double widest = NeckLength.WidestRatio * worst.SectionM2;
                double share = group.SectionM2 <= widest ? 1 : (widest - last.SectionM2) / (group.SectionM2 - last.SectionM2);
                double reachedM2 = Math.Min(group.SectionM2, widest);
                lengthM += share * stepV * (last.SectionM2 + reachedM2) / 2 / (resistivityOhmM * worst.CurrentA);
                if (share < 1)
                {
                    break;
                }

                neck.Add(group);
                last = group;
            }
        }

        return new JointNeck(lengthM, neck);
    }

    /// <summary>Whether a group is part of the neck or lies beside its sections.</summary>
    public bool Holds(JointGroup group) => Groups.Any(own => ReferenceEquals(own, group) || own.Touches(group));
}
