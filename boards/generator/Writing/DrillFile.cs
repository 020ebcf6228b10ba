using System.Globalization;
using System.Text;
using CopperPath.DemoBoards.Drawing;

namespace CopperPath.DemoBoards.Writing;

/// <summary>Writes holes as NC drill files.</summary>
public static class DrillFile
{
    /// <summary>A file of the XNC kind: millimetres with decimal points, attributes in comments.</summary>
    public static string WriteXnc(IEnumerable<DrawnHole> holes, int layerCount, bool plated, string projectAttribute)
    {
        var kind = plated ? "Plated" : "NonPlated";
        var cut = plated ? "PTH" : "NPTH";
        var text = new StringBuilder("M48\n");
        text.Append("; #@! TF.GenerationSoftware,CopperPath,DemoBoards,1\n");
        text.Append("; #@! TF.").Append(projectAttribute).Append('\n');
        text.Append(CultureInfo.InvariantCulture, $"; #@! TF.FileFunction,{kind},1,{layerCount},{cut},Drill\n");
        text.Append("METRIC\n");
        var tools = holes.Where(hole => hole.IsPlated == plated)
            .GroupBy(hole => (hole.DiameterMm, hole.Function))
            .OrderBy(tool => tool.Key)
            .ToList();
        for (var i = 0; i < tools.Count; i++)
        {
            text.Append("; #@! TA.AperFunction,").Append(tools[i].Key.Function).Append('\n');
            text.Append(CultureInfo.InvariantCulture, $"T{i + 1:00}C{tools[i].Key.DiameterMm:0.000}\n");
        }

        text.Append("%\nG90\nG05\n");
        for (var i = 0; i < tools.Count; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"T{i + 1:00}\n");
            foreach (var hole in tools[i])
            {
                text.Append(CultureInfo.InvariantCulture, $"X{hole.At.X:0.000000}Y{hole.At.Y:0.000000}\n");
            }
        }

        return text.Append("M30\n").ToString();
    }

    /// <summary>A terse file: inches stated by M72 alone, whole numbers with leading zeros left out, plated and other holes mixed.</summary>
    public static string WriteTerse(IEnumerable<DrawnHole> holes)
    {
        var text = new StringBuilder("M48\nM72\n");
        var tools = holes.GroupBy(hole => hole.DiameterMm).OrderBy(tool => tool.Key).ToList();
        for (var i = 0; i < tools.Count; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"T{i + 1}C{tools[i].Key / 25.4:0.0000}\n");
        }

        text.Append("%\n");
        for (var i = 0; i < tools.Count; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"T{i + 1}\n");
            foreach (var hole in tools[i])
            {
                text.Append(CultureInfo.InvariantCulture, $"X{TenThousandths(hole.At.X)}Y{TenThousandths(hole.At.Y)}\n");
            }
        }

        return text.Append("M30\n").ToString();
    }

    private static long TenThousandths(double mm) => (long)Math.Round(mm / 25.4 * 10_000, MidpointRounding.AwayFromZero);
}
