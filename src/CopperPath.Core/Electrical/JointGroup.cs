using System.Runtime.InteropServices;
using CopperPath.Polygons;

namespace CopperPath.Electrical;

/// <summary>Lines of one potential, over all layers and holes, that lie close enough to warm each other.</summary>
/// <param name="Lines">The lines, those that carry next to nothing left out.</param>
/// <param name="CurrentA">Their current, amperes, positive.</param>
/// <param name="SectionM2">Their conducting section, square metres.</param>
/// <param name="Squares">Squares they pass, each once.</param>
internal sealed record JointGroup(
    IReadOnlyList<LevelLine> Lines, double CurrentA, double SectionM2, IReadOnlyList<(int Column, int Row)> Squares)
{
    /// <summary>Copper with less than this share of the mean density of its group carries nothing together with it.</summary>
    private const double IdleShare = 0.1;

    /// <param name="lines">All lines of one potential.</param>
    public static IReadOnlyList<JointGroup> Of(IReadOnlyList<LevelLine> lines)
    {
        DisjointSets sets = new(lines.Count);
        Dictionary<(int, int), int> firstIn = [];
        for (int i = 0; i < lines.Count; i++)
        {
            foreach ((int column, int row) in lines[i].Squares)
            {
                firstIn.TryAdd((column, row), i);
                for (int k = 0; k < 9; k++)
                {
                    if (firstIn.TryGetValue((column + (k % 3) - 1, row + (k / 3) - 1), out int other))
                    {
                        sets.Join(i, other);
                    }
                }
            }
        }

        Dictionary<int, List<LevelLine>> groups = [];
        for (int i = 0; i < lines.Count; i++)
        {
            ref List<LevelLine>? group = ref CollectionsMarshal.GetValueRefOrAddDefault(groups, sets.Find(i), out _);
            (group ??= []).Add(lines[i]);
        }

        return [.. groups.Values.Select(OfLines)];
    }

    /// <summary>What its widest layer has of it, or all its holes together, metres.</summary>
    public double WidthM => Lines.GroupBy(line => line.Layer).Max(layer => layer.Sum(line => line.WidthM));

    /// <summary>Whether some of it lies in a square of a set.</summary>
    public bool LiesIn(HashSet<(int Column, int Row)> squares)
    {
        foreach ((int Column, int Row) square in Squares)
        {
            if (squares.Contains(square))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Adds its squares and those around them to a set: what lies in them touches it.</summary>
    public void AddReachTo(HashSet<(int Column, int Row)> squares)
    {
        foreach ((int column, int row) in Squares)
        {
            for (int k = 0; k < 9; k++)
            {
                squares.Add((column + (k % 3) - 1, row + (k / 3) - 1));
            }
        }
    }

    /// <summary>
    /// Whether it is more than one open line, which the cuts of a layer find better, and has most of its current in layers: a
    /// hole is no long conductor, and is judged by itself.
    /// </summary>
    public bool IsJoint => CurrentA > 0 && (Lines.Count > 1 || Lines[0].IsClosed)
        && Lines.Where(line => line.Hole is null).Sum(line => line.CurrentA) > CurrentA / 2;

    /// <summary>The group as a section.</summary>
    public JointSection ToSection(double levelV)
    {
        LevelLine densest = Lines.Where(line => line.Hole is null).MaxBy(line => line.PeakAPerM2) ?? Lines[0];
        return new JointSection(
            levelV,
            [.. Lines.Where(line => line.Hole is null).GroupBy(line => line.Layer).OrderBy(layer => layer.Key).Select(layer => new JointLayer(
                layer.Key, layer.Sum(line => line.WidthM), layer.Sum(line => line.ConductingM) / layer.Sum(line => line.WidthM),
                layer.Sum(line => line.CurrentA), layer.Count()))],
            [.. Lines.Where(line => line.Hole is not null).Select(line => line.Hole!)],
            densest.Layer, densest.PeakXM, densest.PeakYM,
            Lines.Min(line => line.LeftM), Lines.Min(line => line.BottomM), Lines.Max(line => line.RightM), Lines.Max(line => line.TopM),
            Lines.Any(line => line.IsClosed && line.Hole is null));
    }

    /// <summary>All of the lines, close together or not, idle or not.</summary>
    public static JointGroup Together(IReadOnlyList<LevelLine> lines) =>
        new(lines, lines.Sum(line => line.CurrentA), lines.Sum(line => line.SectionM2), [.. lines.SelectMany(line => line.Squares).Distinct()]);

    private static JointGroup OfLines(List<LevelLine> lines)
    {
        double meanAPerM2 = lines.Sum(line => line.CurrentA) / lines.Sum(line => line.SectionM2);
        LevelLine[] busy = [.. lines.Where(line => line.CurrentA >= IdleShare * meanAPerM2 * line.SectionM2)];
        LevelLine[] counted = busy.Length > 0 ? busy : [.. lines];
        return Together(counted);
    }
}
