namespace CopperPath.DemoBoards.Kit;

/// <summary>A board while it is being drawn: parts, copper, holes and legend.</summary>
public sealed class Board(double widthMm, double heightMm, double cornerMm, int layerCount)
{
    public double WidthMm => widthMm;

    public double HeightMm => heightMm;

    public double CornerMm => cornerMm;

    public int LayerCount => layerCount;

    public List<Pad> Pads { get; } = [];

    public List<Via> Vias { get; } = [];

    public List<Track> Tracks { get; } = [];

    /// <summary>In order of precedence.</summary>
    public List<Pour> Pours { get; } = [];

    public List<Cutout> Cutouts { get; } = [];

    public List<Bore> Bores { get; } = [];

    public List<LegendLine> Legend { get; } = [];

    /// <summary>Places a part; on the bottom side the footprint is mirrored left to right before it is turned.</summary>
    /// <param name="part">Reference designator.</param>
    /// <param name="footprint">Land pattern.</param>
    /// <param name="at">Where the part's origin goes.</param>
    /// <param name="quarterTurns">Counter-clockwise quarter turns.</param>
    /// <param name="netOfPin">Net of each pin.</param>
    /// <param name="layer">1 or <see cref="LayerCount"/>.</param>
    public void Place(string part, Footprint footprint, PointMm at, int quarterTurns, Func<string, string> netOfPin, int layer = 1)
    {
        var mirror = layer == 1 ? 1 : -1;
        foreach (var pad in footprint.Pads)
        {
            var place = at + new PointMm(mirror * pad.X, pad.Y).Turned(quarterTurns);
            Pads.Add(new Pad(
                part, pad.Pin, netOfPin(pad.Pin), layer, place, pad.Shape.Turned(quarterTurns), pad.Use, pad.DrillMm, pad.Relieved));
        }

        PartLegend.Draw(this, part, footprint, at, quarterTurns, layer);
    }

    /// <summary>Places a two-pin part.</summary>
    public void Place(string part, Footprint footprint, PointMm at, int quarterTurns, string firstNet, string secondNet, int layer = 1) =>
        Place(part, footprint, at, quarterTurns, pin => pin == "1" ? firstNet : secondNet, layer);

    public void Track(string net, int layer, double widthMm, params PointMm[] path) => Tracks.Add(new(net, layer, widthMm, path));
}
