using CopperPath.DemoBoards.Drawing;

namespace CopperPath.DemoBoards.Writing;

/// <summary>A file of the set: its path, function and polarity as the attributes say them.</summary>
public sealed record JobEntry(string Path, string Function, string Polarity)
{
    public static JobEntry Of(LayerDrawing drawing, int layerCount, string stem)
    {
        var side = drawing.Layer == 1 ? "Top" : drawing.Layer == layerCount ? "Bot" : "Inr";
        return drawing.Subject switch
        {
            Subject.Copper => new(
                $"{stem}-copper-{drawing.Layer}.gbr", $"Copper,L{drawing.Layer},{side}{(side == "Inr" ? ",Plane" : ",Mixed")}", "Positive"),
            Subject.Mask => new($"{stem}-mask-{Word(side)}.gbr", $"Soldermask,{side}", "Negative"),
            Subject.Paste => new($"{stem}-paste-{Word(side)}.gbr", $"Paste,{side}", "Positive"),
            Subject.Legend => new($"{stem}-legend-{Word(side)}.gbr", $"Legend,{side}", "Positive"),
            _ => new($"{stem}-profile.gbr", "Profile,NP", "Positive"),
        };
    }

    public static JobEntry OfHoles(bool plated, int layerCount, string stem) => plated
        ? new($"{stem}-plated.drl", $"Plated,1,{layerCount},PTH,Drill", "Positive")
        : new($"{stem}-nonplated.drl", $"NonPlated,1,{layerCount},NPTH,Drill", "Positive");

    private static string Word(string side) => side == "Top" ? "top" : "bottom";
}
