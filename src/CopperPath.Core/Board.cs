using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Reading.BoardFiles;

namespace CopperPath;

/// <summary>A board rebuilt from its fabrication files.</summary>
/// <param name="Files">Every file and what it was taken for.</param>
/// <param name="Nets">Nets, layers and their pads; null when no copper could be read.</param>
/// <param name="Profile">Board outline as filled polygons; empty when no profile was read.</param>
/// <param name="Drills">Drill files read.</param>
/// <param name="DrillFormats">How the numbers of each drill file were read, for the report.</param>
/// <param name="Diagnostics">Remarks of all stages, in order.</param>
public sealed record Board(
    IReadOnlyList<IdentifiedFile> Files,
    NetList? Nets,
    IReadOnlyList<PolygonNm> Profile,
    IReadOnlyList<DrillArtwork> Drills,
    IReadOnlyList<string> DrillFormats,
    IReadOnlyList<Diagnostic> Diagnostics)
{
    /// <summary>True when copper may be wrong or missing: such a board never passes a review.</summary>
    public bool CopperIsUncertain => Nets is null || Diagnostics.Any(diagnostic => diagnostic.AffectsCopper);

    /// <summary>Fingerprint of the files that make the board, whatever else lies beside them: a waiver is given for these.</summary>
    public string Fingerprint => CopperPath.Fingerprint.Of(Files
        .Where(file => file.Role is not (FileRole.Other or FileRole.Drawing))
        .Select(file => (file.File.Name, file.File.Bytes)));

    /// <summary>Holes of all drill files.</summary>
    public int HoleCount => Drills.Sum(drill => drill.Features.Count);

    /// <summary>What was taken for granted about the board, one line each.</summary>
    public IReadOnlyList<string> Assumptions =>
    [
        .. (Nets?.Holes ?? []).Where(hole => hole.IsInferred).GroupBy(hole => hole.File)
            .Select(holes => string.Create(CultureInfo.InvariantCulture,
                $"{holes.Key}: plating is not stated; {holes.Count(hole => hole.IsPlated)} holes taken as plated, {holes.Count(hole => !hole.IsPlated)} as unplated and cut from the copper")),
        .. Nets is not null && Profile.Count == 0 ? new[] { "no outline was read; the board ends, and still air takes its size, where its copper ends" } : [],
    ];

    /// <summary>Bounds of the profile, or of the copper where there is none.</summary>
    public BoxNm Bounds => Profile.Count > 0
        ? BoxNm.Around(Profile.Select(piece => piece.Bounds))
        : BoxNm.Around((Nets?.Layers ?? []).Select(layer => layer.Bounds));
}
