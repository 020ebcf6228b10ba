using System.Globalization;
using System.Text;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.OutsideText;
using CopperPath.PowerPath;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Starter;

/// <summary>
/// A brief to start from: what the files told is filled in, what only a person knows is a blank with a guess in it. It can be
/// checked as written, and such a check ends in "could not judge" with the list of blanks.
/// </summary>
public static class StarterBrief
{
    private const int NetsOffered = 8;

    /// <summary>A board's usual thickness, and that of the laminate under its outer layers, metres. Common practice, no source.</summary>
    private const double BoardM = 1.6e-3;
    private const double OuterM = 0.2e-3;
    private const double CopperM = 35e-6;

    /// <param name="board">The surveyed board; it has copper.</param>
    /// <param name="files">Its folder or archive, relative to the brief.</param>
    /// <param name="path">The power path its copper suggests, or null.</param>
    public static byte[] Of(Board board, string files, PathProposal? path)
    {
        StringBuilder text = new();
        int layers = board.Nets!.Layers[^1].Number;
        CopperPlace places = new(layers);
        text.Append("# A review brief to be finished. Each { guess: ... } is a blank: put the value you stand behind in its place, such\n");
        text.Append("# as 'ambient: 45 degC'. While blanks are left, 'copperpath check' lists them and judges nothing.\n");
        text.Append("copperpath: 1\n");
        text.Append(CultureInfo.InvariantCulture, $"board:\n  name: {BlankText.Of(YamlScalar.Quoted(NameOf(files)), [])}\n");
        text.Append(CultureInfo.InvariantCulture, $"  files: {YamlScalar.Quoted(files)}\n");
        text.Append(StackupOf(layers));
        text.Append(CultureInfo.InvariantCulture, $"ambient: {BlankText.Of("40 degC", ["25 degC", "40 degC", "55 degC"])}\n");
        text.Append(CultureInfo.InvariantCulture, $"limits:\n  temperature rise: {BlankText.Of("20 K", ["10 K", "20 K", "30 K"])}\n");
        text.Append(CultureInfo.InvariantCulture, $"  voltage drop: {BlankText.Of("50 mV", ["10 mV", "20 mV", "50 mV"])}\n");
        text.Append("# One entry of nets for each stretch of copper to review. The largest nets found here are:\n");
        foreach (Net net in board.Nets.Nets.Take(NetsOffered))
        {
            text.Append(CultureInfo.InvariantCulture, $"#   {YamlScalar.Quoted(net.Name)}: {QuantityText.Area(net.AreaM2)}, {net.Barrels.Count} plated holes\n");
        }

        string? proposed = path is null ? null : ProposedStretches.Of(path, places);
        text.Append(proposed ?? LargestNet(board.Nets.Nets, places));
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string NameOf(string files) => Path.GetFileNameWithoutExtension(Path.TrimEndingDirectorySeparator(files)) is { Length: > 0 } name
        && name.Trim('.').Length > 0 ? name : "Unnamed board";

    private static string StackupOf(int layers)
    {
        string[] even = [.. Enumerable.Repeat("35 um", layers)];
        string[] heavy = [.. even.Select((foil, i) => i == 0 || i == layers - 1 ? "70 um" : foil)];
        string[] thin = [.. even.Select((foil, i) => i == 0 || i == layers - 1 ? foil : "17.5 um")];
        IEnumerable<string> foils = new[] { even, heavy, thin }.Select(List).Distinct();
        string dielectric = layers == 1 ? "" : $"  dielectric: {BlankText.Of(List(GapsOf(layers)), [])}\n";
        return $"stackup:\n  copper: {BlankText.Of(List(even), foils)}\n{dielectric}  plating: {BlankText.Of("20 um", ["18 um", "20 um", "25 um"])}\n";
    }

    /// <summary>Thin laminate between neighbours and the rest of the board in its middle; all alike where there is no rest or no middle.</summary>
    private static string[] GapsOf(int layers)
    {
        int gaps = layers - 1;
        double laminateM = BoardM - (layers * CopperM);
        double middleM = laminateM - ((gaps - 1) * OuterM);
        return [.. Enumerable.Range(0, gaps).Select(gap => gaps % 2 == 0 || middleM < OuterM ? laminateM / gaps : gap == gaps / 2 ? middleM : OuterM)
            .Select(gapM => FormattableString.Invariant($"{gapM * 1e3:0.##} mm"))];
    }

    /// <summary>Where the copper shows no power path, its largest net stands for the stretch to be described.</summary>
    private static string LargestNet(IReadOnlyList<Net> nets, CopperPlace places)
    {
        Net net = nets[0];
        (string from, string to) = EndsOf(net, places);
        return string.Concat(
            $"nets:\n  - name: First stretch\n    {places.SelectorOf(net)}\n",
            $"    role: {BlankText.Of("other", ["feed", "input", "switch node", "output", "return", "other"])}\n",
            $"    terminals:\n      - name: source\n        {from}\n        enters: {BlankText.Of("1 A", ["1 A", "3 A", "10 A"])}\n",
            $"      - name: load\n        {to}\n        takes: rest\n");
    }

    /// <summary>Its first pad and the one farthest from it, or the two ends of its largest piece of copper where it has no two pads.</summary>
    private static (string From, string To) EndsOf(Net net, CopperPlace places)
    {
        if (net.Pads.Count > 0 && net.Pads.MaxBy(pad => pad.At.DistanceNmTo(net.Pads[0].At)) is { } far && far.At != net.Pads[0].At)
        {
            return (places.KeysOf(net, [net.Pads[0]], null).First(), places.KeysOf(net, [far], null).First());
        }

        PointNm[] outline = net.Sheets[0].Islands[0].Outer;
        int layer = net.Sheets[0].Layer;
        return (places.SpotOf(layer, outline[0]), places.SpotOf(layer, outline.MaxBy(point => point.DistanceNmTo(outline[0]))));
    }

    private static string List(IEnumerable<string> items) => $"[{string.Join(", ", items)}]";
}
