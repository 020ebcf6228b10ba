using System.Diagnostics;
using System.Globalization;
using System.Reflection;

namespace CopperPath.Benchmarks;

/// <summary>
/// Paints every copper layer of all real boards with the oracle, once, and prints its areas as the table that the
/// tests hold the engine to.
/// </summary>
internal static class OracleAreas
{
    public static void Run(string boards)
    {
        string version = typeof(NetTopologySuite.Geometries.Geometry).Assembly
            .GetCustomAttribute<AssemblyInformationalVersionAttribute>()!.InformationalVersion.Split('+')[0];
        Console.WriteLine($"# Areas of the copper layers of real boards, painted by NetTopologySuite {version} with snap rounding on a grid of");
        Console.WriteLine("# one nanometre (UnaryUnionNG, OverlayNG), from the outlines our readers make of the drawn objects. Made by");
        Console.WriteLine("#     dotnet run -c Release --project tests/CopperPath.Benchmarks -- areas ../shared/boards-open");
        Console.WriteLine("board;file;objects;vertices;runs;not simple;oracle area nm2;oracle polygons;oracle s");
        foreach (RealLayer layer in RealLayer.Of(boards))
        {
            Stopwatch watch = Stopwatch.StartNew();
            var picture = PaintingOracle.Paint(layer.Objects);
            double elapsedS = watch.Elapsed.TotalSeconds;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{layer.Board};{layer.Copper.File};{layer.Objects.Count};{layer.Vertices};{layer.Runs};{PaintingOracle.CountNotSimple(layer.Objects)};{picture.Area:R};{picture.NumGeometries};{elapsedS:F1}"));
        }
    }
}
