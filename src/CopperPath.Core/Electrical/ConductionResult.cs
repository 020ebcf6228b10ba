using CopperPath.Meshing;
using CopperPath.Nets;

namespace CopperPath.Electrical;

/// <summary>How a conduction solve ended.</summary>
public enum ConductionStatus
{
    Solved,

    /// <summary>The copper between the terminals is not connected; there is no resistance to report.</summary>
    NotConnected,

    /// <summary>A contact lies on no copper of the net.</summary>
    ContactOffCopper,

    /// <summary>Contacts of different terminals touch, so that the current crosses no copper between them.</summary>
    ContactsTouch,

    /// <summary>A layer could not be meshed.</summary>
    MeshFailed,

    /// <summary>The equations could not be solved; a defect, reported as such.</summary>
    SolverFailed,

    /// <summary>The currents given for the terminals do not add up to nothing, or are none: no steady state carries them.</summary>
    CurrentsUnbalanced,

    /// <summary>Solved, and what comes out contradicts what was put in beyond rounding; a defect, reported as such.</summary>
    BooksDoNotBalance,

    /// <summary>Solved, with bounds that hold and are farther apart than was asked for.</summary>
    AccuracyNotReached,
}

/// <summary>Fields on one layer of a net.</summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="Mesh">The triangles.</param>
/// <param name="PotentialV">Potential at each vertex, volts, relative to the reference terminal.</param>
/// <param name="SheetCurrentXAPerM">
/// x component of the sheet current in each triangle, amperes per metre of width. It is balanced: what enters a
/// triangle leaves it, and nothing crosses the edge of the copper.
/// </param>
/// <param name="SheetCurrentYAPerM">y component likewise.</param>
public sealed record SheetField(
    int Layer,
    SheetMesh Mesh,
    double[] PotentialV,
    double[] SheetCurrentXAPerM,
    double[] SheetCurrentYAPerM)
{
    /// <summary>Share of the current under solder that runs in the copper; 1 where there is no solder.</summary>
    public double CopperShareUnderSolder { get; init; } = 1;

    /// <summary>
    /// Magnitude of the sheet current at each corner of each triangle, solder included, amperes per metre of width: for
    /// looking at and reading off, closer to the truth than the uniform balanced current; 0 in contacts and barrels.
    /// </summary>
    public double[] CornerCurrentAPerM { get; init; } = [];

    /// <summary>Mean square of that current over each triangle, (A/m)2, as its heat goes; empty where only the uniform current is known.</summary>
    public double[] MeanSquareA2PerM2 { get; init; } = [];

    /// <summary>The same in the copper alone over its thickness, amperes per square metre; not a number in contacts and barrels.</summary>
    public double[] CornerDensityAPerM2(double thicknessM) => [.. CornerCurrentAPerM.Select((currentAPerM, corner) =>
        Mesh.IsHeld(corner / 3) ? double.NaN : CopperShare(corner / 3) * currentAPerM / thicknessM)];

    /// <summary>Potential at a point of a triangle, taken as linear in it, volts.</summary>
    public double PotentialAt(int triangle, double xM, double yM)
    {
        (int a, int b, int c) = (Mesh.Triangles[3 * triangle], Mesh.Triangles[(3 * triangle) + 1], Mesh.Triangles[(3 * triangle) + 2]);
        double abX = Mesh.XM[b] - Mesh.XM[a], abY = Mesh.YM[b] - Mesh.YM[a], acX = Mesh.XM[c] - Mesh.XM[a], acY = Mesh.YM[c] - Mesh.YM[a];
        double twice = (abX * acY) - (acX * abY), dx = xM - Mesh.XM[a], dy = yM - Mesh.YM[a];
        double ofB = ((dx * acY) - (acX * dy)) / twice, ofC = ((abX * dy) - (dx * abY)) / twice;
        return PotentialV[a] + (ofB * (PotentialV[b] - PotentialV[a])) + (ofC * (PotentialV[c] - PotentialV[a]));
    }

    /// <summary>Share of a triangle's current that runs in the copper.</summary>
    public double CopperShare(int triangle) =>
        Mesh.TriangleMarkers[triangle] == SheetMesh.Tinned ? CopperShareUnderSolder : 1;

    /// <summary>Magnitude of the sheet current in the copper of a triangle, amperes per metre of width.</summary>
    public double CopperCurrentAPerM(int triangle) => CopperShare(triangle) * SheetCurrentAPerM(triangle);

    /// <summary>Magnitude of the sheet current in a triangle, solder included, amperes per metre of width.</summary>
    public double SheetCurrentAPerM(int triangle) =>
        Math.Sqrt((SheetCurrentXAPerM[triangle] * SheetCurrentXAPerM[triangle])
            + (SheetCurrentYAPerM[triangle] * SheetCurrentYAPerM[triangle]));
}

/// <summary>Current in a plated hole, from one layer it touches to the next.</summary>
/// <param name="Barrel">The hole.</param>
/// <param name="UpperLayer">Layer above the stretch.</param>
/// <param name="LowerLayer">Layer below the stretch.</param>
/// <param name="CurrentA">Current downwards, amperes.</param>
/// <param name="ResistanceOhm">Resistance of the stretch, ohms.</param>
public sealed record BarrelCurrent(Barrel Barrel, int UpperLayer, int LowerLayer, double CurrentA, double ResistanceOhm)
{
    /// <summary>How far off the current may be, amperes: an estimate (see docs/field-solve.md).</summary>
    public double AccuracyA { get; init; }

    /// <summary>The same hole with the largest current it may carry.</summary>
    public BarrelCurrent AtMost() => this with { CurrentA = CurrentA + (CurrentA < 0 ? -AccuracyA : AccuracyA) };

    /// <summary>Current with one ampere between the terminals of the largest drop, amperes.</summary>
    public double UnitCurrentA { get; init; }

    /// <summary>Of several stretches of one hole, the one with the largest current; holes in order of first appearance.</summary>
    public static IEnumerable<BarrelCurrent> BusiestOfEachHole(IEnumerable<BarrelCurrent> stretches) => stretches
        .GroupBy(stretch => stretch.Barrel, ReferenceEqualityComparer.Instance)
        .Select(hole => hole.MaxBy(stretch => Math.Abs(stretch.CurrentA))!);
}

/// <summary>Potential of a terminal and how its current divides among its contacts.</summary>
/// <param name="Terminal">The terminal.</param>
/// <param name="PotentialV">Its potential (mean over contacts where they are not joined), volts.</param>
/// <param name="ContactCurrentsA">Current into the net at each contact, in the order of the terminal's contacts, amperes.</param>
public sealed record TerminalResult(BoundTerminal Terminal, double PotentialV, IReadOnlyList<double> ContactCurrentsA)
{
    /// <summary>How far off each contact's current may be, amperes: an estimate (see docs/field-solve.md).</summary>
    public IReadOnlyList<double> ContactAccuracyA { get; init; } = [];
}

/// <summary>One mesh on the way to the demanded accuracy.</summary>
/// <param name="UnknownCount">Linear equations solved on it; the bulges come on top.</param>
/// <param name="MeshedLossBoundsW">Proven bounds of the meshed shape's heat after this round; never wider than after the round before, watts.</param>
/// <param name="MeshedDropBoundsV">The same of the largest drop; likewise while it stays between the same terminals, volts.</param>
/// <param name="LossOutlineW">What the drawn outlines may change of the heat, watts: an estimate.</param>
/// <param name="DropOutlineV">The same of the drop, volts.</param>
/// <param name="HighTerminal">Number of the terminal the drop is counted from.</param>
/// <param name="LowTerminal">Number of the terminal it is counted to.</param>
public sealed record RefinementRound(
    int UnknownCount, Bracket MeshedLossBoundsW, Bracket MeshedDropBoundsV, OutlineAllowance LossOutlineW, OutlineAllowance DropOutlineV,
    int HighTerminal, int LowTerminal)
{
    /// <summary>Bounds of the drawn shape's heat, watts.</summary>
    public Bracket LossBoundsW => LossOutlineW.Around(MeshedLossBoundsW);

    /// <summary>Bounds of the drawn shape's largest drop, volts.</summary>
    public Bracket DropBoundsV => DropOutlineV.Around(MeshedDropBoundsV);

    /// <summary>Distance of the bounds of loss or drop, whichever is the larger share of its value.</summary>
    public double WidthShare => Math.Max(LossBoundsW.RelativeWidth, DropBoundsV.RelativeWidth);

    /// <summary>What of it the drawn outlines take, at most.</summary>
    public double OutlineShare => Math.Max(
        LossOutlineW.Width / Math.Abs(LossBoundsW.Middle), DropOutlineV.Width / Math.Abs(DropBoundsV.Middle));

    /// <summary>This round with what an earlier one of the same shape has already proven.</summary>
    public RefinementRound Tightened(RefinementRound earlier) => this with
    {
        MeshedLossBoundsW = MeshedLossBoundsW.And(earlier.MeshedLossBoundsW),
        MeshedDropBoundsV = (HighTerminal, LowTerminal) == (earlier.HighTerminal, earlier.LowTerminal)
            ? MeshedDropBoundsV.And(earlier.MeshedDropBoundsV) : MeshedDropBoundsV,
    };
}

/// <summary>Solution of one net, with the evidence that it is one.</summary>
/// <param name="Status">How the solve ended.</param>
/// <param name="Explanation">What went wrong, in words, or null.</param>
/// <param name="Sheets">Fields per layer.</param>
/// <param name="Barrels">Currents of the plated holes.</param>
/// <param name="Terminals">Potentials of the terminals.</param>
/// <param name="DropV">Largest difference between a terminal where current enters and one where it leaves, volts: the middle of its bounds.</param>
/// <param name="DropBoundsV">Bounds of that drop: proven for the meshed shape, with what the drawn outlines may change.</param>
/// <param name="LossW">Heat made in the copper, watts: the middle of its bounds.</param>
/// <param name="LossBoundsW">Bounds of the heat, likewise.</param>
/// <param name="Rounds">The meshes tried, the first one first.</param>
/// <param name="CurrentBalanceRatio">|sum of currents recovered at the terminals| over the total entering; rounding only.</param>
/// <param name="PowerBalanceRatio">|terminal power less copper loss| over the loss; rounding only. Null where the copper makes no heat.</param>
/// <param name="UnknownCount">Linear equations solved; the bulges come on top.</param>
/// <param name="RelativeResidual">Norm of the residual over the norm of the right-hand side.</param>
public sealed record ConductionResult(
    ConductionStatus Status,
    string? Explanation,
    IReadOnlyList<SheetField> Sheets,
    IReadOnlyList<BarrelCurrent> Barrels,
    IReadOnlyList<TerminalResult> Terminals,
    double DropV,
    Bracket DropBoundsV,
    double LossW,
    Bracket LossBoundsW,
    IReadOnlyList<RefinementRound> Rounds,
    double CurrentBalanceRatio,
    double? PowerBalanceRatio,
    int UnknownCount,
    double RelativeResidual)
{
    /// <summary>Whether there are fields and bounds to judge by: solved, if not as closely as asked for.</summary>
    public bool HasFields => Status is ConductionStatus.Solved or ConductionStatus.AccuracyNotReached;

    /// <summary>Layers whose mesh ended at its limit of vertices, coarser than asked for; the bounds hold all the same.</summary>
    public IReadOnlyList<int> CoarseLayers { get; init; } = [];

    /// <summary>Parts of the layers' copper and solder in loss and drop; the rest is the barrels'.</summary>
    public IReadOnlyList<ConductorPart> Parts => PartsWhenAsked.Value;

    /// <summary>They are worked out when first asked for: most reviews never ask.</summary>
    internal Lazy<IReadOnlyList<ConductorPart>> PartsWhenAsked { get; init; } = new(() => []);

    /// <summary>Bounds of the resistance between the terminals of a two-terminal net, ohms; null when there are more.</summary>
    public Bracket? ResistanceBoundsOhm => ResistanceOhm is null ? null : DropBoundsV * (1 / Math.Abs(Terminals[0].Terminal.CurrentA));

    /// <summary>Resistance between the terminals of a two-terminal net, ohms; null when there are more.</summary>
    public double? ResistanceOhm => HasFields && Terminals.Count == 2
        ? DropV / Math.Abs(Terminals[0].Terminal.CurrentA) : null;

    public static ConductionResult Failed(ConductionStatus status, string explanation) =>
        new(status, explanation, [], [], [], double.NaN, Unknown, double.NaN, Unknown, [], double.NaN, double.NaN, 0, double.NaN);

    private static Bracket Unknown { get; } = new(double.NaN, double.NaN);
}
