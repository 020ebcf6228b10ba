using System.Globalization;
using System.Text;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Core.Tests.Fuzzing;

/// <summary>
/// A board of 30 by 20 mm with a feed, an output and a return, small enough that a whole review takes some tens of
/// milliseconds, written as the files of a folder. Nothing on it is symmetric: no mirrored or turned file fits its place.
/// </summary>
/// <param name="layerCount">2 or 4 copper layers.</param>
/// <param name="withAttributes">
/// True for files that say what they are, and name nets and pins; false for files known by their names alone.
/// </param>
internal sealed class SmallBoard(int layerCount, bool withAttributes)
{
    public const double WidthMm = 30;
    public const double HeightMm = 20;

    private static readonly (string Net, string Pin, double X, double Y)[] Pins =
    [
        ("VIN", "J1.1", 3, 7), ("VIN", "J1.2", 3, 10.5), ("GND", "J1.3", 3, 15), ("VOUT", "J2.1", 26.5, 4), ("VOUT", "J2.2", 26.5, 7),
        ("GND", "J2.3", 26.5, 16),
    ];

    private static readonly (string Net, double X, double Y)[] Vias =
    [
        ("VIN", 9, 7.5), ("VIN", 9, 8.5), ("VIN", 9, 9.5), ("VIN", 10, 7.5), ("VIN", 10, 8.5), ("VIN", 10, 9.5), ("VOUT", 20, 4), ("VOUT", 21, 4),
        ("VOUT", 20, 5.5), ("VOUT", 21, 5.5), ("GND", 7, 15), ("GND", 14, 15.5), ("GND", 20.5, 15), ("GND", 23, 16.5),
    ];

    private static readonly (double X, double Y)[] MountingHoles = [(1.5, 18.2), (28.4, 1.6)];

    /// <summary>The files by name, and the brief beside them.</summary>
    public SortedDictionary<string, byte[]> Files()
    {
        SortedDictionary<string, string> texts = new(StringComparer.Ordinal);
        for (int layer = 1; layer <= layerCount; layer++)
        {
            texts[CopperName(layer)] = Gerber($"Copper,L{layer},{(layer == 1 ? "Top" : layer == layerCount ? "Bot" : "Inr")}", Copper(layer));
        }

        texts["board.gko"] = Gerber("Profile,NP", Stroke(0.1, (0, 0), (WidthMm, 0), (WidthMm, HeightMm), (0, HeightMm), (0, 0)));
        texts["board.gts"] = Gerber("Soldermask,Top", Openings(top: true));
        texts["board.gbs"] = Gerber("Soldermask,Bot", Openings(top: false));
        texts["board-pth.drl"] = Drill("Plated", "PTH", [.. Vias.Select(via => (0.3, via.X, via.Y)), .. Pins.Select(pin => (1.0, pin.X, pin.Y))]);
        texts["board-npth.drl"] = Drill("NonPlated", "NPTH", [.. MountingHoles.Select(hole => (2.2, hole.X, hole.Y))]);
        texts["readme.txt"] = "Two ounces throughout; green mask; X1 and Y2 are not fitted.\n";
        if (withAttributes)
        {
            texts["board.gbrjob"] = JobFile();
        }

        SortedDictionary<string, byte[]> files = new(StringComparer.Ordinal);
        foreach ((string name, string text) in texts)
        {
            files[name] = Encoding.ASCII.GetBytes(text);
        }

        return files;
    }

    /// <summary>The brief of a review that the board passes; it finds the files in the folder beside it.</summary>
    public string Brief(string folder) => FormattableString.Invariant($"""
        copperpath: 1
        board: {'{'} name: Small, files: {folder} {'}'}
        stackup:
          copper: [{string.Join(", ", Enumerable.Repeat("70 um", layerCount))}]
          dielectric: [{string.Join(", ", Enumerable.Repeat("0.4 mm", layerCount - 1))}]
          plating: 25 um
        ambient: 40 degC
        accuracy: 5 %
        limits: {'{'} temperature rise: 20 K, voltage drop: 20 mV {'}'}
        thermal: {'{'} cell: 2 mm, top: {'{'} film: 12 W/m2K {'}'}, bottom: {'{'} film: 12 W/m2K {'}'} {'}'}
        nets:
        {Stretch("Feed", "VIN", "feed", "top, x: 6 mm, y: 9 mm", "J1.1 J1.2", "bottom, from: [13.6 mm, 7.5 mm], to: [15 mm, 10.5 mm]")}
        {Stretch("Output", "VOUT", "output", "top, x: 23 mm, y: 3 mm", "J2.1 J2.2", "top, from: [16.2 mm, 3.5 mm], to: [18 mm, 6.5 mm]")}
        {Stretch("Return", "GND", "return", "top, x: 12 mm, y: 17 mm", "J1.3", "top, from: [24.6 mm, 15 mm], to: [25 mm, 17 mm]")}
        """);

    /// <summary>Name of the file of a copper layer, 1 = top.</summary>
    public string CopperName(int layer) => layer == 1 ? "board.gtl" : layer == layerCount ? "board.gbl" : $"board.g{layer - 1}";

    private string Stretch(string name, string net, string role, string at, string pins, string load)
    {
        string selector = withAttributes ? $"net: {net}" : $"at: {{ layer: {at} }}";
        IEnumerable<string> contacts = pins.Split(' ').Select(pin =>
        {
            (_, _, double x, double y) = Pins.Single(known => known.Pin == pin);
            return FormattableString.Invariant($"{{ x: {x} mm, y: {y} mm }}");
        });
        string source = withAttributes ? $"pins: [{pins.Replace(" ", ", ", StringComparison.Ordinal)}]" : $"holes: [{string.Join(", ", contacts)}]";
        return $$"""
              - name: {{name}}
                {{selector}}
                role: {{role}}
                terminals:
                  - { name: connector, {{source}}, enters: 3 A }
                  - { name: load, rectangle: { layer: {{load}} }, takes: rest }
            """;
    }

    private string Copper(int layer)
    {
        StringBuilder text = new();
        switch (layer)
        {
            case 1:
                text.Append(Net("VIN")).Append(Rectangle(2, 6, 11, 11.4)).Append(Net("VOUT")).Append(Rectangle(16, 2.5, 27.5, 8))
                    .Append(Net("GND")).Append(Rectangle(2, 13, 27.5, 18.2));
                text.Append(Net("SENSE")).Append(Stroke(0.25, (12.4, 9.2), (14.5, 11.3), (22, 11.3), (24, 9.9)));
                break;
            case 2 when layerCount == 4:
                text.Append(Net("GND")).Append(Rectangle(0.6, 0.6, 29.4, 19.4)).Append("%LPC*%\n");
                foreach ((double x, double y) in Holes().Where(hole => hole.Net != "GND").Select(hole => (hole.X, hole.Y)).Concat(MountingHoles))
                {
                    text.Append(Flash(MountingHoles.Contains((x, y)) ? 3.2 : Vias.Any(via => via.X == x && via.Y == y) ? 0.9 : 1.9, x, y));
                }

                text.Append("%LPD*%\n");
                break;
            case 3:
                text.Append(Net("VOUT")).Append(Rectangle(17, 1.2, 27, 9)).Append(Net("GND")).Append(Rectangle(1, 13.5, 27.6, 17.8));
                break;
            default:
                text.Append(Net("VIN")).Append(Rectangle(8, 6.4, 15.4, 11.8)).Append(Net("GND")).Append(Rectangle(1, 13.4, 28.2, 17.6));
                if (layerCount == 2)
                {
                    text.Append(Net("VOUT")).Append(Rectangle(19.2, 3.3, 25, 6.2));
                }

                break;
        }

        // Holes of a plane already lie in it or in its clearances.
        return layer == 2 && layerCount == 4 ? text.ToString() : text.Append(Lands(layer)).ToString();
    }

    private string Lands(int layer)
    {
        StringBuilder text = new();
        foreach ((string net, double x, double y) in Vias)
        {
            text.Append(Net(net)).Append(Flash(0.6, x, y));
        }

        foreach ((string net, string pin, double x, double y) in Pins)
        {
            bool namesPin = withAttributes && layer is 1;
            text.Append(Net(net)).Append(namesPin ? $"%TO.P,{pin.Replace('.', ',')}*%\n" : "").Append(Flash(1.6, x, y)).Append(namesPin ? "%TD.P*%\n" : "");
        }

        return text.ToString();
    }

    private static string Openings(bool top)
    {
        StringBuilder text = new();
        foreach ((_, _, double x, double y) in Pins)
        {
            text.Append(Flash(1.8, x, y));
        }

        return text.Append(top ? Rectangle(16.2, 3.5, 18, 6.5) : Rectangle(13.6, 7.5, 15, 10.5)).ToString();
    }

    private static IEnumerable<(string Net, double X, double Y)> Holes() => Vias.Concat(Pins.Select(pin => (pin.Net, pin.X, pin.Y)));

    private string Gerber(string function, string body) => (withAttributes ? $"%TF.FileFunction,{function}*%\n%TF.FilePolarity,Positive*%\n" : "")
        + "%FSLAX46Y46*%\n%MOMM*%\n"
        + string.Concat(new[] { 0.1, 0.25, 0.6, 0.9, 1.6, 1.8, 1.9, 3.2 }.Select(mm => FormattableString.Invariant($"%ADD{Code(mm)}C,{mm:0.000000}*%\n")))
        + "G01*\nG75*\n%LPD*%\n" + body + "M02*\n";

    private string Drill(string plating, string kind, (double Diameter, double X, double Y)[] holes)
    {
        double[] tools = [.. holes.Select(hole => hole.Diameter).Distinct()];
        StringBuilder text = new("M48\n");
        text.Append(withAttributes ? $"; #@! TF.FileFunction,{plating},1,{layerCount},{kind}\n" : "").Append("METRIC\n");
        for (int i = 0; i < tools.Length; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"T{i + 1}C{tools[i]:0.000}\n");
        }

        text.Append("%\nG90\nG05\n");
        for (int i = 0; i < tools.Length; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"T{i + 1}\n");
            foreach ((_, double x, double y) in holes.Where(hole => hole.Diameter == tools[i]))
            {
                text.Append(CultureInfo.InvariantCulture, $"X{x:0.000}Y{y:0.000}\n");
            }
        }

        return text.Append("T0\nM30\n").ToString();
    }

    private string JobFile()
    {
        IEnumerable<(string File, string Function)> files = Enumerable.Range(1, layerCount)
            .Select(layer => (CopperName(layer), $"Copper,L{layer},{(layer == 1 ? "Top" : layer == layerCount ? "Bot" : "Inr")}"))
            .Append(("board.gko", "Profile,NP"));
        return FormattableString.Invariant(
            $"{{\"Header\":{{}},\"GeneralSpecs\":{{\"Size\":{{\"X\":{WidthMm},\"Y\":{HeightMm}}},\"LayerNumber\":{layerCount}}},\"FilesAttributes\":[\n")
            + string.Join(",\n", files.Select(file => $"{{\"Path\":\"{file.File}\",\"FileFunction\":\"{file.Function}\"}}")) + "\n]}\n";
    }

    private string Net(string name) => withAttributes ? $"%TO.N,{name}*%\n" : "";

    private static string Flash(double diameter, double x, double y) => $"D{Code(diameter)}*\n{SyntheticBoard.At(x, y)}D03*\n";

    private static string Stroke(double width, params (double X, double Y)[] points) => $"D{Code(width)}*\n"
        + string.Concat(points.Select((point, i) => $"{SyntheticBoard.At(point.X, point.Y)}D0{(i == 0 ? 2 : 1)}*\n"));

    private static string Rectangle(double x0, double y0, double x1, double y1) => "G36*\n"
        + string.Concat(new[] { (x0, y0), (x1, y0), (x1, y1), (x0, y1), (x0, y0) }
            .Select((point, i) => $"{SyntheticBoard.At(point.Item1, point.Item2)}D0{(i == 0 ? 2 : 1)}*\n"))
        + "G37*\n";

    /// <summary>Aperture number of a diameter in millimetres: 0.25 is D35.</summary>
    private static int Code(double mm) => 10 + (int)Math.Round(mm * 100);
}
