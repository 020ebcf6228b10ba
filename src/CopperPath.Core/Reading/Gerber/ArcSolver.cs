using CopperPath.Artwork;
using CopperPath.Geometry;

namespace CopperPath.Reading.Gerber;

/// <summary>How I and J are read.</summary>
internal enum QuadrantMode
{
    /// <summary>Neither G74 nor G75 yet.</summary>
    Undefined,

    /// <summary>G74, deprecated: I and J without sign, at most 90 degrees, equal ends make a dot.</summary>
    Single,

    /// <summary>G75: I and J with sign, up to 360 degrees, equal ends make a full circle.</summary>
    Multi,
}

/// <summary>A circular operation as written.</summary>
/// <param name="From">Where it starts.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Offset">I and J, nanometres.</param>
/// <param name="Turn">Clockwise or counter-clockwise.</param>
internal readonly record struct WrittenArc(PointNm From, PointNm To, PointNm Offset, Turn Turn);

/// <summary>The arc found, and by how much its two radii differ.</summary>
internal readonly record struct SolvedArc(PathStep Step, double StartRadiusNm, double DriftNm)
{
    public bool IsDot => Step.Turn == Turn.Straight;
}

/// <summary>Finds the centre of an arc from I and J.</summary>
internal static class ArcSolver
{
    /// <summary>Rounding may push a quarter turn a little past 90 degrees.</summary>
    private const double QuarterRad = (Math.PI / 2) + 0.02;

    /// <summary>G75: the centre is the start plus the signed offset.</summary>
    public static SolvedArc Multi(in WrittenArc arc) => WithCentre(arc, arc.From + arc.Offset);

    /// <summary>
    /// G74: of the four centres the unsigned offset allows, the one whose sweep in the set direction is at most
    /// 90 degrees and whose radii agree best; null when none fits.
    /// </summary>
    public static SolvedArc? Single(in WrittenArc arc)
    {
        if (arc.From == arc.To)
        {
            return new SolvedArc(PathStep.Line(arc.To), 0, 0);
        }

        SolvedArc? best = null;
        for (int signs = 0; signs < 4; signs++)
        {
            var offset = new PointNm(
                signs % 2 == 0 ? arc.Offset.X : -arc.Offset.X, signs < 2 ? arc.Offset.Y : -arc.Offset.Y);
            SolvedArc candidate = WithCentre(arc, arc.From + offset);
            bool isQuarter = candidate.Step.ArcFrom(arc.From).SweepRad <= QuarterRad;
            if (isQuarter && (best is null || candidate.DriftNm < best.Value.DriftNm))
            {
                best = candidate;
            }
        }

        return best;
    }

    private static SolvedArc WithCentre(in WrittenArc arc, PointNm centre)
    {
        double startRadius = arc.From.DistanceNmTo(centre);
        double endRadius = arc.To.DistanceNmTo(centre);
        return new SolvedArc(
            new PathStep(arc.To, arc.Turn, centre), startRadius, Math.Abs(startRadius - endRadius));
    }
}
