using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>A test piece whose resistance is known.</summary>
/// <param name="Name">Row of the table of docs/field-solve.md.</param>
/// <param name="Piece">Builds the piece.</param>
/// <param name="Squares">Resistance of the piece, arms included, in squares.</param>
internal sealed record ExactCase(string Name, Func<Plate> Piece, double Squares)
{
    /// <summary>
    /// Resistance in squares from a solution: between the two terminals that carry current, unless the case says
    /// where the voltage is taken.
    /// </summary>
    public Func<ConductionResult, double> Measured { get; init; } = result => result.DropV;

    /// <summary>False where the voltage is not taken between the terminals whose drop is bounded.</summary>
    public bool IsBounded { get; init; } = true;
}

/// <summary>
/// Plane conduction problems with exact solutions, arms of two widths or more included where the solution is for long
/// arms: what they leave is below exp(-4 pi) = 4e-6 of the disturbance.
/// </summary>
/// <remarks>
/// Origins, all from memory: P. M. Hall, Thin Solid Films 1 (1968) 277 (corners, steps); W. R. Smythe, Static and Dynamic
/// Electricity (discs, annulus); L. J. van der Pauw, Philips Res. Rep. 13 (1958) 1. The closed forms of the T and of the
/// cross are derived in docs/field-solve.md.
/// </remarks>
internal static class ExactCases
{
    private static readonly double Ln2 = Math.Log(2);

    private static readonly double TeeArm = (Math.Log(1.25) + Math.Atan(2)) / Math.PI;

    /// <summary>Stem to both arms is half a corner of widths 1 and 1/2; the stem is that less the arms in parallel.</summary>
    private static readonly double TeeStem =
        (((2 * Math.Atan(0.5)) + (0.5 * Math.Atan(2)) + Math.Log(0.625)) / Math.PI) - (TeeArm / 2);

    public static IReadOnlyList<ExactCase> All { get; } =
    [
        new("bar", Bar, 4),
        new("right-angle corner", Corner, 6 + 1 - (2 / Math.PI * Ln2)),
        .. new[] { 2.0, 5, 10 }.Select(ratio =>
            new ExactCase($"annulus {ratio}", () => Annulus(ratio), Math.Log(ratio) / (2 * Math.PI))),
        .. new[] { 3.0, 10, 50, 100 }.SelectMany(TwoDiscs),
        .. new[] { 10.0, 30, 60, 90, 120 }.Select(angle => new ExactCase($"disc, arcs of {angle} degrees", () => DiscWithArcs(angle), ArcSquares(angle))),
        new("van der Pauw, cross", () => Cross(1, -1, 0, 0), Ln2 / Math.PI)
        {
            Measured = result => result.Terminals[3].PotentialV - result.Terminals[2].PotentialV,
            IsBounded = false,
        },
        new("cross, opposite arms", () => Cross(1, 0, -1, 0), 4 + 0.5 + (Ln2 / Math.PI)),
        new("cross, adjacent arms", () => Cross(1, -1, 0, 0), 4 + 0.5),
        new("T, straight through", () => Tee(1, -1, 0), 4 + (2 * TeeArm)),
        new("T, stem to one arm", () => Tee(1, 0, -1), 4 + TeeArm + TeeStem),
        new("T, stem to both arms", TeeJoined, 3 + (TeeArm / 2) + TeeStem),
        .. new[] { 0.1, 0.25, 0.5, 0.75, 0.9 }.Select(r =>
            new ExactCase($"width step, flush, {r}", () => FlushStep(r), 2 + 2 + StepSquares(r))),
        .. new[] { 0.25, 0.5, 0.75 }.Select(r =>
            new ExactCase($"width step, symmetric, {r}", () => SymmetricStep(r), 2 + 2 + (StepSquares(r) / 2))),
        .. new[] { 0.1, 0.25, 0.5, 0.75 }.SelectMany(r => new ExactCase[]
        {
            new($"slit, gap {r}, half by symmetry", () => HalfSlit(r), 2 + (SlitSquares(r) / 2)),
            new($"slit, gap {r}, wedge of 1 um", () => WedgeSlit(r), 4 + SlitSquares(r)),
        }),
        new("central gap 0.5, half by symmetry", HalfCentralGap, 2 + (SlitSquares(0.5) / 4)),
        new("central gap 0.5, wedges of 1 um", CentralWedges, 4 + (SlitSquares(0.5) / 2)),
    ];

    private static double StepSquares(double r) =>
        ((((1 + (r * r)) / r) * Math.Log((1 + r) / (1 - r))) - (2 * Math.Log(4 * r / (1 - (r * r))))) / Math.PI;

    private static double SlitSquares(double r) => -4 / Math.PI * Math.Log(Math.Sin(Math.PI * r / 2));

    private static double ArcSquares(double degrees)
    {
        double half = degrees * Math.PI / 360;
        return CompleteElliptic(Math.Cos(half)) / CompleteElliptic(Math.Sin(half));
    }

    /// <summary>K(k) by the arithmetic-geometric mean; k is the modulus, m = k squared.</summary>
    private static double CompleteElliptic(double k)
    {
        (double a, double g) = (1, Math.Sqrt(1 - (k * k)));
        while (Math.Abs(a - g) > 1e-15 * a)
        {
            (a, g) = ((a + g) / 2, Math.Sqrt(a * g));
        }

        return Math.PI / (2 * a);
    }

    private static Plate Bar() => new Plate().Rectangle(-5, 0, 45, 10)
        .Terminal("west", 1, Plate.Box(-5, 0, 0, 10)).Terminal("east", -1, Plate.Box(40, 0, 45, 10));

    private static Plate Corner() => new Plate()
        .Copper(1, [(-32, 0), (10, 0), (10, 42), (0, 42), (0, 10), (-32, 10)])
        .Terminal("west", 1, Plate.Box(-32, 0, -30, 10)).Terminal("north", -1, Plate.Box(0, 40, 10, 42));

    private static Plate Annulus(double ratio)
    {
        const double outer = 20;
        (double X, double Y)[] HalfRing(double from) =>
        [
            .. Plate.Arc(0, 0, outer + 2, from, from + Math.PI, 360),
            .. Plate.Arc(0, 0, outer, from + Math.PI, from, 360),
        ];
        return new Plate().Copper(1, Plate.Circle(0, 0, outer + 1))
            .Terminal("hub", 1, Plate.Circle(0, 0, outer / ratio)).Terminal("rim", -1, HalfRing(0), HalfRing(Math.PI));
    }

    /// <summary>
    /// Two discs of radius a at a distance D. In a sheet without end: acosh(D/2a) / pi. Two finite pieces stand for it:
    /// <list type="bullet">
    /// <item>the circle through both limiting points of the coaxal system is a line of flow and holds half of the
    /// current; a disc cut along it has exactly twice the resistance;</item>
    /// <item>a round sheet ten times as wide as the distance. From outside a disc acts as a source at its limiting point,
    /// l from the middle, and its charge averages any harmonic field to the value there; so the images add
    /// ln((S^2 + l^2) / (S^2 - l^2)) / pi with S the radius of the sheet. What the images' field does to the discs' own
    /// charge is of second order, below 1e-5.</item>
    /// </list>
    /// </summary>
    private static ExactCase[] TwoDiscs(double ratio)
    {
        double squares = Math.Acosh(ratio) / Math.PI;

        // Discs below 0.1 mm would be polygons of few corners after simplification.
        double d = ratio > 10 ? 10 : 4;
        double sheet = 10 * d;
        double a = d / ratio;
        double limiting = Math.Sqrt((d * d) - (a * a));
        Plate Piece(double radius) => new Plate().Copper(1, Plate.Circle(0, 0, radius))
            .Terminal("west", 1, Plate.Circle(-d, 0, a)).Terminal("east", -1, Plate.Circle(d, 0, a));
        return
        [
            new($"two discs, D/2a {ratio}, cut along a line of flow", () => Piece(limiting), 2 * squares),
            new($"two discs, D/2a {ratio}, sheet of 10 D", () => Piece(sheet),
                squares + (Math.Log(((sheet * sheet) + (limiting * limiting)) / ((sheet * sheet) - (limiting * limiting))) / Math.PI)),
        ];
    }

    private static Plate DiscWithArcs(double degrees)
    {
        const double radius = 20;
        double half = degrees * Math.PI / 360;
        (double X, double Y)[] Electrode(double centre) =>
        [
            .. Plate.Arc(0, 0, radius + 2, centre - half, centre + half, 120),
            .. Plate.Arc(0, 0, radius, centre + half, centre - half, 120),
        ];
        (double X, double Y)[] disc =
        [
            .. Plate.Arc(0, 0, radius, -half, half, 120),
            .. Plate.Arc(0, 0, radius, half, Math.PI - half, 360)[1..],
            .. Plate.Arc(0, 0, radius, Math.PI - half, Math.PI + half, 120)[1..],
            .. Plate.Arc(0, 0, radius, Math.PI + half, (2 * Math.PI) - half, 360)[1..^1],
        ];
        return new Plate().Copper(1, disc, Electrode(0), Electrode(Math.PI))
            .Terminal("east", 1, Electrode(0)).Terminal("west", -1, Electrode(Math.PI));
    }

    private static Plate Cross(double east, double north, double west, double south) => new Plate()
        .Rectangle(-26, -5, 26, 5).Rectangle(-5, -26, 5, 26)
        .Terminal("east", east, Plate.Box(25, -5, 26, 5)).Terminal("north", north, Plate.Box(-5, 25, 5, 26))
        .Terminal("west", west, Plate.Box(-26, -5, -25, 5)).Terminal("south", south, Plate.Box(-5, -26, 5, -25));

    private static Plate Tee(double west, double east, double stem) => TeeCopper()
        .Terminal("west", west, Plate.Box(-26, -5, -25, 5)).Terminal("east", east, Plate.Box(25, -5, 26, 5))
        .Terminal("stem", stem, Plate.Box(-5, -26, 5, -25));

    private static Plate TeeJoined() => TeeCopper()
        .Terminal("arms", 1, Plate.Box(-26, -5, -25, 5), Plate.Box(25, -5, 26, 5))
        .Terminal("stem", -1, Plate.Box(-5, -26, 5, -25));

    private static Plate TeeCopper() => new Plate().Rectangle(-26, -5, 26, 5).Rectangle(-5, -26, 5, 0);

    private static Plate FlushStep(double r) => new Plate().Rectangle(-21, 0, 0, 10).Rectangle(0, 0, (20 * r) + 1, 10 * r)
        .Terminal("wide", 1, Plate.Box(-21, 0, -20, 10)).Terminal("narrow", -1, Plate.Box(20 * r, 0, (20 * r) + 1, 10 * r));

    private static Plate SymmetricStep(double r) => new Plate().Rectangle(-21, -5, 0, 5).Rectangle(0, -5 * r, (20 * r) + 1, 5 * r)
        .Terminal("wide", 1, Plate.Box(-21, -5, -20, 5)).Terminal("narrow", -1, Plate.Box(20 * r, -5 * r, (20 * r) + 1, 5 * r));

    /// <summary>The gap of a slit is an equipotential by mirror symmetry: half a strip with a contact on part of its end.</summary>
    private static Plate HalfSlit(double r) => new Plate().Rectangle(-21, 0, 0, 10).Rectangle(0, 0, 1, 10 * r)
        .Terminal("west", 1, Plate.Box(-21, 0, -20, 10)).Terminal("gap", -1, Plate.Box(0, 0, 1, 10 * r));

    private static Plate HalfCentralGap() => new Plate().Rectangle(-21, -5, 0, 5).Rectangle(0, -2.5, 1, 2.5)
        .Terminal("west", 1, Plate.Box(-21, -5, -20, 5)).Terminal("gap", -1, Plate.Box(0, -2.5, 1, 2.5));

    /// <summary>
    /// A slit that a router could cut: a wedge 1 um wide at the edge of the strip and of no width at its tip. The copper
    /// it takes away is where the current hardly flows.
    /// </summary>
    private static Plate WedgeSlit(double r) => new Plate()
        .Copper(1, [(-21, 0), (21, 0), (21, 10), (0.0005, 10), (0, 10 * r), (-0.0005, 10), (-21, 10)])
        .Terminal("west", 1, Plate.Box(-21, 0, -20, 10)).Terminal("east", -1, Plate.Box(20, 0, 21, 10));

    private static Plate CentralWedges() => new Plate()
        .Copper(1,
        [
            (-21, -5), (-0.0005, -5), (0, -2.5), (0.0005, -5), (21, -5), (21, 5), (0.0005, 5), (0, 2.5), (-0.0005, 5), (-21, 5),
        ])
        .Terminal("west", 1, Plate.Box(-21, -5, -20, 5)).Terminal("east", -1, Plate.Box(20, -5, 21, 5));
}
