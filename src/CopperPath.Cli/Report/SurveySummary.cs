using CopperPath.Copper;
using CopperPath.Nets;
using CopperPath.Quantities;
using CopperPath.Reading.BoardFiles;

namespace CopperPath.Cli.Report;

/// <summary>What a folder holds, for the person at the terminal.</summary>
public static class SurveySummary
{
    private const int PartsListed = 6;

    public static void Write(Terminal terminal, Board board, int netCount)
    {
        TextWriter writer = terminal.Out;
        WriteFiles(terminal, board);
        if (board.Nets is not { } nets)
        {
            writer.WriteLine("No copper layer could be read.");
            return;
        }

        writer.WriteLine();
        writer.WriteLine($"Board {QuantityText.Length(board.Bounds.WidthNm * 1e-9)} x {QuantityText.Length(board.Bounds.HeightNm * 1e-9)}"
            + (board.Profile.Count > 0 ? ", from its profile" : ", from the extent of its copper: no profile was read"));
        foreach (CopperLayer layer in nets.Layers)
        {
            writer.WriteLine(FormattableString.Invariant(
                $"  layer {layer.Number}: {layer.Islands.Count} pieces, {QuantityText.Area(layer.AreaM2)}  ({layer.File})"));
        }

        writer.WriteLine();
        foreach (string format in board.DrillFormats)
        {
            writer.WriteLine($"Drill numbers: {format}");
        }

        writer.WriteLine(FormattableString.Invariant(
            $"Holes: {board.HoleCount}; {nets.PlatedHoleCount} plated, {nets.PlatedHolesOnAllLayers} of them meet copper on both faces they reach."));
        if (nets.Netlist is { } netlist)
        {
            writer.WriteLine($"Netlist {netlist}.");
        }

        foreach (string assumption in board.Assumptions)
        {
            writer.WriteLine($"Assumed: {assumption}.");
        }

        writer.WriteLine();
        WriteNets(terminal, nets, netCount);
    }

    private static void WriteFiles(Terminal terminal, Board board)
    {
        TextTable table = new(["File", "Taken for", "Known from"], [false, false, false]);
        foreach (IdentifiedFile file in board.Files)
        {
            table.Add([file.File.Name, FileRoleWords.Of(file), $"{file.Evidence.ToString().ToLowerInvariant()}: {file.Reason}"]);
        }

        table.Write(terminal.Out, terminal.Width);
    }

    private static void WriteNets(Terminal terminal, NetList nets, int netCount)
    {
        bool hasGuesses = nets.Nets.Any(net => net.GuessedParts.Count > 0);
        string[] guessHead = hasGuesses ? ["Parts, guessed from placements"] : [];
        TextTable table = new(["Largest nets", "Area", "Layers", "Plated holes", "Pads", .. guessHead], [false, true, false, true, true, .. guessHead.Select(_ => false)]);
        foreach (Net net in nets.Nets.Take(netCount))
        {
            table.Add([
                net.Name + (net.NameIsGenerated ? " (generated name)" : ""),
                QuantityText.Area(net.AreaM2),
                string.Join(" ", net.Sheets.Select(sheet => FormattableString.Invariant($"{sheet.Layer}"))),
                FormattableString.Invariant($"{net.Barrels.Count}"),
                FormattableString.Invariant($"{net.Pads.Count}"),
                .. guessHead.Select(_ => PartsText(net))]);
        }

        table.Write(terminal.Out, terminal.Width);
        if (nets.Nets.Count > netCount)
        {
            terminal.Out.WriteLine(FormattableString.Invariant($"... and {nets.Nets.Count - netCount} smaller ones; --nets lists more."));
        }
    }

    private static string PartsText(Net net) => string.Join(" ", net.GuessedParts.Take(PartsListed))
        + (net.GuessedParts.Count > PartsListed ? " ..." : "");
}
