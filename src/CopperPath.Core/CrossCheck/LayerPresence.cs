using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Reading.BoardFiles;

namespace CopperPath.CrossCheck;

/// <summary>Layers that are there and empty, and layers that other files speak of and that are not there.</summary>
internal static class LayerPresence
{
    public static IEnumerable<Diagnostic> Run(FabricationSet set)
    {
        foreach (CopperLayer layer in set.Layers.Where(layer => layer.Islands.Count == 0))
        {
            yield return SetRemark.Doubt(SetCode.EmptyLayer, layer.File,
                $"no copper at all on layer {layer.Number}", "copper on every copper layer: the file may be cut short");
        }

        int count = set.Layers.Count;
        if (count > 1 && count % 2 == 1 && !IsCountStated(set.Identified))
        {
            yield return SetRemark.Doubt(SetCode.LayersMissing, set.Path,
                $"{count} copper layers, a number that no file states",
                "an even number, since boards are pressed from cores with copper on both faces (common practice): a layer may be missing");
        }

        if (count == 1 && set.Identified.OfRole(FileRole.SolderMaskBottom).FirstOrDefault() is { } mask
            && set.Masks.Any(openings => !openings.IsTop && openings.Artwork.Objects.Count > 0))
        {
            yield return SetRemark.Doubt(SetCode.LayersMissing, mask.File.Name,
                $"openings in the solder mask of the bottom, and a single copper layer", "a copper file for the bottom");
        }

        if (count > 1 && set.Nets.Holes.Count == 0)
        {
            yield return SetRemark.Doubt(SetCode.NoHoles, set.Path,
                $"{count} copper layers and not one hole", "a drill file: copper of several layers is joined by plated holes");
        }
    }

    /// <summary>Whether a file says how many layers there are: the bottom by its number, or the job file.</summary>
    private static bool IsCountStated(BoardIdentification identified) => identified.Job?.CopperLayerCount is not null
        || identified.Copper.Any(file => file.CopperLayer == identified.CopperLayerCount && file.Evidence is Evidence.Declared or Evidence.Override);
}
