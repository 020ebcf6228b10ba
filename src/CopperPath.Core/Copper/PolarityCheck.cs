using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Copper;

/// <summary>
/// Inner layers that may be drawn as absent copper without saying so, or say so and are not. Known only when the holes
/// are: without them a clearance looks like a land.
/// </summary>
public static class PolarityCheck
{
    /// <param name="layers">The layers as drawn or declared, top to bottom.</param>
    /// <param name="drills">All drill files.</param>
    /// <param name="profile">The board outline; empty when there is none.</param>
    /// <param name="settled">Files whose polarity the brief states.</param>
    /// <param name="isNegative">Whether a layer is stated to draw absent copper; null where nothing says.</param>
    /// <returns>The layers, turned round where the holes leave no doubt, and what there is to say.</returns>
    public static (IReadOnlyList<CopperLayer> Layers, IReadOnlyList<Diagnostic> Diagnostics) Settle(
        IReadOnlyList<CopperLayer> layers, IReadOnlyList<DrillArtwork> drills, IReadOnlyList<PolygonNm> profile,
        IReadOnlySet<string> settled, Func<LayerArtwork, bool?> isNegative)
    {
        if (layers.Count < 3)
        {
            return (layers, []);
        }

        List<CopperLayer> result = [.. layers];
        List<Diagnostic> diagnostics = [];
        BoxNm extent = BoxNm.Around(layers.Select(layer => layer.Artwork.Bounds));
        double boardMm2 = profile.Count > 0
            ? profile.Sum(piece => piece.AreaNm2) * 1e-12
            : (double)extent.WidthNm * extent.HeightNm * 1e-12;
        DrawnPolarity?[] signs = new DrawnPolarity?[layers.Count];
        Diagnostic?[] entangled = new Diagnostic?[layers.Count];
        Parallel.For(1, layers.Count - 1, i =>
        {
            if (!settled.Contains(layers[i].File))
            {
                try
                {
                    signs[i] = DrawnPolarity.Of(
                        layers[i].Artwork, isNegative(layers[i].Artwork) == true ? [] : layers[i].Islands,
                        [layers[0].Artwork, layers[^1].Artwork], HolesThrough(layers[i].Number, drills), boardMm2);
                }
                catch (EntangledOutlinesException failure)
                {
                    entangled[i] = CopperBuilder.Entangled(layers[i].Artwork, failure);
                }
            }
        });
        for (int i = 1; i < layers.Count - 1; i++)
        {
            if (signs[i] is { } ofLayer)
            {
                result[i] = Settle(layers[i], isNegative(layers[i].Artwork), ofLayer, profile, diagnostics);
            }
            else if (entangled[i] is { } problem)
            {
                diagnostics.Add(problem);
            }
        }

        return (result, diagnostics);
    }

    private static CopperLayer Settle(
        CopperLayer layer, bool? declared, DrawnPolarity signs, IReadOnlyList<PolygonNm> profile, List<Diagnostic> diagnostics)
    {
        SourcePosition where = SourcePosition.WholeFile(layer.File);
        const string answer = "a stated polarity; `polarity` for this file in the brief settles it";
        string evidence = string.Create(CultureInfo.InvariantCulture,
            $"of {signs.Flashed} flashes at plated holes {signs.Cleared} are clearances or thermal reliefs, "
            + $"and as copper its lines and areas would join {signs.Joined} holes");
        if (declared == true)
        {
            if (signs.HasLandsOnly)
            {
                diagnostics.Add(new Diagnostic("CUP005", Severity.Warning, where,
                    $"a layer declared as absent copper that looks drawn as copper: {evidence}", answer, AffectsCopper: true));
            }

            return layer;
        }

        if (signs.Answer == DrawnAs.Copper)
        {
            return layer;
        }

        if (signs.Answer == DrawnAs.Unclear || declared == false || profile.Count == 0)
        {
            string missing = signs.Answer == DrawnAs.AbsentCopper && declared is null ? ", and no board outline" : "";
            diagnostics.Add(new Diagnostic("CUP005", Severity.Warning, where,
                $"a layer that may be drawn as absent copper{missing}: {evidence}", answer, AffectsCopper: true));
            return layer;
        }

        try
        {
            CopperLayer inverted = CopperBuilder.Inverted(layer.Number, layer.Artwork, profile);
            diagnostics.Add(new Diagnostic("CUP006", Severity.Warning, where,
                $"a layer taken as drawn as absent copper, which it does not say: {evidence}", answer));
            return inverted;
        }
        catch (EntangledOutlinesException entangled)
        {
            diagnostics.Add(CopperBuilder.Entangled(layer.Artwork, entangled));
            return layer;
        }
    }

    private static DrilledFeature[] HolesThrough(int layer, IReadOnlyList<DrillArtwork> drills) =>
        [.. drills.Where(drill => drill.FirstLayer == 0 || (layer >= drill.FirstLayer && layer <= drill.LastLayer))
            .SelectMany(drill => drill.Features).Where(hole => hole.IsRoundHole && hole.Plating != Plating.NonPlated)];
}
