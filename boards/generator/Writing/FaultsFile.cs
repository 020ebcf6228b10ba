using System.Text.Json;
using System.Text.Json.Nodes;
using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Writing;

/// <summary>A fault planted on purpose.</summary>
/// <param name="Id">Short name.</param>
/// <param name="Kind">What kind of finding it ought to give.</param>
/// <param name="Net">Net it is in.</param>
/// <param name="Layers">Copper layers it is on.</param>
/// <param name="Area">Where it is, in millimetres.</param>
/// <param name="What">In a sentence.</param>
public sealed record PlantedFault(string Id, string Kind, string Net, IReadOnlyList<int> Layers, Geometry Area, string What);

/// <summary>Writes the list of planted faults for programs to read.</summary>
public static class FaultsFile
{
    private static readonly JsonSerializerOptions _indented = new() { WriteIndented = true, NewLine = "\n" };

    public static string Write(string board, string revision, IEnumerable<PlantedFault> faults)
    {
        var list = faults.Select(fault =>
        {
            var box = fault.Area.EnvelopeInternal;
            return (JsonNode)new JsonObject
            {
                ["id"] = fault.Id,
                ["kind"] = fault.Kind,
                ["net"] = fault.Net,
                ["layers"] = new JsonArray([.. fault.Layers.Select(layer => (JsonNode)layer)]),
                ["x_mm"] = Rounded(box.Centre.X),
                ["y_mm"] = Rounded(box.Centre.Y),
                ["box_mm"] = new JsonObject
                {
                    ["from"] = new JsonArray(Rounded(box.MinX), Rounded(box.MinY)),
                    ["to"] = new JsonArray(Rounded(box.MaxX), Rounded(box.MaxY)),
                },
                ["what"] = fault.What,
            };
        });
        var root = new JsonObject { ["board"] = board, ["revision"] = revision, ["faults"] = new JsonArray([.. list]) };
        return root.ToJsonString(_indented) + "\n";
    }

    private static JsonNode Rounded(double mm) => Math.Round(mm, 3);
}
