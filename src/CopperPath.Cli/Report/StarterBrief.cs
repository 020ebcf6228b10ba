using System.Globalization;
using System.Text;
using CopperPath.Nets;
using CopperPath.OutsideText;
using CopperPath.PowerPath;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>A brief to start from: what the files told is filled in, what only a person knows is asked for in comments.</summary>
public static class StarterBrief
{
    private const int NetsOffered = 8;

    /// <param name="board">The surveyed board; it has copper.</param>
    /// <param name="files">Its folder or archive, relative to the brief.</param>
    /// <param name="path">The power path its copper suggests, or null.</param>
    public static byte[] Of(Board board, string files, PathProposal? path)
    {
        StringBuilder text = new();
        int layers = board.Nets!.Layers[^1].Number;
        text.Append("# A review brief to edit. Lines that end in '# ?' hold guesses: replace them by what you know.\n");
        text.Append("copperpath: 1\n");
        text.Append("board:\n  name: Unnamed board  # ?\n");
        text.Append(CultureInfo.InvariantCulture, $"  files: {YamlScalar.Quoted(files)}\n");
        text.Append("stackup:\n");
        text.Append(CultureInfo.InvariantCulture, $"  copper: [{Repeated("35 um", layers)}]  # ? finished thickness, top to bottom\n");
        if (layers > 1)
        {
            text.Append(CultureInfo.InvariantCulture, $"  dielectric: [{Repeated("0.2 mm", layers - 1)}]  # ? between copper layers, top to bottom\n");
        }

        text.Append("  plating: 20 um  # ? wall of plated holes\n");
        text.Append("ambient: 40 degC  # ?\n");
        text.Append("limits:\n  temperature rise: 20 K  # ?\n  voltage drop: 50 mV  # ?\n");
        text.Append("# One entry for each stretch of copper to review. The largest nets found here are:\n");
        foreach (Net net in board.Nets.Nets.Take(NetsOffered))
        {
            string pins = string.Join(", ", net.Pads.Select(pad => pad.Pin?.Text)
                .OfType<string>().Distinct().Take(NetsOffered));
            text.Append(CultureInfo.InvariantCulture, $"#   {VisibleText.Of(net.Name)}: {QuantityText.Area(net.AreaM2)}, {net.Barrels.Count} plated holes");
            string parts = string.Join(", ", net.GuessedParts.Take(NetsOffered));
            text.Append(pins.Length > 0 ? $", pins {VisibleText.Of(pins)}\n" : parts.Length > 0 ? $", probably at {VisibleText.Of(parts)} (guessed from the placements)\n" : "\n");
        }

        if (path is not null)
        {
            text.Append(ProposedStretches.Of(path, layers));
        }

        Net first = board.Nets.Nets[0];
        text.Append("nets:\n");
        text.Append(CultureInfo.InvariantCulture, $"  - name: First stretch  # ?\n    net: {YamlScalar.Quoted(first.Name)}\n    role: other  # feed, input, switch node, output, return\n");
        text.Append("    terminals:\n");
        text.Append(CultureInfo.InvariantCulture, $"      - name: source  # ?\n        {PlaceOf(first, 0)}  # ?\n        enters: 1 A  # ?\n");
        text.Append(CultureInfo.InvariantCulture, $"      - name: load  # ?\n        {PlaceOf(first, 1)}  # ?\n        takes: rest\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string PlaceOf(Net net, int which)
    {
        List<Pad> pinned = [.. net.Pads.Where(pad => pad.Pin is not null).DistinctBy(pad => (pad.Pin!.Component, pad.Pin.Pin))];
        if (pinned.Count > 1)
        {
            return $"pins: [{YamlScalar.Quoted(FirstOrLast(pinned, which).Pin!.Text)}]";
        }

        if (net.GuessedParts is [var firstPart, .., var lastPart])
        {
            return $"component: {YamlScalar.Quoted(which == 0 ? firstPart : lastPart)}";
        }

        (int layer, Geometry.PointNm at) = net.Pads.Count > 1
            ? (FirstOrLast(net.Pads, which).Layer, FirstOrLast(net.Pads, which).At)
            : (net.Sheets[0].Layer, net.Sheets[0].Islands[0].Outer[which]);
        return FormattableString.Invariant($"circle: {{ layer: {layer}, x: {at.X / 1e6:0.####} mm, y: {at.Y / 1e6:0.####} mm, diameter: 1 mm }}");
    }

    private static Pad FirstOrLast(IReadOnlyList<Pad> pads, int which) => which == 0 ? pads[0] : pads[^1];

    private static string Repeated(string text, int count) => string.Join(", ", Enumerable.Repeat(text, count));
}
