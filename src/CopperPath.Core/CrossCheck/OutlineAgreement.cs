using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;
using CopperPath.Quantities;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Gerber;

namespace CopperPath.CrossCheck;

/// <summary>
/// The board outline around copper and holes. Pads on the very edge are halved on purpose; a name or a frame beside the
/// board is drawn on the copper of many. Pads, holes and areas that lie outside in number tell of a wrong outline.
/// </summary>
internal static class OutlineAgreement
{
    /// <summary>Share of pads, holes or copper outside from which the outline or a layer is wrong; sound boards show 0.004 at most.</summary>
    private const double MostOutside = 0.02;

    /// <summary>
    /// Copper drawn over the edge this far is routed off on purpose, as at halved holes; sound boards reach 1.2 mm.
    /// </summary>
    private const long RoutedOffNm = 2 * Units.NmPerMm;

    /// <summary>Share of a layer's copper that may stand beside the board: frames, names and test patterns; 0.19 at most was seen.</summary>
    private const double MostBeside = 0.5;

    /// <summary>An outline this many times as wide and as high as all that lies in it; sound boards reach 1.05.</summary>
    private const double FarTooLarge = 3;

    /// <summary>Drawings of more lines are no outline with some text, and joining them takes the square of their number.</summary>
    private const int MostLines = 5_000;

    public static IEnumerable<Diagnostic> Run(FabricationSet set)
    {
        if (set.ProfileArtwork.Count == 0)
        {
            return [Absent(set)];
        }

        return set.Profile.Count == 0 ? [Open(set)] : [.. PadsOutside(set), .. CopperOutside(set), .. TooLarge(set)];
    }

    private static Diagnostic Absent(FabricationSet set)
    {
        BoxNm copper = CopperOf(set);
        foreach (IdentifiedFile file in set.Identified.Files.Where(file => file.Content == FileContent.Gerber && file.Role != FileRole.Copper))
        {
            if (GerberReader.Read(file.File.Name, file.File.Bytes).Artwork is { } drawing
                && drawing.Contours.Count <= MostLines && ProfileBuilder.Loops(drawing).Select(BoxNm.Of).Any(loop => IsAround(loop, copper)))
            {
                return SetRemark.Warning(SetCode.NoOutline, file.File.Name,
                    $"no board outline file; a closed line around all pads stands in this one", "a file with the outline alone; the extent of the copper is taken");
            }
        }

        return SetRemark.Doubt(SetCode.NoOutline, set.Path, $"no board outline, neither in a file of its own nor around the pads in another",
            "an outline: what is cut from the copper, and the face that cools it, are not known without");
    }

    private static Diagnostic Open(FabricationSet set)
    {
        PointNm[] ends = [.. set.ProfileArtwork.SelectMany(drawing => drawing.Contours).Where(line => line.Length > 1)
            .SelectMany(line => new[] { line[0], line[^1] }).Take(MostLines)];
        double[] gaps = [.. ends.Select((end, i) => ends.Where((_, j) => j != i).Select(end.DistanceNmTo).DefaultIfEmpty(0).Min())];
        int loose = Array.IndexOf(gaps, gaps.DefaultIfEmpty(0).Max());
        string file = set.ProfileArtwork[0].File;
        return loose < 0 ? SetRemark.Doubt(SetCode.OpenOutline, file, $"no line in the board outline", "a closed outline")
            : SetRemark.Doubt(SetCode.OpenOutline, file,
                $"a board outline that does not close: a line ends {SetRemark.At(ends[loose])}, {gaps[loose] / 1e6:0.###} mm from the next", "a closed outline");
    }

    private static IEnumerable<Diagnostic> PadsOutside(FabricationSet set)
    {
        PolygonLocator board = new(set.Profile);
        for (int l = 0; l < set.Layers.Count; l++)
        {
            Landmark[] pads = [.. set.Landmarks[l].Where(land => land.Kind == LandmarkKind.Land)];
            PointNm[] outside = [.. pads.Where(pad => IsOutside(board, pad.Box)).Select(pad => pad.At)];
            if (outside.Length > MostOutside * pads.Length)
            {
                yield return SetRemark.Doubt(SetCode.OutsideOutline, set.Layers[l].File,
                    $"{outside.Length} of {pads.Length} pads of layer {set.Layers[l].Number} outside the board outline, {SetRemark.At(outside)}",
                    "pads within the outline: it may be cut short, or the layer shifted");
            }
        }

        foreach (IGrouping<string, HoleLanding> drill in set.Nets.Holes.GroupBy(hole => hole.File))
        {
            PointNm[] outside = [.. drill.Select(hole => BoxNm.Of(hole.Feature.Path).GrownBy(hole.Feature.ToolDiameterNm / 2))
                .Where(hole => IsOutside(board, hole)).Select(hole => hole.Centre)];

            // Unplated holes may be those of a panel's rails; where not one is on the board they are not where they belong.
            bool isForLands = drill.Any(hole => hole.Feature.Plating != Plating.NonPlated);
            if (isForLands ? outside.Length > MostOutside * drill.Count() : outside.Length == drill.Count())
            {
                yield return SetRemark.Doubt(SetCode.OutsideOutline, drill.Key,
                    $"{outside.Length} of {drill.Count()} holes outside the board outline, {SetRemark.At(outside)}",
                    "holes within the outline: it may be cut short, or the holes shifted");
            }
        }
    }

    /// <summary>Areas without pads. Drawings wholly beside the board do not count, unless they are most of the layer.</summary>
    private static IEnumerable<Diagnostic> CopperOutside(FabricationSet set)
    {
        BoxNm board = BoxNm.Around(set.Profile.Select(piece => piece.Bounds));
        BoxNm routed = board.GrownBy(RoutedOffNm);
        foreach (CopperLayer layer in set.Layers)
        {
            if (routed.Contains(layer.Bounds))
            {
                continue;
            }

            double besideM2 = layer.Islands.Where(island => !island.Bounds.Touches(board)).Sum(island => island.AreaNm2) * 1e-18;
            PolygonNm[] across = [.. layer.Islands.Where(island => island.Bounds.Touches(board) && !routed.Contains(island.Bounds))];
            if (BeyondM2(across, routed) is not { } acrossM2)
            {
                yield return SetRemark.Doubt(SetCode.OutsideOutline, layer.File,
                    $"copper across the board outline on layer {layer.Number} whose outlines touch each other too often to tell how much lies outside",
                    "copper within the outline");
                continue;
            }

            if (acrossM2 > MostOutside * layer.AreaM2 || besideM2 > MostBeside * layer.AreaM2)
            {
                yield return SetRemark.Doubt(SetCode.OutsideOutline, layer.File,
                    $"{100 * Math.Max(acrossM2, besideM2) / layer.AreaM2:0} % of the copper of layer {layer.Number} outside the board outline",
                    "copper within the outline: it may be cut short, or the layer shifted");
            }
        }
    }

    /// <summary>Area of pieces outside a box, square metres; null when their outlines cross or touch too often to tell.</summary>
    private static double? BeyondM2(PolygonNm[] pieces, BoxNm box)
    {
        if (pieces.Length == 0)
        {
            return 0;
        }

        try
        {
            return PolygonOperations.Subtract(CopperBuilder.RingsOf(pieces), [box.ToRing()]).Sum(piece => piece.AreaNm2) * 1e-18;
        }
        catch (EntangledOutlinesException)
        {
            return null;
        }
    }

    private static IEnumerable<Diagnostic> TooLarge(FabricationSet set)
    {
        BoxNm board = BoxNm.Around(set.Profile.Select(piece => piece.Bounds));
        BoxNm copper = BoxNm.Around(set.Layers.SelectMany(layer => layer.Islands).Select(island => island.Bounds).Where(board.Touches));
        if (!copper.IsEmpty && board.WidthNm > FarTooLarge * copper.WidthNm && board.HeightNm > FarTooLarge * copper.HeightNm)
        {
            yield return SetRemark.Doubt(SetCode.LargeOutline, set.ProfileArtwork[0].File,
                $"a board outline of {board.WidthNm / 1e6:0.#} by {board.HeightNm / 1e6:0.#} mm around copper of {copper.WidthNm / 1e6:0.#} by {copper.HeightNm / 1e6:0.#} mm",
                "an outline about as large as what lies in it: one of them may be in another unit");
        }
    }

    /// <summary>Extent of the pads, or of all copper where there are none: pads are not drawn beside the board.</summary>
    private static BoxNm CopperOf(FabricationSet set)
    {
        BoxNm pads = BoxNm.Around(set.Landmarks.SelectMany(landmarks => landmarks).Where(land => land.Kind == LandmarkKind.Land).Select(land => land.Box));
        return pads.IsEmpty ? BoxNm.Around(set.Layers.Select(layer => layer.Bounds)) : pads;
    }

    /// <summary>Around the copper and no frame of a sheet.</summary>
    private static bool IsAround(BoxNm loop, BoxNm copper) => loop.GrownBy(Units.NmPerMm).Contains(copper)
        && loop.WidthNm < 2 * copper.WidthNm && loop.HeightNm < 2 * copper.HeightNm;

    private static bool IsOutside(PolygonLocator board, BoxNm pad) =>
        board.Find(pad.Centre) < 0 && pad.ToRing().All(corner => board.Find(corner) < 0);
}
