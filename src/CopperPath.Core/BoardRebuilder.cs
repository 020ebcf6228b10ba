using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Brief;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Gerber;
using FileRole = CopperPath.Reading.BoardFiles.FileRole;

namespace CopperPath;

/// <summary>First half of the main path: a folder or archive of fabrication files -> a board with nets.</summary>
internal static class BoardRebuilder
{
    /// <param name="path">Folder or zip archive.</param>
    /// <param name="answers">What the brief says about files; null when there is no brief.</param>
    /// <param name="clock">Told the stages.</param>
    public static Board Rebuild(string path, BoardSection? answers, StageClock clock)
    {
        // 1. The files, and what each is for.
        clock.Begin("Reading files");
        BoardSource source = BoardSource.Open(path);
        List<Diagnostic> diagnostics = [.. source.Diagnostics];
        if (source.Files.Count == 0)
        {
            return new Board([], null, [], [], [], diagnostics);
        }

        BoardIdentification identified = LayerIdentifier.Identify(source, BriefAnswers.RolesOf(answers));
        diagnostics.AddRange(identified.Diagnostics);

        // 2. The artwork of the copper and the profile; each file on its own, so several at a time.
        clock.Begin("Reading artwork");
        IdentifiedFile[] wanted = [.. identified.Copper.Where(file => file.CopperLayer > 0), .. identified.OfRole(FileRole.Profile)];
        GerberReading[] readings = new GerberReading[wanted.Length];
        Parallel.For(0, wanted.Length, i => readings[i] = GerberReader.Read(wanted[i].File.Name, wanted[i].File.Bytes));
        diagnostics.AddRange(readings.SelectMany(reading => reading.Diagnostics));
        IReadOnlyList<PolygonNm> profile = ProfileBuilder.Build(
            wanted.Zip(readings).Where(pair => pair.First.Role == FileRole.Profile).Select(pair => pair.Second.Artwork).OfType<LayerArtwork>());

        // 3. The copper of each layer.
        clock.Begin("Rebuilding copper");
        List<CopperLayer> layers = BuildCopper(wanted, readings, profile, diagnostics);
        if (layers.Count == 0)
        {
            return new Board(identified.Files, null, profile, [], [], diagnostics);
        }

        // 4. The holes: only now, because undeclared drill formats are inferred from the copper.
        clock.Begin("Reading drills");
        DrillSet drills = DrillSet.Read(identified, answers, layers, diagnostics);

        // 5. The nets.
        clock.Begin("Finding nets");
        NetList nets = NetFinder.Find(layers, drills.Artwork);
        diagnostics.AddRange(nets.Diagnostics);
        return new Board(identified.Files, nets, profile, drills.Artwork, drills.Formats, diagnostics);
    }

    /// <summary>Holes and cuts without a plated wall: they take copper away.</summary>
    public static IReadOnlyList<DrilledFeature> UnplatedCuts(Board board) =>
        [.. board.Drills.SelectMany(drill => drill.Features).Where(feature => feature.Plating == Plating.NonPlated)];

    private static List<CopperLayer> BuildCopper(
        IdentifiedFile[] wanted, GerberReading[] readings, IReadOnlyList<PolygonNm> profile, List<Diagnostic> diagnostics)
    {
        (CopperLayer? Layer, IReadOnlyList<Diagnostic> Diagnostics)[] built =
            new (CopperLayer?, IReadOnlyList<Diagnostic>)[wanted.Length];
        Parallel.For(0, wanted.Length, i =>
        {
            if (wanted[i].Role == FileRole.Copper && readings[i].Artwork is { } artwork)
            {
                built[i] = CopperBuilder.Build(wanted[i].CopperLayer, artwork, profile);
            }
        });

        List<CopperLayer> layers = [];
        for (int i = 0; i < built.Length; i++)
        {
            diagnostics.AddRange(built[i].Diagnostics ?? []);
            if (built[i].Layer is { } layer)
            {
                layers.Add(layer);
            }
            else if (wanted[i].Role == FileRole.Copper)
            {
                diagnostics.Add(new Diagnostic("CUP003", Severity.Error, SourcePosition.WholeFile(wanted[i].File.Name),
                    string.Create(CultureInfo.InvariantCulture, $"no usable image for copper layer {wanted[i].CopperLayer}"),
                    "a complete image of every copper layer", AffectsCopper: true));
            }
        }

        return [.. layers.OrderBy(layer => layer.Number)];
    }
}
