using System.Globalization;
using System.Text;
using CopperPath.Geometry;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Gallery;

/// <summary>
/// A board written as fabrication files into a folder of its own, so that a test runs the whole path from Gerber
/// text to a resistance. Lengths in millimetres. Disposing removes the folder.
/// </summary>
public sealed class SyntheticBoard : IDisposable
{
    public const double CopperMm = 0.035;
    public const double DielectricMm = 1.5;
    public const double PlatingMm = 0.025;

    private readonly string _folder = Directory.CreateTempSubdirectory("copperpath-test-").FullName;
    private readonly int _layerCount;
    private readonly StringBuilder[] _layers;
    private readonly StringBuilder _drill = new();
    private int _toolCount;

    public SyntheticBoard(int layerCount)
    {
        _layerCount = layerCount;
        _layers = [.. Enumerable.Range(0, layerCount).Select(_ => new StringBuilder())];
    }

    public string Folder => _folder;

    /// <summary>Appends raw Gerber commands to a layer (1 = top); the head declares millimetres with six decimals.</summary>
    public SyntheticBoard Draw(int layer, string commands)
    {
        _layers[layer - 1].Append(commands).Append('\n');
        return this;
    }

    /// <summary>A filled polygon through the corners given.</summary>
    public SyntheticBoard Region(int layer, params (double X, double Y)[] corners)
    {
        StringBuilder text = new("G36*\n");
        for (int i = 0; i <= corners.Length; i++)
        {
            (double x, double y) = corners[i % corners.Length];
            text.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? "" : "G01*")}{At(x, y)}{(i == 0 ? "D02" : "D01")}*\n");
        }

        return Draw(layer, text.Append("G37*").ToString());
    }

    public SyntheticBoard Rectangle(int layer, double x0, double y0, double x1, double y1) =>
        Region(layer, (x0, y0), (x1, y0), (x1, y1), (x0, y1));

    /// <summary>A plated slot (or hole, when both ends are the same).</summary>
    public SyntheticBoard PlatedSlot(double x0, double y0, double x1, double y1, double diameter)
    {
        _drill.Append(CultureInfo.InvariantCulture, $"T{++_toolCount}C{diameter:0.0000}\nX{x0:0.000000}Y{y0:0.000000}");
        _drill.Append(CultureInfo.InvariantCulture, $"{(x0 == x1 && y0 == y1 ? "" : $"G85X{x1:0.000000}Y{y1:0.000000}")}\n");
        return this;
    }

    /// <summary>A plated hole of 0.3 mm with a land of 0.6 mm on every layer, of no net: a board of several layers has holes.</summary>
    public SyntheticBoard SpareHole(double x, double y)
    {
        for (int layer = 1; layer <= _layerCount; layer++)
        {
            Draw(layer, $"%TD*%\n%ADD99C,0.6*%\nD99*\n{At(x, y)}D03*");
        }

        return PlatedSlot(x, y, x, y, 0.3);
    }

    /// <summary>Coordinates as Gerber text with six decimals.</summary>
    public static string At(double x, double y) => string.Create(CultureInfo.InvariantCulture,
        $"X{Math.Round(x * 1e6):0}Y{Math.Round(y * 1e6):0}");

    /// <summary>Writes the files and a brief that reviews one net, and gives the path of the brief.</summary>
    public string WriteBrief(string netAndTerminals)
    {
        for (int layer = 1; layer <= _layerCount; layer++)
        {
            string side = layer == 1 ? "Top" : layer == _layerCount ? "Bot" : "Inr";
            File.WriteAllText(Path.Combine(_folder, $"layer{layer}.gbr"),
                $"%TF.FileFunction,Copper,L{layer},{side}*%\n%FSLAX46Y46*%\n%MOMM*%\nG75*\n%LPD*%\n{_layers[layer - 1]}M02*\n");
        }

        WriteProfile();
        if (_drill.Length > 0)
        {
            File.WriteAllText(Path.Combine(_folder, "plated.drl"),
                $"M48\n; #@! TF.FileFunction,Plated,1,{_layerCount},PTH\nMETRIC\n%\n{_drill}M30\n");
        }

        // A board with one copper layer has nothing between its layers.
        string dielectric = _layerCount == 1 ? "" : $"  dielectric: [{Repeated($"{DielectricMm} mm", _layerCount - 1)}]";
        string brief = Path.Combine(_folder, "brief.yaml");
        File.WriteAllText(brief, string.Create(CultureInfo.InvariantCulture, $"""
            copperpath: 1
            board:
              name: Synthetic
              files: .
            stackup:
              copper: [{Repeated($"{CopperMm * 1000} um", _layerCount)}]
            {dielectric}
              plating: {PlatingMm * 1000} um
            ambient: 20 degC
            conductor temperature: 20 degC
            limits:
              temperature rise: 200 K
            nets:
            {netAndTerminals}
            """));
        return brief;
    }

    /// <summary>A board as large as its copper.</summary>
    private void WriteProfile()
    {
        BoxNm copper = BoxNm.Around(Directory.EnumerateFiles(_folder, "layer*.gbr").Order(StringComparer.Ordinal)
            .Select(file => GerberReader.Read(file, File.ReadAllBytes(file)).Artwork?.Bounds ?? BoxNm.Empty));
        if (!copper.IsEmpty)
        {
            PointNm[] corners = [.. copper.ToRing(), copper.ToRing()[0]];
            string lines = string.Concat(corners.Select((p, i) => FormattableString.Invariant($"X{p.X}Y{p.Y}D0{(i == 0 ? 2 : 1)}*\n")));
            File.WriteAllText(Path.Combine(_folder, "profile.gbr"),
                $"%TF.FileFunction,Profile,NP*%\n%FSLAX46Y46*%\n%MOMM*%\n%ADD10C,0.05*%\nG01*\nD10*\n{lines}M02*\n");
        }
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static string Repeated(FormattableString item, int count) =>
        string.Join(", ", Enumerable.Repeat(FormattableString.Invariant(item), count));
}
