using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>A plated hole's mark on the picture.</summary>
/// <param name="Via">The hole.</param>
/// <param name="Centre">Its centre, pixels.</param>
/// <param name="RadiusPx">Radius of its dot.</param>
public sealed record PlacedVia(ViaMark Via, SKPoint Centre, float RadiusPx)
{
    private const float FullEms = 0.55f;
    private const float LeastEms = 0.14f;
    private const float LeastOverLimitEms = 0.3f;

    /// <summary>Radius over distance to the nearest neighbour: a field of equal vias just touches and can still be counted.</summary>
    private const float CrowdedShare = 0.5f;

    /// <summary>How far a hole over its limit reaches beyond its dot: it stands in a lozenge.</summary>
    private const float LozengeReach = 1.6f;

    /// <summary>The box its mark takes.</summary>
    public SKRect Box
    {
        get
        {
            float reach = Via.IsOverLimit ? LozengeReach * RadiusPx : RadiusPx;
            return SKRect.Create(Centre.X - reach, Centre.Y - reach, 2 * reach, 2 * reach);
        }
    }

    /// <summary>
    /// Marks in the order they are drawn: the area of a dot grows with the current, and the largest current lies on top.
    /// Dots give way to each other where holes stand close, but never below the size at which a colour can be told.
    /// </summary>
    /// <param name="vias">Holes in any order.</param>
    /// <param name="transform">Board to picture.</param>
    /// <param name="scale">Scale of the currents, from zero.</param>
    /// <param name="emPx">Height of the running text.</param>
    public static IReadOnlyList<PlacedVia> Of(IReadOnlyList<ViaMark> vias, ViewTransform transform, ValueScale scale, float emPx)
    {
        SKPoint[] centres = [.. vias.Select(via => transform.Map(via.CentreNm))];
        float[] nearest = NearestPx(centres, FullEms / CrowdedShare * emPx);
        return [.. Enumerable.Range(0, vias.Count)
            .Select(i => new PlacedVia(vias[i], centres[i], RadiusOf(vias[i], scale, nearest[i], emPx)))
            .OrderBy(placed => placed.Via.IsOverLimit).ThenBy(placed => Math.Abs(placed.Via.CurrentA))];
    }

    /// <summary>Radius of a dot with room around it.</summary>
    internal static float RadiusOf(ViaMark via, ValueScale scale, float nearestPx, float emPx)
    {
        float byCurrent = (LeastEms + ((FullEms - LeastEms) * (float)Math.Sqrt(scale.PlaceOf(Math.Abs(via.CurrentA))))) * emPx;
        float least = (via.IsOverLimit ? LeastOverLimitEms : LeastEms) * emPx;
        return Math.Max(least, Math.Min(byCurrent, CrowdedShare * nearestPx));
    }

    /// <summary>Distance from each point to its nearest neighbour, or the reach where none is nearer.</summary>
    private static float[] NearestPx(SKPoint[] points, float reachPx)
    {
        float[] nearest = new float[points.Length];
        Array.Fill(nearest, reachPx);
        int[] byAbscissa = [.. Enumerable.Range(0, points.Length).OrderBy(i => points[i].X)];
        for (int a = 0; a < byAbscissa.Length; a++)
        {
            int i = byAbscissa[a];
            for (int b = a + 1; b < byAbscissa.Length && points[byAbscissa[b]].X - points[i].X < reachPx; b++)
            {
                int j = byAbscissa[b];
                float distance = SKPoint.Distance(points[i], points[j]);

                // Two holes at one place, drawn by two stretches, are no neighbours.
                if (distance > 0)
                {
                    nearest[i] = Math.Min(nearest[i], distance);
                    nearest[j] = Math.Min(nearest[j], distance);
                }
            }
        }

        return nearest;
    }
}
