using CopperPath.Copper;
using CopperPath.Nets;

namespace CopperPath.Benchmarks;

/// <summary>A whole board from drawn objects to copper, and from copper to nets.</summary>
internal static class Rebuilding
{
    /// <param name="boards">Folder of the real boards.</param>
    /// <param name="names">Boards to measure.</param>
    /// <param name="turns">How often.</param>
    public static void Run(string boards, IEnumerable<string> names, int turns)
    {
        Console.WriteLine($"Medians of {turns} turns; {Environment.ProcessorCount} cores");
        Console.WriteLine("| Board | Layers | Objects | Copper, CPU s | Elapsed s | Nets, CPU s | Elapsed s |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- |");
        foreach (string name in names)
        {
            Board board = Analysis.Survey(Path.Combine(boards, name)).Board;
            IReadOnlyList<CopperLayer> layers = board.Nets!.Layers;
            List<Cost> copper = [], nets = [];
            for (int turn = 0; turn < turns; turn++)
            {
                copper.Add(Cost.Of(() => Parallel.ForEach(layers, layer => CopperBuilder.Build(layer.Number, layer.Artwork, board.Profile))));
                nets.Add(Cost.Of(() => NetFinder.Find(layers, board.Drills)));
            }

            (Cost c, Cost n) = (Cost.MedianOf(copper), Cost.MedianOf(nets));
            Console.WriteLine(FormattableString.Invariant(
                $"| {name} | {layers.Count} | {layers.Sum(layer => layer.Artwork.Objects.Count)} | {c.CpuS:F2} | {c.WallS:F2} | {n.CpuS:F2} | {n.WallS:F2} |"));
        }
    }
}
