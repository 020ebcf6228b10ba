using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Brief;
using CopperPath.Copper;
using CopperPath.CrossCheck;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Gerber;
using CopperPath.Reading.JobFiles;
using CopperPath.Reading.Netlist;
using CopperPath.Reading.Placement;
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
            return new Board([], null, [], [], [], RemarkBudget.Apply(diagnostics));
        }

        BoardIdentification identified = LayerIdentifier.Identify(source, BriefAnswers.RolesOf(answers));
        diagnostics.AddRange(identified.Diagnostics);

        // 2. The artwork of the copper and the profile; each file on its own, so several at a time.
        clock.Begin("Reading artwork");
        IdentifiedFile[] masks = [.. identified.OfRole(FileRole.SolderMaskTop), .. identified.OfRole(FileRole.SolderMaskBottom)];
        IdentifiedFile[] wanted = [.. identified.Copper.Where(file => file.CopperLayer > 0), .. identified.OfRole(FileRole.Profile), .. masks];
        GerberReading[] readings = new GerberReading[wanted.Length];
        (ImageBudget images, ImageBudget openings) = (new(), new());
        GerberReadOptions options = GerberReadOptions.Default with { Budget = images };
        GerberReadOptions ofMasks = options with { Budget = openings };
        Parallel.For(0, wanted.Length, i => readings[i] = GerberReader.Read(
            wanted[i].File.Name, wanted[i].File.Bytes, i < wanted.Length - masks.Length ? options : ofMasks));
        if (images.IsSpent || openings.IsSpent)
        {
            return new Board(identified.Files, null, [], [], [], RemarkBudget.Apply([.. diagnostics, (images.IsSpent ? images : openings).Refusal(path)]));
        }

        diagnostics.AddRange(readings.SkipLast(masks.Length).SelectMany(reading => reading.Diagnostics));
        LayerArtwork[] outlines = [.. wanted.Zip(readings).Where(pair => pair.First.Role == FileRole.Profile).Select(pair => pair.Second.Artwork).OfType<LayerArtwork>()];
        IReadOnlyList<PolygonNm> profile = BuildProfile(outlines, diagnostics);

        // 3. The copper of each layer.
        clock.Begin("Rebuilding copper");
        Func<LayerArtwork, bool?> isNegative = artwork => StatedNegative(artwork, answers, identified.Job);
        IReadOnlyList<CopperLayer> layers = BuildCopper(wanted, readings, profile, isNegative, diagnostics);
        if (layers.Count == 0)
        {
            return new Board(identified.Files, null, profile, [], [], RemarkBudget.Apply(diagnostics));
        }

        // 4. The holes: only now, because undeclared drill formats are inferred from the copper.
        clock.Begin("Reading drills");
        DrillSet drills = DrillSet.Read(identified, answers, layers, profile, options, diagnostics);
        if (images.IsSpent || drills.HasTooMany)
        {
            diagnostics.Add(images.IsSpent ? images.Refusal(path) : DrillSet.TooMany(path));
            return new Board(identified.Files, null, profile, [], [], RemarkBudget.Apply(diagnostics));
        }

        (layers, IReadOnlyList<Diagnostic> onPolarity) = PolarityCheck.Settle(
            layers, drills.Artwork, profile, BriefAnswers.FilesOfStatedPolarity(answers), isNegative);
        diagnostics.AddRange(onPolarity);

        // 5. The nets; a netlist names them and checks them.
        clock.Begin("Finding nets");
        BoardNetlist? netlist = ReadNetlist(identified, diagnostics);
        if (FindNets(layers, drills, netlist, diagnostics) is not { } nets)
        {
            return new Board(identified.Files, null, profile, drills.Artwork, drills.Formats, RemarkBudget.Apply(diagnostics));
        }

        // 6. Whether all these files are of one board, and in one place.
        clock.Begin("Cross-checking the files");
        diagnostics.AddRange(SetCheck.Run(new FabricationSet(
            path, identified, layers, profile, outlines, MaskOpenings(wanted, readings), drills.Artwork, nets, netlist)));

        // 7. The parts at the pads, where a table of placements is all that tells of them.
        if (ReadPlacements(identified, answers, diagnostics) is { } placements)
        {
            nets = PartGuess.Apply(nets, placements, diagnostics);
        }

        return new Board(identified.Files, nets, profile, drills.Artwork, drills.Formats, RemarkBudget.Apply(diagnostics));
    }

    /// <summary>Whether a layer draws absent copper: by the brief, by the file itself, by the job file; null where none says.</summary>
    private static bool? StatedNegative(LayerArtwork artwork, BoardSection? answers, JobFile? job) =>
        BriefAnswers.IsNegative(artwork.File, answers) ?? CopperBuilder.DeclaredNegative(artwork)
            ?? (job?.Files.FirstOrDefault(entry => entry.Path == artwork.File)?.FilePolarity is { } polarity
                ? polarity.Equals("Negative", StringComparison.OrdinalIgnoreCase) : null);

    /// <summary>Holes and cuts that only take copper away, stated as unplated or inferred to be.</summary>
    public static IReadOnlyList<DrilledFeature> UnplatedCuts(Board board) =>
        [.. (board.Nets?.Holes ?? []).Where(hole => hole.OnlyCuts).Select(hole => hole.Feature)];

    private static IReadOnlyList<PolygonNm> BuildProfile(LayerArtwork[] profiles, List<Diagnostic> diagnostics)
    {
        try
        {
            return ProfileBuilder.Build(profiles);
        }
        catch (EntangledOutlinesException)
        {
            diagnostics.Add(new Diagnostic("CUP004", Severity.Error, SourcePosition.WholeFile(profiles[0].File),
                "a board outline that crosses or touches itself too often to be filled", "a closed line around the board", AffectsCopper: true));
            return [];
        }
    }

    private static NetList? FindNets(
        IReadOnlyList<CopperLayer> layers, DrillSet drills, BoardNetlist? netlist, List<Diagnostic> diagnostics)
    {
        try
        {
            NetList nets = NetFinder.Find(layers, drills.Artwork, netlist);
            diagnostics.AddRange(nets.Diagnostics);
            return nets;
        }
        catch (EntangledOutlinesException)
        {
            DrilledFeature longest = drills.Artwork.SelectMany(file => file.Features).MaxBy(feature => feature.Path.Length)!;
            diagnostics.Add(new Diagnostic("CUP004", Severity.Error, longest.Position,
                "a routed path that crosses itself too often to be cut out", "a slot or a cut as a board has them", AffectsCopper: true));
            return null;
        }
    }

    /// <summary>Openings of the mask files. What their readers said is not repeated: nothing of them is copper.</summary>
    private static IReadOnlyList<MaskArtwork> MaskOpenings(IdentifiedFile[] wanted, GerberReading[] readings) =>
        [.. wanted.Zip(readings).Where(pair => pair.First.Role is FileRole.SolderMaskTop or FileRole.SolderMaskBottom && pair.Second.Artwork is not null)
            .Select(pair => new MaskArtwork(pair.First.Role == FileRole.SolderMaskTop, pair.Second.Artwork!))];

    private static BoardNetlist? ReadNetlist(BoardIdentification identified, List<Diagnostic> diagnostics)
    {
        IdentifiedFile[] files = [.. identified.OfRole(FileRole.Netlist)];
        if (files.Length == 0)
        {
            return null;
        }

        diagnostics.AddRange(files.Skip(1).Select(file => new Diagnostic(
            NetlistCode.Second, Severity.Warning, SourcePosition.WholeFile(file.File.Name),
            "a second netlist", $"one netlist for a board; {files[0].File.Name} is used")));
        NetlistReading reading = NetlistReader.Read(files[0].File.Name, files[0].File.Bytes);
        diagnostics.AddRange(reading.Diagnostics);
        return reading.Netlist;
    }

    /// <summary>The table the brief names, else the only one there is.</summary>
    private static PlacementTable? ReadPlacements(BoardIdentification identified, BoardSection? answers, List<Diagnostic> diagnostics)
    {
        IdentifiedFile[] files = answers?.Placement is { } wanted
            ? [.. identified.Files.Where(file => file.File.Name == wanted.File)]
            : [.. identified.OfRole(FileRole.Placement).Where(file => file.Content == FileContent.Placement)];
        if (files.Length == 0 && answers?.Placement is { } missing)
        {
            diagnostics.Add(new Diagnostic(PlacementCode.Missing, Severity.Error, missing.Position, $"the placement file '{missing.File}'",
                "the name of a file of the board"));
        }

        if (files.Length > 1)
        {
            diagnostics.Add(new Diagnostic(PlacementCode.Several, Severity.Note, SourcePosition.WholeFile(files[1].File.Name),
                $"placements also in {files[0].File.Name}", "one table, or `placement` in the brief to choose; none is used"));
        }

        if (files.Length != 1)
        {
            return null;
        }

        PlacementReading reading = PlacementReader.Read(files[0].File.Name, files[0].File.Bytes);
        diagnostics.AddRange(reading.Diagnostics);
        return reading.Table;
    }

    private static List<CopperLayer> BuildCopper(
        IdentifiedFile[] wanted, GerberReading[] readings, IReadOnlyList<PolygonNm> profile,
        Func<LayerArtwork, bool?> isNegative, List<Diagnostic> diagnostics)
    {
        (CopperLayer? Layer, IReadOnlyList<Diagnostic> Diagnostics)[] built =
            new (CopperLayer?, IReadOnlyList<Diagnostic>)[wanted.Length];
        Parallel.For(0, wanted.Length, i =>
        {
            if (wanted[i].Role == FileRole.Copper && readings[i].Artwork is { } artwork)
            {
                built[i] = CopperBuilder.Build(wanted[i].CopperLayer, artwork, profile, isNegative(artwork));
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
