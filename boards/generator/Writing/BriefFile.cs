using System.Globalization;
using System.Text;
using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Writing;

/// <summary>Writes the review brief that goes with a set of fabrication files.</summary>
public static class BriefFile
{
    /// <summary>The brief's text.</summary>
    /// <param name="board">The board, for places of pads.</param>
    /// <param name="title">Name and build-up.</param>
    /// <param name="files">Folder of the files, relative to the brief.</param>
    /// <param name="nets">What to review.</param>
    /// <param name="conditions">Lines about surroundings, limits, cooling and converters.</param>
    /// <param name="byName">True to name nets and pins as the attributes in the files do; false to point at pads and holes instead.</param>
    /// <param name="boardKeys">Further lines of the board section, without indentation.</param>
    public static string Write(
        Board board, BoardTitle title, string files, IReadOnlyList<BriefNet> nets, IEnumerable<string> conditions, bool byName, IEnumerable<string> boardKeys)
    {
        var text = new StringBuilder();
        void Line(string line) => text.Append(line).Append('\n');
        Line("# yaml-language-server: $schema=../../docs/brief.schema.json");
        Line("copperpath: 1");
        Line("board:");
        Line($"  name: {title.Name}");
        Line($"  revision: {title.Revision}");
        Line($"  files: {files}");
        foreach (var key in boardKeys)
        {
            Line("  " + key);
        }

        Line("stackup:");
        Line($"  copper: [{List(title.CopperMm.Select(mm => Number(mm * 1000) + " um"))}]");
        Line($"  dielectric: [{List(title.DielectricMm.Select(Length))}]");
        Line("  plating: 25 um");
        foreach (var line in conditions)
        {
            Line(line);
        }

        Line("nets:");
        foreach (var net in nets)
        {
            WriteNet(Line, board, net, byName);
        }

        return text.ToString();
    }

    private static void WriteNet(Action<string> line, Board board, BriefNet net, bool byName)
    {
        line($"  - name: {Quoted(net.Name)}");
        line(byName ? $"    net: {net.Net}" : $"    at: {Place(board, ContactsOf(board, net, net.Terminals[0]).First())}");
        line($"    role: {net.Role}");
        if (net.IsAlternating)
        {
            line("    flow: alternating");
        }

        if (net.Siblings is not null)
        {
            line($"    siblings: {net.Siblings}");
        }

        line("    terminals:");
        foreach (var terminal in net.Terminals)
        {
            line($"      - name: {terminal.Name}");
            line("        " + (byName ? ByName(terminal) : ByPlace(board, net, terminal)));
            line($"        {terminal.Current}");
            if (terminal.IsSpread)
            {
                line("        contact: spread");
            }
        }
    }

    private static string ByName(BriefTerminal terminal) => IsWholePart(terminal)
        ? $"component: {terminal.Contacts[0]}"
        : $"pins: [{List(terminal.Contacts)}]";

    private static string ByPlace(Board board, BriefNet net, BriefTerminal terminal)
    {
        var pads = ContactsOf(board, net, terminal).ToList();
        if (IsWholePart(terminal))
        {
            // A box with half a millimetre to spare around the centres of the part's pads on this net.
            string Corner(double x, double y) => $"[{Length(x)}, {Length(y)}]";
            var from = Corner(pads.Min(pad => pad.At.X) - 0.5, pads.Min(pad => pad.At.Y) - 0.5);
            var to = Corner(pads.Max(pad => pad.At.X) + 0.5, pads.Max(pad => pad.At.Y) + 0.5);
            return $"pads in: {{ layer: {LayerName(board, pads[0])}, from: {from}, to: {to} }}";
        }

        return pads[0].IsDrilled
            ? $"holes: [{List(pads.Select(pad => $"{{ x: {Length(pad.At.X)}, y: {Length(pad.At.Y)} }}"))}]"
            : $"pads: [{List(pads.Select(pad => Place(board, pad)))}]";
    }

    private static IEnumerable<Pad> ContactsOf(Board board, BriefNet net, BriefTerminal terminal) => IsWholePart(terminal)
        ? board.Pads.Where(pad => pad.Part == terminal.Contacts[0] && pad.Net == net.Net)
        : terminal.Contacts.Select(contact => board.Pads.Single(pad => $"{pad.Part}.{pad.Pin}" == contact && pad.Net == net.Net));

    private static bool IsWholePart(BriefTerminal terminal) => terminal.Contacts is [var only] && !only.Contains('.', StringComparison.Ordinal);

    private static string Place(Board board, Pad pad) =>
        $"{{ layer: {LayerName(board, pad)}, x: {Length(pad.At.X)}, y: {Length(pad.At.Y)} }}";

    private static string LayerName(Board board, Pad pad) => pad.Layer == board.LayerCount ? "bottom" : "top";

    private static string Length(double mm) => Number(mm) + " mm";

    private static string Number(double value) => Math.Round(value, 4).ToString("0.####", CultureInfo.InvariantCulture);

    private static string Quoted(string name) => name.Contains(": ", StringComparison.Ordinal) ? $"\"{name}\"" : name;

    private static string List(IEnumerable<string> items) => string.Join(", ", items);
}
