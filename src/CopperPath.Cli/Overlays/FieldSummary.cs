namespace CopperPath.Cli.Overlays;

/// <summary>What the legends say about the values of a scene.</summary>
/// <param name="HasValues">True when any sheet has a finite value.</param>
/// <param name="Least">Least value shown.</param>
/// <param name="Most">Largest value shown.</param>
/// <param name="Scale">The settled scale.</param>
/// <param name="ShareAbove">Share of the shaded area whose value lies above the scale, 0..1.</param>
/// <param name="ShareBelow">Share of the shaded area whose value lies below the scale, 0..1.</param>
/// <param name="HasUnsolvedCopper">True when part of the net's copper carries no value.</param>
/// <param name="MostViaA">Largest via current, amperes.</param>
/// <param name="ViaScale">Scale of the via currents, from zero.</param>
internal sealed record FieldSummary(
    bool HasValues,
    double Least,
    double Most,
    ValueScale Scale,
    double ShareAbove,
    double ShareBelow,
    bool HasUnsolvedCopper,
    double MostViaA,
    ValueScale ViaScale)
{
    // Rounded copper edges are chords in the mesh, so a little of the net's area is always missing.
    private const double UnsolvedShare = 0.005;

    public static FieldSummary Of(OverlayScene scene)
    {
        (double least, double leastPositive, double most) = Extremes(scene.Sheets);
        bool hasValues = least <= most;
        ValueScale scale = ValueScale.For(scene.Scale, !hasValues ? [] : double.IsFinite(leastPositive) ? [least, leastPositive, most] : [least, most]);
        AreaRanking copper = AreaRanking.Together(scene.Sheets.Select(AreaRanking.Of));

        // Stretches that share a net cover its copper more than once, which would make up for contacts without a value.
        double netM2 = scene.NetCopper.Sum(p => p.AreaNm2) / (Quantities.Units.NmPerM * Quantities.Units.NmPerM);
        double[] viaCurrentsA = [.. scene.Vias.Select(v => Math.Abs(v.CurrentA)).Where(double.IsFinite)];
        ScaleSpec viaSpec = new("", "A", ScaleKind.Linear, scene.ViaScaleTopA, 0);
        return new(
            hasValues,
            hasValues ? least : 0,
            hasValues ? most : 0,
            scale,
            copper.ShareAbove(scale.Top),
            copper.ShareBelow(scale.Bottom),
            Math.Max(netM2 - copper.AreaM2, copper.HollowM2) > UnsolvedShare * netM2,
            viaCurrentsA.Length > 0 ? viaCurrentsA.Max() : 0,
            ValueScale.For(viaSpec, viaCurrentsA));
    }

    /// <summary>Least, least above zero, and largest of the finite values.</summary>
    private static (double Least, double LeastPositive, double Most) Extremes(IReadOnlyList<ShadedSheet> sheets)
    {
        double least = double.PositiveInfinity;
        double leastPositive = double.PositiveInfinity;
        double most = double.NegativeInfinity;
        foreach (ShadedSheet sheet in sheets)
        {
            foreach (double value in sheet.Values)
            {
                if (double.IsFinite(value))
                {
                    least = Math.Min(least, value);
                    most = Math.Max(most, value);
                    leastPositive = value > 0 ? Math.Min(leastPositive, value) : leastPositive;
                }
            }
        }

        return (least, leastPositive, most);
    }
}
