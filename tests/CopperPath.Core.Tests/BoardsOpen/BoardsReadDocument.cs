using System.Globalization;
using System.Text;
using CopperPath.Artwork;
using CopperPath.Nets;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Gerber;
using FileRole = CopperPath.Reading.BoardFiles.FileRole;

namespace CopperPath.Core.Tests.BoardsOpen;

/// <summary>
/// <c>docs/boards-read.md</c>: a row in its table of holes and a section with a table of files for each board. The
/// parts are made from the boards; the text around them is written by hand.
/// </summary>
internal static class BoardsReadDocument
{
    private static readonly string s_path = Path.Combine(SharedData.ProjectRoot, "docs", "boards-read.md");

    public static string Text => File.ReadAllText(s_path).ReplaceLineEndings("\n");

    /// <summary>Counts of holes for the table at the head of the document.</summary>
    public static string HoleRow(string name, Board board)
    {
        HoleLanding[] plated = [.. board.Nets!.Holes.Where(hole => hole.IsPlated)];
        int[] counts =
        [
            board.Nets.Layers.Count,
            board.Nets.Holes.Count,
            board.Nets.Holes.Count(hole => !hole.IsPlated),
            board.Nets.Holes.Count(hole => !hole.IsPlated && hole.MeetsCopper),
            board.Nets.Holes.Count(hole => hole.IsInferred),
            plated.Length,
            plated.Count(hole => hole.Layers.All(layer => layer.IsWhole)),
            plated.Count(hole => hole.IsSound && !hole.Layers.All(layer => layer.IsWhole)),
            plated.Count(hole => !hole.IsSound),
        ];
        return $"| {name} | {string.Join(" | ", counts.Select(count => count.ToString(CultureInfo.InvariantCulture)))} |";
    }

    /// <summary>The section on one board: its files, and the plated holes with a broken ring.</summary>
    public static string Section(string name, Board board)
    {
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"### {name}\n\n| file | read as | known from | content |\n|---|---|---|---|\n");
        foreach (IdentifiedFile file in board.Files.Where(IsLayer).OrderBy(file => file.Role).ThenBy(file => file.CopperLayer)
            .ThenBy(file => file.File.Name, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture,
                $"| `{file.File.Name}` | {RoleOf(file)} | {file.Evidence.ToString().ToLowerInvariant()}: {file.Reason.Replace("|", "\\|", StringComparison.Ordinal)} | {ContentOf(file, board)} |\n");
        }

        string[] rest = [.. board.Files.Where(file => !IsLayer(file)).Select(file => $"`{file.File.Name}` ({RoleOf(file)})")];
        text.Append(CultureInfo.InvariantCulture, $"\nOther files: {string.Join(", ", rest)}.\n");
        HoleLanding[] broken = [.. board.Nets!.Holes.Where(hole => hole.IsPlated && !hole.IsSound)];
        text.Append(broken.Length > 0 ? "\nPlated holes with a broken ring:\n\n" : "");
        foreach (HoleLanding hole in broken)
        {
            text.Append(CultureInfo.InvariantCulture, $"- {Described(hole)}\n");
        }

        return text.Append('\n').ToString();
    }

    /// <summary>Puts the parts of one board into the document in place of the old ones.</summary>
    public static void Replace(string name, string row, string section)
    {
        string[] lines = [.. Text.Split('\n').Select(line => line.StartsWith($"| {name} |", StringComparison.Ordinal) ? row : line)];
        int start = Array.IndexOf(lines, $"### {name}");
        int end = Array.FindIndex(lines, start + 1, line => line.StartsWith('#'));
        IEnumerable<string> after = end < 0 ? [] : lines[end..];
        File.WriteAllText(s_path, string.Join('\n', [.. lines[..start], .. section.TrimEnd('\n').Split('\n'), "", .. after]));
    }

    private static bool IsLayer(IdentifiedFile file) => file.Role is FileRole.Copper or FileRole.Drill or FileRole.Profile
        or FileRole.SolderMaskTop or FileRole.SolderMaskBottom or FileRole.PasteTop or FileRole.PasteBottom;

    private static string RoleOf(IdentifiedFile file) => file.Role switch
    {
        FileRole.Copper => string.Create(CultureInfo.InvariantCulture, $"copper {file.CopperLayer}"),
        FileRole.Drill => file.Plating switch
        {
            Plating.Plated => "drill, plated",
            Plating.NonPlated => "drill, unplated",
            _ => "drill",
        },
        FileRole.SolderMaskTop => "mask top",
        FileRole.SolderMaskBottom => "mask bottom",
        FileRole.PasteTop => "paste top",
        FileRole.PasteBottom => "paste bottom",
        FileRole.LegendTop => "legend top",
        FileRole.LegendBottom => "legend bottom",
        FileRole.JobFile => "job file",
        _ => file.Role.ToString().ToLowerInvariant(),
    };

    private static string ContentOf(IdentifiedFile file, Board board)
    {
        if (file.Role == FileRole.Drill)
        {
            DrillArtwork drill = board.Drills.Single(drill => drill.File == file.File.Name);
            string format = board.DrillFormats.Single(format => format.StartsWith(file.File.Name + ": ", StringComparison.Ordinal));
            int slots = drill.Features.Count(feature => !feature.IsRoundHole);
            return string.Create(CultureInfo.InvariantCulture,
                $"{drill.Features.Count - slots} holes, {slots} slots; {format[(file.File.Name.Length + 2)..]}");
        }

        GerberReading reading = GerberReader.Read(file.File.Name, file.File.Bytes,
            new GerberReadOptions { PurposeIsCopper = file.Role == FileRole.Copper });
        LayerArtwork artwork = reading.Artwork.ShouldNotBeNull(string.Join('\n', reading.Diagnostics));
        string objects = string.Create(CultureInfo.InvariantCulture, $"{artwork.Objects.Count} objects");
        return file.Role switch
        {
            FileRole.Copper => objects + string.Create(CultureInfo.InvariantCulture,
                $", {board.Nets!.Layers.Single(layer => layer.Number == file.CopperLayer).Islands.Count} pieces of copper"),
            FileRole.Profile => objects + (board.Profile.Count > 0 ? ", closes" : ", does not close"),
            _ => objects,
        };
    }

    private static string Described(HoleLanding hole)
    {
        string shares = string.Join(", ", hole.Layers.Select(layer =>
            string.Create(CultureInfo.InvariantCulture, $"{layer.Layer}: {100 * layer.Share:0} %")));
        Geometry.PointNm at = hole.Feature.Path[0];
        return string.Create(CultureInfo.InvariantCulture,
            $"`{hole.Feature.Position}`: {hole.Feature.ToolDiameterNm / 1e6:0.###} mm at {at.X / 1e6:0.###}, {at.Y / 1e6:0.###} mm; copper round its wall on layer {shares}");
    }
}
