using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Polygons;

namespace CopperPath.Benchmarks;

/// <summary>A copper layer of a real board: what was drawn and what was rebuilt from it.</summary>
/// <param name="Board">Folder of the board.</param>
/// <param name="Copper">The layer.</param>
internal sealed record RealLayer(string Board, CopperLayer Copper)
{
    /// <summary>The drawn objects in painting order.</summary>
    public IReadOnlyList<PaintedObject> Objects => Copper.Artwork.Objects;

    /// <summary>Corners of all outlines of all objects.</summary>
    public int Vertices { get; } = Copper.Artwork.Objects.Sum(painted => painted.Rings.Sum(ring => ring.Length));

    /// <summary>Runs of objects of one polarity.</summary>
    public int Runs { get; } = RunsOf(Copper.Artwork.Objects).Count();

    public string Name => $"{Board}, {Copper.File}";

    /// <summary>What the engine is given.</summary>
    public IReadOnlyList<PaintStep> Steps() =>
        [.. Objects.Select(painted => new PaintStep(painted.Polarity == Polarity.Dark, painted.Rings, painted.Offset))];

    /// <summary>All copper layers of all boards in a folder, by board and number.</summary>
    public static IEnumerable<RealLayer> Of(string boards)
    {
        foreach (string folder in Directory.EnumerateDirectories(boards).Order(StringComparer.Ordinal))
        {
            if (Analysis.Survey(folder).Board.Nets is { } nets)
            {
                foreach (CopperLayer layer in nets.Layers)
                {
                    yield return new RealLayer(Path.GetFileName(folder), layer);
                }
            }
        }
    }

    /// <summary>Objects that follow each other with one polarity.</summary>
    public static IEnumerable<List<PaintedObject>> RunsOf(IReadOnlyList<PaintedObject> objects)
    {
        List<PaintedObject> run = [];
        foreach (PaintedObject painted in objects)
        {
            if (run.Count > 0 && run[0].Polarity != painted.Polarity)
            {
                yield return run;
                run = [];
            }

            run.Add(painted);
        }

        if (run.Count > 0)
        {
            yield return run;
        }
    }
}
