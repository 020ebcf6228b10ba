using CopperPath.Artwork;
using CopperPath.Brief;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Drill;
using CopperPath.Reading.Gerber;
using FileRole = CopperPath.Reading.BoardFiles.FileRole;

namespace CopperPath;

/// <summary>All drill files of a board, and how the numbers of each were read.</summary>
internal sealed record DrillSet(IReadOnlyList<DrillArtwork> Artwork, IReadOnlyList<string> Formats)
{
    /// <summary>True when the files together hold more than one alone may: none is kept.</summary>
    public bool HasTooMany { get; private init; }

    /// <summary>The one remark when there are too many.</summary>
    /// <param name="board">Folder or archive of the board.</param>
    public static Diagnostic TooMany(string board) => new(
        DrillCode.TooManyInAll, Severity.Error, SourcePosition.WholeFile(board),
        FormattableString.Invariant($"more than {DrillMachine.MaxFeatures} holes and cuts in all drill files"),
        "a board with fewer; take one board out of its panel", AffectsCopper: true);

    /// <summary>Number formats tried that are listed as evidence.</summary>
    private const int EvidenceListed = 4;

    /// <param name="identified">The files.</param>
    /// <param name="answers">What the brief says about them, or null.</param>
    /// <param name="layers">The copper, which tells how undeclared numbers are meant.</param>
    /// <param name="profile">The board outline, empty when there is none.</param>
    /// <param name="images">How drill data in Gerber form is read, with the budget of the run.</param>
    /// <param name="diagnostics">Receives all remarks.</param>
    public static DrillSet Read(
        BoardIdentification identified, BoardSection? answers, IReadOnlyList<CopperLayer> layers,
        IReadOnlyList<PolygonNm> profile, GerberReadOptions images, List<Diagnostic> diagnostics)
    {
        List<DrillArtwork> artwork = [];
        List<string> formats = [];
        long features = 0;

        // Where both forms tell of one hole, the drill program is what the machine runs: it comes first.
        foreach (IdentifiedFile file in identified.OfRole(FileRole.Drill).OrderBy(file => file.Content == FileContent.Gerber))
        {
            DrillReading reading = file.Content == FileContent.Gerber
                ? GerberDrillReader.Read(file.File.Name, file.File.Bytes, images)
                : ReadProgram(file, answers, layers, profile, diagnostics);
            diagnostics.AddRange(reading.Diagnostics);
            formats.Add($"{file.File.Name}: {reading.Format}");
            if (reading.Artwork is { } read)
            {
                features += read.Features.Count;
                if (features > DrillMachine.MaxFeatures)
                {
                    return new DrillSet([], []) { HasTooMany = true };
                }

                DrillArtwork drill = WithFilePlating(read, file);
                artwork.Add(drill);
                diagnostics.AddRange(ToolSizes.Check(drill, identified.CopperLayerCount));
            }
        }

        return new DrillSet(DrillOverlap.Resolve(artwork, diagnostics), formats);
    }

    private static DrillReading ReadProgram(
        IdentifiedFile file, BoardSection? answers, IReadOnlyList<CopperLayer> layers,
        IReadOnlyList<PolygonNm> profile, List<Diagnostic> diagnostics)
    {
        DrillReading reading = DrillReader.Read(file.File.Name, file.File.Bytes, BriefAnswers.FormatFor(file.File.Name, answers));
        return reading.NeedsFormat || reading.IsFormatAssumed
            ? Infer(file, layers, profile, diagnostics) ?? reading
            : reading;
    }

    private static DrillReading? Infer(
        IdentifiedFile file, IReadOnlyList<CopperLayer> layers, IReadOnlyList<PolygonNm> profile, List<Diagnostic> diagnostics)
    {
        PointNm[] pads = [.. layers.SelectMany(layer => layer.Artwork.Objects)
            .Where(painted => painted.Kind == PaintKind.Flash && painted.Polarity == Polarity.Dark)
            .Select(painted => painted.Anchor)];
        BoxNm board = profile.Count > 0
            ? BoxNm.Around(profile.Select(piece => piece.Bounds))
            : BoxNm.Around(layers.Select(layer => layer.Bounds));
        DrillInference inference = DrillFormatInference.Infer(file.File.Name, file.File.Bytes, pads, board);
        SourcePosition where = SourcePosition.WholeFile(file.File.Name);
        DrillReading? inferred = null;
        if (inference.Chosen is { } chosen)
        {
            diagnostics.Add(new Diagnostic(DrillCode.FormatInferred, Severity.Warning, where,
                $"no declared number format; taken as {chosen} because it fits the copper best ({inference.Evidence[0]})",
                "a declared one; a 'drill format' in the brief settles it"));
            DrillReading reading = DrillReader.Read(file.File.Name, file.File.Bytes, chosen);
            inferred = reading with { Format = $"{chosen} (inferred from the copper)" };
        }
        else
        {
            diagnostics.Add(new Diagnostic(DrillCode.FormatNotInferred, Severity.Error, where,
                $"no declared number format, and no reading that clearly fits the copper ({string.Join("; ", inference.Evidence.Take(3))})",
                "a 'drill format' for this file in the brief", AffectsCopper: true));
        }

        diagnostics.AddRange(inference.Evidence.Take(EvidenceListed).Select(score => new Diagnostic(
            DrillCode.FormatEvidence, Severity.Note, where, $"the number format {score}", DrillInference.Rule)));
        return inferred;
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
