using System.Globalization;
using CopperPath.Reading.JobFiles;

namespace CopperPath.Reading.BoardFiles;

/// <summary>Gives every copper file its layer number, 1 = top.</summary>
internal static class CopperOrder
{
    /// <summary>Returns the number of copper layers.</summary>
    public static int Assign(List<FileDossier> dossiers, JobFile? job, IdentificationLog log)
    {
        List<FileDossier> copper = dossiers.FindAll(d => d.IsCopper);
        if (copper.Count == 0)
        {
            log.Error(BoardSourceCode.NoCopper, null, "no copper layer among the files", "at least one copper layer");
            return 0;
        }

        int count = LayerCount(copper, job);
        foreach (FileDossier layer in copper)
        {
            switch (layer.Claim.Place)
            {
                case LayerPlace.Top:
                    layer.PlaceCopper(1, "");
                    break;
                case LayerPlace.Bottom:
                    layer.PlaceCopper(layer.Claim.Number > 0 ? layer.Claim.Number : count, "");
                    break;
                case LayerPlace.Numbered:
                    layer.PlaceCopper(layer.Claim.Number, "");
                    break;
            }
        }

        PlaceInnerNumbered(copper, count, log);
        PlaceByGuess(copper, count, log);
        ReportNamedOrder(copper, log);
        Check(copper, count, log);
        ReportNoBottom(copper, count, log);
        ReportIdentical(copper, log);
        return count;
    }

    /// <summary>
    /// A declared bottom layer or the job file settle the count; otherwise each copper file is one layer, unless a
    /// number goes beyond that.
    /// </summary>
    private static int LayerCount(List<FileDossier> copper, JobFile? job)
    {
        int declared = copper.Where(d => d.Claim is { Place: LayerPlace.Bottom, Number: > 0 }).Select(d => d.Claim.Number).DefaultIfEmpty(0).Max();
        if (declared > 0)
        {
            return declared;
        }

        if (job?.CopperLayerCount is { } stated)
        {
            return stated;
        }

        bool hasOpenBottom = copper.Exists(d => d.Claim.Place == LayerPlace.Bottom);
        int numbered = copper.Where(d => d.Claim.Place == LayerPlace.Numbered).Select(d => d.Claim.Number).DefaultIfEmpty(0).Max();
        return Math.Max(copper.Count, numbered + (hasOpenBottom ? 1 : 0));
    }

    /// <summary>
    /// Names such as g1 or in2 count either the inner layers (g1 is layer 2) or all layers (g2 is layer 2). The
    /// lowest number of the folder decides: nobody starts counting inner layers at two.
    /// </summary>
    private static void PlaceInnerNumbered(List<FileDossier> copper, int count, IdentificationLog log)
    {
        List<FileDossier> inner = copper.FindAll(d => d.Claim.Place == LayerPlace.InnerNumbered);
        if (inner.Count == 0)
        {
            return;
        }

        int lowest = inner.Min(d => d.Claim.Number);
        int highest = inner.Max(d => d.Claim.Number);
        int shift = lowest == 1 ? 1 : 0;
        string rule = lowest == 1
            ? "numbers start at 1, so they count the inner layers"
            : "numbers do not start at 1, so they count all layers";
        foreach (FileDossier layer in inner)
        {
            layer.PlaceCopper(layer.Claim.Number + shift, rule);
        }

        if (highest + shift >= count && copper.Exists(d => d.Claim.Place == LayerPlace.Bottom))
        {
            log.Error(
                BoardSourceCode.LayerNumbers,
                null,
                Text($"inner layers numbered {lowest} to {highest} on a board of {count} copper layers"),
                "consecutive inner numbers, or overrides with the layer of each file");
        }
    }

    private static void PlaceByGuess(List<FileDossier> copper, int count, IdentificationLog log)
    {
        List<FileDossier> named = copper.FindAll(d => d.Claim.Place is LayerPlace.Ground or LayerPlace.Supply or LayerPlace.Signal);
        List<FileDossier> placeless = copper.FindAll(d => d.Claim.Place == LayerPlace.None);
        IReadOnlyList<FileDossier> order =
        [
            .. InnerOrderGuess.Order([.. named.Select(d => (d, d.Claim))]),
            .. placeless,
        ];
        if (order.Count == 0)
        {
            return;
        }

        Queue<int> free = new(Enumerable.Range(2, Math.Max(0, count - 2)).Where(n => copper.TrueForAll(d => d.CopperLayer != n)));
        foreach (FileDossier layer in order)
        {
            layer.PlaceCopper(free.TryDequeue(out int number) ? number : 0, "its place in the stack is a guess");
        }

        log.Warn(
            BoardSourceCode.InnerOrderGuessed,
            null,
            "inner layers whose order is nowhere stated",
            "an override for each; guessed "
                + string.Join(", ", order.Select(d => Text($"{d.CopperLayer} {d.File.Name}")))
                + ": grounds in the order of their numbers, supply planes beside the middle ground, signals between",
            affectsCopper: true);
    }

    private static void ReportNamedOrder(List<FileDossier> copper, IdentificationLog log)
    {
        List<FileDossier> byName = copper.FindAll(d => d.Evidence == Evidence.Name
            && d.Claim.Place is LayerPlace.InnerNumbered or LayerPlace.Numbered);
        if (byName.Count > 0)
        {
            log.Warn(
                BoardSourceCode.InnerOrderFromNames,
                null,
                "inner layers ordered by their file names: "
                    + string.Join(", ", byName.OrderBy(d => d.CopperLayer).Select(d => Text($"{d.CopperLayer} {d.File.Name}"))),
                "the order confirmed by the stack-up");
        }
    }

    private static void Check(List<FileDossier> copper, int count, IdentificationLog log)
    {
        for (int layer = 1; layer <= count; layer++)
        {
            List<FileDossier> claimants = copper.FindAll(d => d.CopperLayer == layer);
            if (claimants.Count != 1)
            {
                string found = claimants.Count == 0
                    ? Text($"no file for copper layer {layer} of {count}")
                    : Text($"copper layer {layer} in {string.Join(" and ", claimants.Select(d => d.File.Name))}");
                log.Error(BoardSourceCode.LayerNumbers, null, found, "one file for each copper layer");
            }
        }

        foreach (FileDossier outside in copper.Where(d => d.CopperLayer < 1 || d.CopperLayer > count))
        {
            log.Error(
                BoardSourceCode.LayerNumbers,
                outside.File.Name,
                outside.CopperLayer == 0 ? "a copper layer without place" : Text($"copper layer {outside.CopperLayer} of {count}"),
                "a layer number within the board");
        }
    }

    /// <summary>
    /// Files that declare their place, and names that count inner layers, name the bottom too: where none does, it is
    /// not there, and the lowest inner layer must not be taken for it.
    /// </summary>
    private static void ReportNoBottom(List<FileDossier> copper, int count, IdentificationLog log)
    {
        bool saysInner = copper.Exists(d => d.Claim.Place is LayerPlace.InnerNumbered or LayerPlace.Ground or LayerPlace.Supply or LayerPlace.Signal
            || (d.Claim.Place == LayerPlace.Numbered && d.Evidence is Evidence.Declared or Evidence.JobFile));
        if (saysInner && copper.TrueForAll(d => d.Claim.Place != LayerPlace.Bottom && d.Evidence != Evidence.Override))
        {
            log.Error(
                BoardSourceCode.LayerNumbers,
                null,
                Text($"{count} copper layers, none of which is said to be the bottom"),
                "a copper file for the bottom, or overrides with the layer of each file");
        }
    }

    private static void ReportIdentical(List<FileDossier> copper, IdentificationLog log)
    {
        for (int i = 0; i < copper.Count; i++)
        {
            for (int j = i + 1; j < copper.Count; j++)
            {
                if (copper[i].File.Bytes.Span.SequenceEqual(copper[j].File.Bytes.Span))
                {
                    log.Warn(
                        BoardSourceCode.IdenticalLayers,
                        copper[j].File.Name,
                        $"the same bytes as {copper[i].File.Name}",
                        "two different layers; possible for planes, but also the mark of a file copied by mistake");
                }
            }
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
