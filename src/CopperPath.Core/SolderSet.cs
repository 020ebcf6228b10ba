using CopperPath.Brief;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Polygons;
using CopperPath.Quantities;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Gerber;
using FileRole = CopperPath.Reading.BoardFiles.FileRole;

namespace CopperPath;

/// <summary>
/// Solder on exposed copper, where the brief counts on it: the openings of the mask files of both faces. Mask files are
/// drawn as openings, whatever they declare (common practice, no source).
/// </summary>
internal static class SolderSet
{
    /// <param name="stackup">What the brief says of the solder.</param>
    /// <param name="board">The board's files and layers.</param>
    /// <param name="diagnostics">Told what the mask files made the reader say, and when there is no mask file.</param>
    /// <returns>The coat, or null where the brief asks for none, and what was assumed.</returns>
    public static (SolderCoat? Coat, IReadOnlyList<string> Assumed) Read(
        StackupSection stackup, Board board, List<Diagnostic> diagnostics)
    {
        if (stackup.SolderM is not { } thicknessM)
        {
            return (null, []);
        }

        List<(int, IReadOnlyList<PolygonNm>)> openings = [];
        ImageBudget images = new();
        GerberReadOptions options = GerberReadOptions.Default with { Budget = images };
        foreach ((FileRole role, int layer) in new[] { (FileRole.SolderMaskTop, 1), (FileRole.SolderMaskBottom, board.Nets!.Layers[^1].Number) })
        {
            foreach (IdentifiedFile file in board.Files.Where(file => file.Role == role))
            {
                GerberReading reading = GerberReader.Read(file.File.Name, file.File.Bytes, options);
                diagnostics.AddRange(reading.Diagnostics.Select(diagnostic => diagnostic with { AffectsCopper = false }));
                if (reading.Artwork is { } artwork)
                {
                    try
                    {
                        openings.Add((layer, CopperBuilder.Painted(artwork)));
                    }
                    catch (EntangledOutlinesException entangled)
                    {
                        diagnostics.Add(CopperBuilder.Entangled(artwork, entangled));
                    }
                }
            }
        }

        if (images.IsSpent)
        {
            diagnostics.Add(images.Refusal(stackup.Position.File));
            return (null, []);
        }

        if (openings.Count == 0)
        {
            diagnostics.Add(new Diagnostic("SLD001", Severity.Warning, stackup.Position,
                "solder on exposed copper, and no solder mask file on the board", "a mask file that says where copper is exposed; no solder was counted"));
            return (null, []);
        }

        string alloy = stackup.SolderAlloy == SolderAlloy.TinLead ? "tin-lead" : "tin-silver-copper";
        double resistivityOhmM = SolderMaterial.ResistivityOhmM(stackup.SolderAlloy);
        return (new SolderCoat(thicknessM, resistivityOhmM, openings),
        [
            $"Solder: {QuantityText.Length(thicknessM)} of {alloy} ({QuantityText.Resistivity(resistivityOhmM)} at any temperature, from memory) "
                + "on all copper in the openings of the mask, conducting beside it.",
        ]);
    }
}
