namespace CopperPath.Electrical;

/// <summary>What a joint section crosses on one layer.</summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="WidthM">Copper crossed, plated holes of the net and contacts left out, metres.</param>
/// <param name="ThicknessRatio">Conducting thickness over that of the copper alone: above 1 where solder carries a part.</param>
/// <param name="CurrentA">Current through it, amperes.</param>
/// <param name="LineCount">Separate pieces of copper crossed, such as the webs between two rows of clearances.</param>
public sealed record JointLayer(int Layer, double WidthM, double ThicknessRatio, double CurrentA, int LineCount);

/// <summary>
/// A cut along one potential through all copper, over layers and plated holes, that carries a current side by side through one
/// place. No current runs along it, so all that flows on one side of it flows through it.
/// </summary>
/// <param name="PotentialV">The potential, volts, as in <see cref="SheetField.PotentialV"/>.</param>
/// <param name="Layers">What is crossed on each layer, from the top.</param>
/// <param name="Holes">Walls of plated holes crossed between two layers.</param>
/// <param name="AtLayer">Layer of the densest current of the cut; 0 where holes alone are crossed.</param>
/// <param name="AtXM">Its place, metres.</param>
/// <param name="AtYM">Its place, metres.</param>
/// <param name="LeftM">Box round all that is crossed, metres.</param>
/// <param name="BottomM">Box, metres.</param>
/// <param name="RightM">Box, metres.</param>
/// <param name="TopM">Box, metres.</param>
/// <param name="IsClosed">True where some of it closes round a contact or a hole.</param>
public sealed record JointSection(
    double PotentialV,
    IReadOnlyList<JointLayer> Layers,
    IReadOnlyList<BarrelCurrent> Holes,
    int AtLayer,
    double AtXM,
    double AtYM,
    double LeftM,
    double BottomM,
    double RightM,
    double TopM,
    bool IsClosed)
{
    /// <summary>Current through the cut, amperes, positive.</summary>
    public double CurrentA => Layers.Sum(layer => layer.CurrentA) + Holes.Sum(hole => Math.Abs(hole.CurrentA));

    /// <summary>How far along the current it stays within <see cref="NeckLength.WidestRatio"/> times its section, metres.</summary>
    public double LengthM { get; init; }

    /// <summary>The same cut with all currents times a factor.</summary>
    public JointSection Scaled(double factor) => factor == 1 ? this : this with
    {
        Layers = [.. Layers.Select(layer => layer with { CurrentA = layer.CurrentA * factor })],
        Holes = [.. Holes.Select(hole => hole with { CurrentA = hole.CurrentA * factor })],
    };

    /// <summary>Pieces of copper and holes crossed.</summary>
    public int PieceCount => Layers.Sum(layer => layer.LineCount) + Holes.Count;

    /// <summary>Copper crossed, square metres.</summary>
    public double SectionM2(Stackup stack) =>
        Layers.Sum(layer => layer.WidthM * layer.ThicknessRatio * stack.ThicknessM[layer.Layer - 1])
        + Holes.Sum(hole => BarrelSection.AreaM2(hole.Barrel.Feature, stack));
}
