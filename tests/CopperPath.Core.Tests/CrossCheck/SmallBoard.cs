using System.Globalization;
using System.Text;

namespace CopperPath.Core.Tests.CrossCheck;

/// <summary>
/// A board of two or four layers as files in memory, small and sound: two connectors with leaded pins, parts on the top,
/// vias beside them, a ground fill or planes with clearances, masks and an outline of 60 by 40 mm. With attributes in
/// the manner of X2, or without and with names by extension.
/// </summary>
public sealed class SmallBoard
{
    private const string Head = "%FSLAX46Y46*%\n%MOMM*%\n%LPD*%\n%ADD10C,1.8*%\n%ADD11C,0.6*%\n%ADD12R,1X0.8*%\n%ADD13C,2.4*%\n%ADD14C,1.1*%\n%ADD15C,0.25*%\n%ADD16C,0.05*%\nG75*\nG01*\n";

    /// <summary>Leaded pins, ground at every other one.</summary>
    private static readonly (double X, double Y)[] Pins = [.. from i in Enumerable.Range(0, 6) from x in new[] { 5.0, 55.0 } select (x, 10 + (3.5 * i))];

    /// <summary>Vias, each beside a pad of a part; ground at every other one of four layers, at all of two.</summary>
    private static readonly (double X, double Y)[] Vias =
        [.. Enumerable.Range(0, 10).Select(i => (14.0 + (3.3 * i), 14.0 + (1.7 * (i % 3)))), .. Enumerable.Range(0, 6).Select(i => (17.3 + (4.1 * i), 27.0 + (0.9 * (i % 4))))];

    private readonly int _layerCount;
    private readonly bool _isDeclared;

    public SmallBoard(int layerCount, bool isDeclared)
    {
        (_layerCount, _isDeclared) = (layerCount, isDeclared);
        for (int layer = 1; layer <= layerCount; layer++)
        {
            string side = layer == 1 ? "Top" : layer == layerCount ? "Bot" : "Inr";
            Files[CopperName(layer)] = Gerber($"Copper,L{layer},{side}", Copper(layer));
        }

        Files[MaskTopName] = Gerber("Soldermask,Top", Openings(isTop: true));
        Files[MaskBottomName] = Gerber("Soldermask,Bot", Openings(isTop: false));
        Files[ProfileName] = Gerber("Profile,NP", Lines(16, (0, 0), (60, 0), (60, 40), (0, 40), (0, 0)));
        StringBuilder drill = new("M48\n");
        drill.Append(isDeclared ? $"; #@! TF.FileFunction,Plated,1,{layerCount},PTH\n" : "").Append("METRIC\nT1C0.9000\nT2C0.3000\n%\nT1\n");
        Pins.ToList().ForEach(pin => drill.Append(CultureInfo.InvariantCulture, $"X{pin.X:0.000}Y{pin.Y:0.000}\n"));
        drill.Append("T2\n");
        Vias.ToList().ForEach(via => drill.Append(CultureInfo.InvariantCulture, $"X{via.X:0.000}Y{via.Y:0.000}\n"));
        Files[DrillName] = drill.Append("M30\n").ToString();
    }

    public SortedDictionary<string, string> Files { get; } = new(StringComparer.Ordinal);

    public string DrillName => _isDeclared ? "board-plated.drl" : "board.txt";

    public string ProfileName => _isDeclared ? "board-profile.gbr" : "board.gko";

    public string MaskTopName => _isDeclared ? "board-mask-top.gbr" : "board.gts";

    public string MaskBottomName => _isDeclared ? "board-mask-bottom.gbr" : "board.gbs";

    public string CopperName(int layer) => _isDeclared ? $"board-copper-{layer}.gbr"
        : layer == 1 ? "board.gtl" : layer == _layerCount ? "board.gbl" : $"board.g{layer}";

    private string Gerber(string function, string drawing) => (_isDeclared ? $"%TF.FileFunction,{function}*%\n" : "") + Head + drawing + "M02*\n";

    private string Copper(int layer)
    {
        StringBuilder text = new();
        if (layer > 1 && (_layerCount == 2 || layer is 2 or 3))
        {
            // A plane that keeps clear of the holes of the other side: ground on layer 2, supply on layer 3.
            int kept = layer == 3 ? 1 : 0;
            text.Append("G36*\n").Append(Points((1, 1), (59, 1), (59, 39), (1, 39), (1, 1))).Append("G37*\n%LPC*%\n");
            text.Append(Flashes(13, Pins.Where((_, i) => i / 2 % 2 != kept))).Append(Flashes(14, Vias.Where((_, i) => _layerCount == 4 && i % 2 != kept))).Append("%LPD*%\n");
        }

        text.Append(Flashes(10, Pins)).Append(Flashes(11, Vias));
        if (layer == 1)
        {
            for (int i = 0; i < Vias.Length; i++)
            {
                (double x, double y) = Vias[i];
                text.Append(Flashes(12, [(x + 1.2, y + 0.3)])).Append(Lines(15, (x, y), (x + 1.2, y + 0.3)));
            }
        }
        else if (layer == _layerCount)
        {
            // One track: the other vias of the supply end at its plane.
            text.Append(_layerCount == 4 ? Lines(15, Vias[^1], Vias[^3]) : "");
        }

        return text.ToString();
    }

    private static string Openings(bool isTop) => Flashes(10, Pins) + (isTop ? Flashes(12, Vias.Select(via => (via.X + 1.2, via.Y + 0.3))) : "");

    private static string Flashes(int aperture, IEnumerable<(double X, double Y)> places) =>
        $"D{aperture}*\n" + string.Concat(places.Select(place => $"{At(place)}D03*\n"));

    private static string Lines(int aperture, params (double, double)[] places) => $"D{aperture}*\n" + Points(places);

    private static string Points(params (double, double)[] places) =>
        string.Concat(places.Select((place, i) => $"{At(place)}D0{(i == 0 ? 2 : 1)}*\n"));

    private static string At((double X, double Y) place) =>
        string.Create(CultureInfo.InvariantCulture, $"X{Math.Round(place.X * 1e6):0}Y{Math.Round(place.Y * 1e6):0}");
}
