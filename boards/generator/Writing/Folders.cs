using System.Globalization;
using System.Text;
using CopperPath.DemoBoards.Drawing;
using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Writing;

/// <summary>Writes a board's fabrication files into a folder, once in each dialect.</summary>
public static class Folders
{
    /// <summary>Gerber with attributes, plated and non-plated holes apart, and a job file.</summary>
    public static void WriteExtended2(FilledBoard filled, BoardTitle title, string folder)
    {
        var board = filled.Board;
        var project = $"ProjectId,{title.Name.Replace(' ', '-')},{title.ProjectGuid},{title.Revision}";
        var files = new List<JobEntry>();
        foreach (var drawing in Artwork.LayersOf(filled))
        {
            var entry = JobEntry.Of(drawing, board.LayerCount, title.FileStem);
            files.Add(entry);
            string[] attributes =
            [
                "GenerationSoftware,CopperPath,DemoBoards,1", project, "SameCoordinates,Original",
                $"FileFunction,{entry.Function}", $"FilePolarity,{entry.Polarity}",
            ];
            Save(folder, entry.Path, GerberFile.Write(drawing, GerberDialect.Extended2, attributes));
        }

        foreach (var plated in new[] { true, false })
        {
            var entry = JobEntry.OfHoles(plated, board.LayerCount, title.FileStem);
            files.Add(entry);
            Save(folder, entry.Path, DrillFile.WriteXnc(Artwork.HolesOf(board), board.LayerCount, plated, project));
        }

        Save(folder, $"{title.FileStem}-job.gbrjob", JobFile.Write(board, title, files));
    }

    /// <summary>Gerber without attributes under terse names, and one drill file for all holes.</summary>
    public static void WriteBare(FilledBoard filled, BoardTitle title, string folder)
    {
        foreach (var drawing in Artwork.LayersOf(filled))
        {
            var top = drawing.Layer == 1;
            var extension = drawing.Subject switch
            {
                Subject.Copper when top => "gtl",
                Subject.Copper when drawing.Layer == filled.Board.LayerCount => "gbl",
                Subject.Copper => string.Create(CultureInfo.InvariantCulture, $"g{drawing.Layer}"),
                Subject.Mask => top ? "gts" : "gbs",
                Subject.Paste => top ? "gtp" : "gbp",
                Subject.Legend => top ? "gto" : "gbo",
                _ => "gko",
            };
            Save(folder, $"{title.ShortStem}.{extension}", GerberFile.Write(drawing, GerberDialect.Bare, []));
        }

        Save(folder, $"{title.ShortStem}.txt", DrillFile.WriteTerse(Artwork.HolesOf(filled.Board)));
    }

    public static void Save(string folder, string name, string text)
    {
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, name), text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
    }
}
