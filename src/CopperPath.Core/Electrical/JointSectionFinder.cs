using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Electrical;

/// <summary>The joint sections of a stretch.</summary>
/// <param name="Least">
/// The least section that all of its current passes, over every layer and hole, close together or not; null where no potential
/// parts all that feeds the stretch from all that takes from it.
/// </param>
/// <param name="Necks">One section for each neck of copper that carries a current together, worst first.</param>
public sealed record JointSections(JointSection? Least, IReadOnlyList<JointSection> Necks)
{
    public static JointSections None { get; } = new(null, []);
}

/// <summary>
/// Searches a solved stretch for the least cuts through all copper that carries its current together: webs between clearances,
/// hatches, layers in parallel, the ring round a small contact. Each cut follows one potential through every layer and hole. A
/// current crosses such a line squarely and nowhere runs along it: it is what a straight cut across one trace is there.
/// <para>
/// Least cuts along the edges of the mesh (greatest flow) were not taken: edges zigzag, which lengthens a slanting cut by
/// up to a third, and such a cut would join necks of different branches that lie far apart.
/// </para>
/// </summary>
public static class JointSectionFinder
{
    /// <summary>Necks kept of a stretch.</summary>
    private const int MostNecks = 24;

    /// <summary>All of the current, but for rounding and what is off in the currents of single holes.</summary>
    private const double AllOfIt = 1e-3;

    /// <param name="result">A solved stretch.</param>
    /// <param name="net">Its copper.</param>
    /// <param name="stack">Thicknesses.</param>
    /// <param name="sections">Cuts of its single layers.</param>
    /// <param name="severity">What makes one cut worse than another; positive, larger is worse.</param>
    public static JointSections Find(
        ConductionResult result, Net net, Stackup stack, IReadOnlyList<Section> sections, Func<JointSection, double> severity)
    {
        EquipotentialRims rims = EquipotentialRims.Of(result, net);
        double[] levelsV = LevelChoice.Of(result, rims, sections);
        if (levelsV.Length == 0)
        {
            return JointSections.None;
        }

        List<LevelLine>[] lines = LinesAt(levelsV, result, rims, stack);
        IReadOnlyList<JointGroup>[] groups = new IReadOnlyList<JointGroup>[levelsV.Length];
        Parallel.For(0, groups.Length, level => groups[level] = JointGroup.Of(lines[level]));
        return new JointSections(LeastOf(result, levelsV, lines), NecksOf(stack, levelsV, groups, severity));
    }

    private static List<JointSection> NecksOf(
        Stackup stack, double[] levelsV, IReadOnlyList<JointGroup>[] groups, Func<JointSection, double> severity)
    {
        List<(int Level, JointGroup Group, JointSection Section, double Severity)> waiting = [];
        for (int level = 0; level < levelsV.Length; level++)
        {
            foreach (JointGroup group in groups[level].Where(group => group.IsJoint))
            {
                JointSection section = group.ToSection(levelsV[level]);
                waiting.Add((level, group, section, severity(section)));
            }
        }

        waiting = [.. waiting.OrderByDescending(each => each.Severity)];
        List<JointSection> necks = [];
        while (waiting.Count > 0 && necks.Count < MostNecks)
        {
            (int level, JointGroup worst, JointSection section, _) = waiting[0];
            JointNeck neck = JointNeck.Along(levelsV, groups, level, worst, stack.ResistivityOhmM);
            necks.Add(section with { LengthM = neck.LengthM });
            waiting.RemoveAll(each => each.Group.LiesIn(neck.Reach));
        }

        return necks;
    }

    private static JointSection? LeastOf(ConductionResult result, double[] levelsV, List<LevelLine>[] lines)
    {
        double enteringA = result.Terminals.Where(terminal => terminal.Terminal.CurrentA > 0).Sum(terminal => terminal.Terminal.CurrentA);
        int[] whole = [.. Enumerable.Range(0, levelsV.Length)
            .Where(level => Math.Abs(lines[level].Sum(line => line.CurrentA) - enteringA) < AllOfIt * enteringA)];
        int least = whole.Length == 0 ? -1 : whole.MinBy(level => lines[level].Sum(line => line.SectionM2));
        return least < 0 ? null : JointGroup.Together(lines[least]).ToSection(levelsV[least]);
    }

    private static List<LevelLine>[] LinesAt(double[] levelsV, ConductionResult result, EquipotentialRims rims, Stackup stack)
    {
        List<LevelLine>[][] bySheet = new List<LevelLine>[result.Sheets.Count][];
        Parallel.For(0, bySheet.Length, s =>
            bySheet[s] = SheetLevels.Of(result.Sheets[s], stack.ThicknessM[result.Sheets[s].Layer - 1], levelsV));
        List<LevelLine>[] lines = [.. levelsV.Select((_, level) => bySheet.SelectMany(sheet => sheet[level]).ToList())];
        foreach (BarrelCurrent hole in result.Barrels)
        {
            if (rims.PotentialV(hole.Barrel, hole.UpperLayer) is not { } upperV || rims.PotentialV(hole.Barrel, hole.LowerLayer) is not { } lowerV)
            {
                continue;
            }

            // The same rule as for triangles: an end at the potential itself counts as above it.
            double least = Math.Min(upperV, lowerV), most = Math.Max(upperV, lowerV);
            LevelLine? line = null;
            int found = Array.BinarySearch(levelsV, least);
            for (int level = found < 0 ? ~found : found + 1; level < levelsV.Length && levelsV[level] <= most; level++)
            {
                lines[level].Add(line ??= OfHole(hole, stack));
            }
        }

        return lines;
    }

    private static LevelLine OfHole(BarrelCurrent hole, Stackup stack)
    {
        double xM = Units.MetresFromNm(hole.Barrel.Centre.X), yM = Units.MetresFromNm(hole.Barrel.Centre.Y);
        double widthM = BarrelSection.MeanCircumferenceM(hole.Barrel.Feature, stack);
        double sectionM2 = BarrelSection.AreaM2(hole.Barrel.Feature, stack), currentA = Math.Abs(hole.CurrentA);
        return new LevelLine(
            0, widthM, widthM, currentA, sectionM2, true, currentA / sectionM2, xM, yM, xM, yM, xM, yM, [LevelLine.SquareOf(xM, yM)], hole);
    }
}
