using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Reading.Drill;

/// <summary>
/// Holes that stand in the data more than once, as when a board comes with Excellon and Gerber drill files: two barrels
/// in one place would halve its resistance. Each hole is kept once, as its first statement has it.
/// </summary>
internal sealed class DrillOverlap
{
    /// <summary>Two holes this near are one: above the resolution of every drill format, below the thinnest drill.</summary>
    private const long SamePlaceNm = 10_000;

    /// <summary>Difference of diameters that rounding between inch and metric tools explains.</summary>
    private const long SameDiameterNm = 20_000;

    private const int MaxListed = 10;

    private readonly List<(DrilledFeature Feature, int File, bool IsDropped)> _holes = [];
    private readonly IReadOnlyList<DrillArtwork> _files;
    private readonly List<Diagnostic> _remarks = [];
    private readonly SortedDictionary<(int File, int Earlier), int> _dropped = [];
    private int _disagreements;

    private DrillOverlap(IReadOnlyList<DrillArtwork> files) => _files = files;

    /// <param name="files">All drill files of a board, the most trusted first.</param>
    /// <param name="diagnostics">Receives a note for each pair of files with common holes, and every disagreement.</param>
    /// <returns>The same files without repeated holes.</returns>
    public static IReadOnlyList<DrillArtwork> Resolve(IReadOnlyList<DrillArtwork> files, List<Diagnostic> diagnostics)
    {
        DrillOverlap overlap = new(files);
        IReadOnlyList<DrillArtwork> resolved = overlap.Resolve();
        diagnostics.AddRange(overlap._remarks);
        return resolved;
    }

    private IReadOnlyList<DrillArtwork> Resolve()
    {
        for (int f = 0; f < _files.Count; f++)
        {
            _holes.AddRange(_files[f].Features.Select(feature => (feature, f, false)));
        }

        PointIndex middles = new(_holes.Select(hole => BoxNm.Of(hole.Feature.Path).Centre), SamePlaceNm);
        for (int i = 0; i < _holes.Count; i++)
        {
            int earlier = middles.Near(BoxNm.Of(_holes[i].Feature.Path).Centre)
                .Where(j => j < i && !_holes[j].IsDropped && IsSame(j, i)).Order().FirstOrDefault(-1);
            if (earlier >= 0)
            {
                Drop(i, earlier);
            }
        }

        Report();
        return [.. _files.Select((file, f) => file with
        {
            Features = [.. _holes.Where(hole => hole.File == f && !hole.IsDropped).Select(hole => hole.Feature)],
        })];
    }

    private bool IsSame(int a, int b)
    {
        DrillArtwork first = _files[_holes[a].File];
        DrillArtwork second = _files[_holes[b].File];
        bool spansDiffer = first.FirstLayer > 0 && second.FirstLayer > 0
            && (first.FirstLayer, first.LastLayer) != (second.FirstLayer, second.LastLayer);
        PointNm[] one = _holes[a].Feature.Path;
        PointNm[] other = _holes[b].Feature.Path;

        // Holes of different spans over each other are stacked, not repeated.
        return !spansDiffer && one.Length == other.Length
            && (Coincide(one, other) || Coincide(one, [.. other.Reverse()]));
    }

    private static bool Coincide(PointNm[] one, PointNm[] other) =>
        one.Zip(other).All(pair => pair.First.DistanceNmTo(pair.Second) <= SamePlaceNm);

    private void Drop(int later, int earlier)
    {
        (DrilledFeature feature, int file, _) = _holes[later];
        (DrilledFeature kept, int keptFile, _) = _holes[earlier];
        _holes[later] = (feature, file, true);
        _dropped[(file, keptFile)] = _dropped.GetValueOrDefault((file, keptFile)) + 1;

        bool platingDiffers = feature.Plating != Plating.Unknown && kept.Plating != Plating.Unknown && feature.Plating != kept.Plating;
        if (platingDiffers || Math.Abs(feature.ToolDiameterNm - kept.ToolDiameterNm) > SameDiameterNm)
        {
            Disagree(feature, kept, platingDiffers);
        }
        else if (kept.Plating == Plating.Unknown)
        {
            _holes[earlier] = (kept with { Plating = feature.Plating }, keptFile, false);
        }
    }

    private void Disagree(DrilledFeature feature, DrilledFeature kept, bool platingDiffers)
    {
        if (_disagreements++ < MaxListed)
        {
            _remarks.Add(new Diagnostic(DrillCode.HolesDisagree, Severity.Warning, feature.Position,
                $"{Described(feature)} where {kept.Position} has {Described(kept)}",
                "one statement for a hole; the earlier one stands", AffectsCopper: platingDiffers));
        }
    }

    private void Report()
    {
        foreach (((int file, int earlier), int count) in _dropped)
        {
            _remarks.Add(new Diagnostic(DrillCode.SameHoles, Severity.Note, SourcePosition.WholeFile(_files[file].File),
                string.Create(CultureInfo.InvariantCulture,
                    $"{count} holes that {(file == earlier ? "stand in it twice" : $"{_files[earlier].File} holds too")}"),
                "each hole once; they were taken once"));
        }

        if (_disagreements > MaxListed)
        {
            _remarks.Add(new Diagnostic(DrillCode.HolesDisagree, Severity.Warning, SourcePosition.WholeFile(_files[^1].File),
                string.Create(CultureInfo.InvariantCulture, $"{_disagreements - MaxListed} more holes with two statements"),
                "one statement for a hole; the earlier one stands", AffectsCopper: true));
        }
    }

    private static string Described(DrilledFeature feature)
    {
        string plating = feature.Plating switch
        {
            Plating.Plated => "plated",
            Plating.NonPlated => "unplated",
            _ => "unmarked",
        };
        return string.Create(CultureInfo.InvariantCulture, $"a hole {feature.ToolDiameterNm / 1e6:0.###} mm wide, {plating},");
    }
}
