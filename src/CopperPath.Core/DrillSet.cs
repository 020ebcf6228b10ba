using CopperPath.Artwork;
using CopperPath.Brief;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Drill;
using FileRole = CopperPath.Reading.BoardFiles.FileRole;

namespace CopperPath;

/// <summary>All drill files of a board, and how the numbers of each were read.</summary>
internal sealed record DrillSet(IReadOnlyList<DrillArtwork> Artwork, IReadOnlyList<string> Formats)
{
    public static DrillSet Read(
        BoardIdentification identified, BoardSection? answers, IReadOnlyList<CopperLayer> layers, List<Diagnostic> diagnostics)
    {
        List<DrillArtwork> artwork = [];
        List<string> formats = [];
        foreach (IdentifiedFile file in identified.OfRole(FileRole.Drill))
        {
            DrillReading reading = DrillReader.Read(file.File.Name, file.File.Bytes, BriefAnswers.FormatFor(file.File.Name, answers));
            if ((reading.NeedsFormat || reading.IsFormatAssumed) && Infer(file, layers, diagnostics) is { } inferred)
            {
                reading = inferred;
            }

            diagnostics.AddRange(reading.Diagnostics);
            formats.Add($"{file.File.Name}: {reading.Format}");
            if (reading.Artwork is { } drill)
            {
                artwork.Add(WithFilePlating(drill, file));
            }
        }

        return new DrillSet(artwork, formats);
    }

    private static DrillReading? Infer(IdentifiedFile file, IReadOnlyList<CopperLayer> layers, List<Diagnostic> diagnostics)
    {
        PointNm[] pads = [.. layers.SelectMany(layer => layer.Artwork.Objects)
            .Where(painted => painted.Kind == PaintKind.Flash && painted.Polarity == Polarity.Dark)
            .Select(painted => painted.Anchor)];
        BoxNm bounds = BoxNm.Around(layers.Select(layer => layer.Bounds));
        DrillInference inference = DrillFormatInference.Infer(file.File.Name, file.File.Bytes, pads, bounds);
        SourcePosition where = SourcePosition.WholeFile(file.File.Name);
        if (inference.Chosen is not { } chosen)
        {
            diagnostics.Add(new Diagnostic("DRL901", Severity.Error, where,
                $"no declared number format, and no reading that clearly fits the copper ({string.Join("; ", inference.Evidence.Take(3))})",
                "a 'drill format' for this file in the brief", AffectsCopper: true));
            return null;
        }

        diagnostics.Add(new Diagnostic("DRL900", Severity.Warning, where,
            $"no declared number format; taken as {chosen} because it fits the copper best ({inference.Evidence[0]})",
            "a declared one; a 'drill format' in the brief settles it"));
        return DrillReader.Read(file.File.Name, file.File.Bytes, chosen);
    }

    /// <summary>What the identification knows of the file holds for features that do not say themselves.</summary>
    private static DrillArtwork WithFilePlating(DrillArtwork drill, IdentifiedFile file) => drill with
    {
        Features = [.. drill.Features.Select(feature =>
            feature.Plating == Plating.Unknown ? feature with { Plating = file.Plating } : feature)],
        FirstLayer = drill.FirstLayer > 0 ? drill.FirstLayer : file.Span?.FirstLayer ?? 0,
        LastLayer = drill.LastLayer > 0 ? drill.LastLayer : file.Span?.LastLayer ?? 0,
    };
}
