using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Reading.Drill;

namespace CopperPath.Reading.BoardFiles;

/// <summary>
/// Plating and layer span of drill files. Order of trust: the file's function, the job file, marks at the tools,
/// the name, and last the company a file keeps: beside a file of unplated holes, a silent one holds the plated.
/// </summary>
internal static class DrillTraits
{
    public static void Assign(List<FileDossier> dossiers, int layerCount, IdentificationLog log)
    {
        List<FileDossier> drills = dossiers.FindAll(d => d.IsDrill);
        List<FileDossier> silent = [];
        foreach (FileDossier drill in drills)
        {
            AssignSpan(drill, layerCount, log);
            if (drill.Plating == Plating.Unknown && !AssignFromTools(drill) && drill.Evidence != Evidence.Override)
            {
                AssignFromName(drill, log);
                if (drill.Plating == Plating.Unknown)
                {
                    silent.Add(drill);
                }
            }
        }

        FileDossier? unplated = drills.Find(d => d.Plating == Plating.NonPlated);
        bool hasPlated = drills.Exists(d => d.Plating == Plating.Plated);
        if (unplated is not null && !hasPlated && silent.Count == 1)
        {
            silent[0].Plating = Plating.Plated;
            silent[0].Explain($"taken as plated, because {unplated.File.Name} holds the unplated holes");
            Inferred(silent[0], log);
        }
        else
        {
            foreach (FileDossier drill in silent)
            {
                drill.Explain("plating not stated");
            }
        }
    }

    /// <summary>True when the tools settle the matter, be it as mixed.</summary>
    private static bool AssignFromTools(FileDossier drill)
    {
        if (drill.Content != FileContent.Drill)
        {
            return false;
        }

        Plating[] platings = [.. DrillReader.Run(drill.File.Name, drill.File.Bytes, format: null).ToolPlatings.Distinct()];
        if (platings is [Plating.Plated or Plating.NonPlated])
        {
            drill.Plating = platings[0];
            drill.Explain(platings[0] == Plating.Plated ? "all its tools are marked plated" : "all its tools are marked non-plated");
            return true;
        }

        if (platings.Contains(Plating.Plated) || platings.Contains(Plating.NonPlated))
        {
            drill.Explain("plated and unplated holes, marked at the tools");
            return true;
        }

        return false;
    }

    private static void AssignFromName(FileDossier drill, IdentificationLog log)
    {
        drill.Plating = NameClaims.PlatingFromWords(drill.Words);
        if (drill.Plating != Plating.Unknown)
        {
            drill.Explain(drill.Plating == Plating.Plated ? "its name says plated" : "its name says non-plated");
            Inferred(drill, log);
        }
    }

    private static void AssignSpan(FileDossier drill, int layerCount, IdentificationLog log)
    {
        if (drill.Span is null && NameClaims.SpanFromName(drill.File.Name) is { } span && span.LastLayer <= layerCount)
        {
            drill.Span = span;
            drill.Explain(string.Create(CultureInfo.InvariantCulture, $"its name says layers {span.FirstLayer} to {span.LastLayer}"));
            log.Warn(
                BoardSourceCode.PlatingInferred,
                drill.File.Name,
                string.Create(CultureInfo.InvariantCulture, $"layers {span.FirstLayer} to {span.LastLayer} in the name only"),
                "the layers stated in the file",
                affectsCopper: true);
        }
        else if (drill.Span is { } stated && stated.LastLayer > layerCount)
        {
            log.Error(
                BoardSourceCode.LayerNumbers,
                drill.File.Name,
                string.Create(CultureInfo.InvariantCulture, $"holes to copper layer {stated.LastLayer} on a board of {layerCount}"),
                "layers of the board");
        }
    }

    private static void Inferred(FileDossier drill, IdentificationLog log) => log.Warn(
        BoardSourceCode.PlatingInferred,
        drill.File.Name,
        drill.Plating == Plating.Plated ? "holes inferred to be plated" : "holes inferred to be unplated",
        "plating stated in the file");
}
