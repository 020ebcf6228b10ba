using System.Text.Json;
using System.Text.Json.Nodes;
using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Writing;

/// <summary>Writes the job file that goes with a set of fabrication files: size, build-up and what each file is.</summary>
public static class JobFile
{
    private const double MaskMm = 0.015;

    // A file format that insists on a date, and files that must come out the same on any day.
    private const string FixedDate = "2026-01-05T00:00:00+00:00";

    private static readonly JsonSerializerOptions _indented = new() { WriteIndented = true, NewLine = "\n" };

    public static string Write(Board board, BoardTitle title, IEnumerable<JobEntry> files)
    {
        var job = new JsonObject
        {
            ["Header"] = new JsonObject
            {
                ["GenerationSoftware"] = new JsonObject { ["Vendor"] = "CopperPath", ["Application"] = "DemoBoards", ["Version"] = "1" },
                ["CreationDate"] = FixedDate,
            },
            ["GeneralSpecs"] = new JsonObject
            {
                ["ProjectId"] = new JsonObject { ["Name"] = title.Name, ["GUID"] = title.ProjectGuid, ["Revision"] = title.Revision },
                ["Size"] = new JsonObject { ["X"] = board.WidthMm, ["Y"] = board.HeightMm },
                ["LayerNumber"] = board.LayerCount,
                ["BoardThickness"] = Math.Round(title.CopperMm.Sum() + title.DielectricMm.Sum() + 2 * MaskMm, 3),
                ["Finish"] = "ENIG",
            },
            ["FilesAttributes"] = new JsonArray([.. files.Select(file => (JsonNode)new JsonObject
            {
                ["Path"] = file.Path, ["FileFunction"] = file.Function, ["FilePolarity"] = file.Polarity,
            })]),
            ["MaterialStackup"] = Stackup(title),
        };
        return job.ToJsonString(_indented) + "\n";
    }

    private static JsonArray Stackup(BoardTitle title)
    {
        var stackup = new JsonArray
        {
            Material("Legend", "Top legend", null),
            Material("SolderMask", "Top mask", MaskMm),
        };
        for (var i = 0; i < title.CopperMm.Count; i++)
        {
            stackup.Add(Material("Copper", $"L{i + 1}", title.CopperMm[i]));
            if (i < title.DielectricMm.Count)
            {
                var dielectric = Material("Dielectric", $"L{i + 1}/L{i + 2}", title.DielectricMm[i]);
                dielectric["Material"] = "FR4";
                stackup.Add(dielectric);
            }
        }

        stackup.Add(Material("SolderMask", "Bottom mask", MaskMm));
        stackup.Add(Material("Legend", "Bottom legend", null));
        return stackup;
    }

    private static JsonObject Material(string type, string name, double? thicknessMm)
    {
        var material = new JsonObject { ["Type"] = type, ["Name"] = name };
        if (thicknessMm is { } thickness)
        {
            material["Thickness"] = thickness;
        }

        return material;
    }
}
