using CopperPath.Artwork;
using CopperPath.Brief;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Drill;
using FileRole = CopperPath.Reading.BoardFiles.FileRole;

namespace CopperPath;

/// <summary>The brief's words about files, in the terms of the readers.</summary>
internal static class BriefAnswers
{
    public static IReadOnlyList<RoleOverride> RolesOf(BoardSection? answers) =>
        [.. (answers?.Layers ?? []).Select(answer => new RoleOverride(
            answer.File, RoleOf(answer.Role), answer.Number ?? 0, PlatingOf(answer.Role)))];

    public static DrillFormat? FormatFor(string file, BoardSection? answers) =>
        answers?.DrillFormats.FirstOrDefault(answer => answer.File == file) is { } format
            ? new DrillFormat(
                format.Unit == Brief.DrillUnit.Inch ? Reading.Drill.DrillUnit.Inch : Reading.Drill.DrillUnit.Millimetre,
                format.Zeros == Brief.OmittedZeros.Leading ? Reading.Drill.OmittedZeros.Leading : Reading.Drill.OmittedZeros.Trailing,
                format.IntegerDigits, format.DecimalDigits)
            : null;

    /// <summary>Whether the brief says that a file draws absent copper; null when it says nothing.</summary>
    public static bool? IsNegative(string file, BoardSection? answers) =>
        answers?.Layers.FirstOrDefault(answer => answer.File == file)?.Polarity is { } polarity ? polarity == DrawingPolarity.Negative : null;

    public static IReadOnlySet<string> FilesOfStatedPolarity(BoardSection? answers) =>
        (answers?.Layers ?? []).Where(answer => answer.Polarity is not null).Select(answer => answer.File).ToHashSet(StringComparer.Ordinal);

    private static FileRole RoleOf(Brief.FileRole role) => role switch
    {
        Brief.FileRole.Copper => FileRole.Copper,
        Brief.FileRole.DrillPlated or Brief.FileRole.DrillNonPlated or Brief.FileRole.DrillMixed => FileRole.Drill,
        Brief.FileRole.Profile => FileRole.Profile,
        Brief.FileRole.MaskTop => FileRole.SolderMaskTop,
        Brief.FileRole.MaskBottom => FileRole.SolderMaskBottom,
        Brief.FileRole.PasteTop => FileRole.PasteTop,
        Brief.FileRole.PasteBottom => FileRole.PasteBottom,
        Brief.FileRole.LegendTop => FileRole.LegendTop,
        Brief.FileRole.LegendBottom => FileRole.LegendBottom,
        _ => FileRole.Other,
    };

    private static Plating PlatingOf(Brief.FileRole role) => role switch
    {
        Brief.FileRole.DrillPlated => Plating.Plated,
        Brief.FileRole.DrillNonPlated => Plating.NonPlated,
        _ => Plating.Unknown,
    };
}
