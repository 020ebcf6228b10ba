using CopperPath.Artwork;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.OutsideText;

namespace CopperPath.Cli.Report.Starter;

/// <summary>Places on copper as keys of a brief: by the names of the files where they have any, else by coordinates.</summary>
internal sealed class CopperPlace(int layers)
{
    /// <summary>More pads than this are written as the box round them.</summary>
    private const int MostPadsListed = 24;

    /// <summary>Other pins offered, those with the largest pads first.</summary>
    private const int MostCandidates = 8;

    private const long BoxMarginNm = 10_000;

    /// <summary>The key that selects a net, with its value.</summary>
    public string SelectorOf(Net net)
    {
        if (!net.NameIsGenerated)
        {
            return $"net: {YamlScalar.Quoted(net.Name)}";
        }

        (int layer, PointNm at) = net.Pads.Count > 0 ? (net.Pads[0].Layer, net.Pads[0].At) : (net.Sheets[0].Layer, net.Sheets[0].Islands[0].Outer[0]);
        return $"at: {{ layer: {Layer(layer)}, {Point(at)} }}";
    }

    /// <summary>The keys that touch pads of one net, each a blank.</summary>
    /// <param name="net">The net.</param>
    /// <param name="pads">Pads on it.</param>
    /// <param name="because">What speaks for them, or null.</param>
    public IEnumerable<string> KeysOf(Net net, IReadOnlyList<Pad> pads, string? because)
    {
        if (pads.All(pad => pad.Pin is not null))
        {
            yield return KeyOfPins(net, pads, because);
            yield break;
        }

        Pad[] inHoles = [.. pads.Where(pad => IsInHole(net, pad))];
        Pad[] flat = [.. pads.Except(inHoles)];
        if (inHoles.Length > 0)
        {
            yield return $"holes: {BlankText.Of($"[{string.Join(", ", inHoles.Select(pad => pad.At).Distinct().Select(at => $"{{ {Point(at)} }}"))}]", [], because)}";
        }

        if (flat.Length > MostPadsListed && flat.All(pad => pad.Layer == flat[0].Layer))
        {
            BoxNm box = BoxNm.Of(flat.Select(pad => pad.At));
            yield return $"pads in: {BlankText.Of(
                $"{{ layer: {Layer(flat[0].Layer)}, from: {Corner(box.MinX - BoxMarginNm, box.MinY - BoxMarginNm)}, to: {Corner(box.MaxX + BoxMarginNm, box.MaxY + BoxMarginNm)} }}", [], because)}";
        }
        else if (flat.Length > 0)
        {
            yield return $"pads: {BlankText.Of($"[{string.Join(", ", flat.Select(pad => $"{{ layer: {Layer(pad.Layer)}, {Point(pad.At)} }}"))}]", [], because)}";
        }
    }

    /// <summary>A part by its name where all its pins on the net are meant, else the pins.</summary>
    private static string KeyOfPins(Net net, IReadOnlyList<Pad> pads, string? because)
    {
        PinName[] meant = [.. pads.Select(pad => pad.Pin!).DistinctBy(pin => pin.Text)];
        PinName[] others = [.. net.Pads.Where(pad => pad.Pin is not null && meant.All(pin => pin.Text != pad.Pin.Text))
            .OrderByDescending(pad => pad.Outlines.Sum(Ring.SignedAreaNm2)).ThenBy(pad => pad.Pin!.Text, StringComparer.Ordinal)
            .Select(pad => pad.Pin!).DistinctBy(pin => pin.Text)];
        string component = meant[0].Component;
        return meant.Length > 1 && meant.All(pin => pin.Component == component) && others.All(pin => pin.Component != component)
            ? $"component: {BlankText.Of(YamlScalar.Quoted(component), Quoted(others.Select(pin => pin.Component)), because)}"
            : $"pins: {BlankText.Of($"[{string.Join(", ", meant.Select(pin => YamlScalar.Quoted(pin.Text)))}]", Quoted(others.Select(pin => pin.Text)), because)}";
    }

    private static IEnumerable<string> Quoted(IEnumerable<string> names) => names.Distinct().Take(MostCandidates).Select(YamlScalar.Quoted);

    /// <summary>A spot of copper without any pad.</summary>
    public string SpotOf(int layer, PointNm at) => $"circle: {BlankText.Of($"{{ layer: {Layer(layer)}, {Point(at)}, diameter: 1 mm }}", [])}";

    private static bool IsInHole(Net net, Pad pad) => net.Barrels.Any(barrel => barrel.Centre == pad.At);

    private string Layer(int layer) => layer == 1 ? "top" : layer == layers ? "bottom" : FormattableString.Invariant($"{layer}");

    private static string Point(PointNm at) => FormattableString.Invariant($"x: {at.X / 1e6:0.######} mm, y: {at.Y / 1e6:0.######} mm");

    private static string Corner(long xNm, long yNm) => FormattableString.Invariant($"[{xNm / 1e6:0.######} mm, {yNm / 1e6:0.######} mm]");
}
