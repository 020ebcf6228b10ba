using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.Netlist;

namespace CopperPath.Nets;

/// <summary>Plating stated by a netlist, for holes whose drill file does not state it.</summary>
internal static class NetlistPlating
{
    /// <param name="drills">All drill files.</param>
    /// <param name="netlist">The netlist, its points moved to the board's origin.</param>
    /// <param name="toleranceNm">How far a point may be from the hole it stands for.</param>
    /// <param name="diagnostics">Told what was taken, and where the two contradict each other.</param>
    /// <returns>The same files, features of unknown plating marked where the netlist says.</returns>
    public static IReadOnlyList<DrillArtwork> Apply(
        IReadOnlyList<DrillArtwork> drills, BoardNetlist netlist, long toleranceNm, List<Diagnostic> diagnostics)
    {
        NetlistPoint[] stated = [.. netlist.Points.Where(point => point.IsPlated is not null)];
        PointIndex index = new(stated.Select(point => point.Location), toleranceNm);
        int taken = 0;
        List<(DrilledFeature Feature, NetlistPoint Point)> contradictions = [];
        IReadOnlyList<DrillArtwork> marked = [.. drills.Select(drill => drill with
        {
            Features = [.. drill.Features.Select(Marked)],
        })];

        if (taken > 0)
        {
            diagnostics.Add(new Diagnostic("NET005", Severity.Note, SourcePosition.WholeFile(netlist.File),
                string.Create(CultureInfo.InvariantCulture, $"the plating of {taken} holes that their drill file does not state"),
                "plating in the drill file; the netlist's word was taken"));
        }

        if (contradictions is [var (first, point), ..])
        {
            diagnostics.Add(new Diagnostic("NET006", Severity.Warning, point.Position,
                string.Create(CultureInfo.InvariantCulture,
                    $"{contradictions.Count} holes whose plating the drill file states otherwise, the first at {first.Position}"),
                "one statement; the drill file stands", AffectsCopper: true));
        }

        return marked;

        DrilledFeature Marked(DrilledFeature feature)
        {
            int near = index.Nearest(BoxNm.Of(feature.Path).Centre);
            if (near < 0)
            {
                return feature;
            }

            Plating said = stated[near].IsPlated == true ? Plating.Plated : Plating.NonPlated;
            if (feature.Plating == Plating.Unknown)
            {
                taken++;
                return feature with { Plating = said };
            }

            if (feature.Plating != said)
            {
                contradictions.Add((feature, stated[near]));
            }

            return feature;
        }
    }
}
