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
        double[] values = [.. scene.Sheets.SelectMany(s => s.Values).Where(double.IsFinite)];
        ValueScale scale = ValueScale.For(scene.Scale, values);
        AreaRanking copper = new(scene.Sheets);
        double hollowM2 = 0;
        foreach (ShadedSheet sheet in scene.Sheets)
        {
            for (int t = 0; t < sheet.Mesh.TriangleCount; t++)
            {
                hollowM2 += double.IsFinite(sheet.MeanOf(t)) ? 0 : TriangleAreas.AreaM2(sheet.Mesh, t);
            }
        }

        // Stretches that share a net cover its copper more than once, which would make up for contacts without a value.
        double netM2 = scene.NetCopper.Sum(p => p.AreaNm2) / (Quantities.Units.NmPerM * Quantities.Units.NmPerM);
        double[] viaCurrentsA = [.. scene.Vias.Select(v => Math.Abs(v.CurrentA)).Where(double.IsFinite)];
        ScaleSpec viaSpec = new("", "A", ScaleKind.Linear, scene.ViaScaleTopA, 0);
        return new(
            values.Length > 0,
            values.Length > 0 ? values.Min() : 0,
            values.Length > 0 ? values.Max() : 0,
            scale,
            copper.ShareAbove(scale.Top),
            copper.ShareBelow(scale.Bottom),
            Math.Max(netM2 - copper.AreaM2, hollowM2) > UnsolvedShare * netM2,
            viaCurrentsA.Length > 0 ? viaCurrentsA.Max() : 0,
            ValueScale.For(viaSpec, viaCurrentsA));
    }
}
