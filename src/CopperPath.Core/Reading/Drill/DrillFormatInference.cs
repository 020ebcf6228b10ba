using CopperPath.Artwork;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Reading.Drill;

/// <summary>
/// Finds the number format of a drill file that does not state it, by decoding it each likely way and looking where
/// the holes fall on the copper. A wrong unit or digit count scales the board by 25.4 or 10, so that almost no hole
/// hits a pad: the right one stands out or there is no answer.
/// </summary>
public static class DrillFormatInference
{
    /// <summary>Least score accepted. Mounting holes and tooling holes without pads make up the rest.</summary>
    public const double LeastScore = 0.95;

    /// <summary>Least lead over the next distinct decoding.</summary>
    public const double LeastLead = 0.25;

    /// <summary>Distance at which a hole still counts as centred on a pad: the last digit of coarse files, both axes.</summary>
    public const long PadToleranceNm = 20_000;

    private const long SmallestUsualToolNm = Units.NmPerMm / 10;
    private const long LargestUsualToolNm = 10 * Units.NmPerMm;

    private static readonly (int Integer, int Decimal)[] _likelyDigits = [(2, 4), (2, 5), (3, 3), (4, 2), (3, 2), (4, 4)];

    /// <summary>
    /// Tries all likely formats that agree with what the file declares. Pads are flash centres on any copper layer;
    /// bounds are those of the profile, or of all copper where there is none.
    /// </summary>
    public static DrillInference Infer(
        string file, ReadOnlyMemory<byte> bytes, IReadOnlyList<PointNm> padCentres, BoxNm boardBounds)
    {
        PointIndex pads = new(padCentres, PadToleranceNm);
        BoxNm area = boardBounds.GrownBy(Math.Max(boardBounds.WidthNm, boardBounds.HeightNm) / 20);
        DrillNumberRules declared = DrillReader.Run(file, bytes, format: null).Rules;

        List<(DrillArtwork Artwork, CandidateScore Score)> distinct = [];
        List<CandidateScore> rejected = [];
        foreach (DrillFormat format in Candidates(declared))
        {
            DrillReading reading = DrillReader.Read(file, bytes, format);
            if (reading.Artwork is not { Features.Count: > 0 } artwork)
            {
                string reason = reading.Artwork is null
                    ? "found " + reading.Diagnostics.First(d => d.Severity == Diagnostics.Severity.Error).Found
                    : "no holes";
                rejected.Add(new CandidateScore(format, [], 0, 0, 0, reason));
                continue;
            }

            int same = distinct.FindIndex(d => HasSameHoles(d.Artwork, artwork));
            if (same < 0)
            {
                distinct.Add((artwork, Score(format, artwork, pads, area)));
            }
            else
            {
                CandidateScore first = distinct[same].Score;
                distinct[same] = (artwork, first with { SameAs = [.. first.SameAs, format] });
            }
        }

        // OrderBy is stable: equal scores keep the order in which they were tried.
        List<CandidateScore> evidence = [.. distinct.Select(d => d.Score).OrderByDescending(s => s.Score), .. rejected];
        bool isClear = distinct.Count > 0
            && evidence[0].Score >= LeastScore
            && (distinct.Count == 1 || evidence[0].Score - evidence[1].Score >= LeastLead);
        return new DrillInference(isClear ? evidence[0].Format : null, evidence);
    }

    private static IEnumerable<DrillFormat> Candidates(DrillNumberRules declared)
    {
        DrillUnit[] units = declared.DeclaredUnit is { } unit ? [unit] : [DrillUnit.Millimetre, DrillUnit.Inch];
        OmittedZeros[] zeros = declared.DeclaredZeros is { } z ? [z] : [OmittedZeros.Leading, OmittedZeros.Trailing];
        (int Integer, int Decimal)[] digits = declared.DeclaredDigits is { } d ? [d] : _likelyDigits;
        return from u in units
               from o in zeros
               from n in digits
               select new DrillFormat(u, o, n.Integer, n.Decimal);
    }

    private static CandidateScore Score(DrillFormat format, DrillArtwork artwork, PointIndex pads, BoxNm area)
    {
        int onPad = 0;
        int inside = 0;
        int usual = 0;
        foreach (DrilledFeature feature in artwork.Features)
        {
            PointNm centre = BoxNm.Of(feature.Path).Centre;
            onPad += pads.HasNear(centre) ? 1 : 0;
            inside += area.Contains(centre) ? 1 : 0;
            usual += feature.ToolDiameterNm is >= SmallestUsualToolNm and <= LargestUsualToolNm ? 1 : 0;
        }

        double count = artwork.Features.Count;
        return new CandidateScore(format, [], onPad / count, inside / count, usual / count, null);
    }

    private static bool HasSameHoles(DrillArtwork a, DrillArtwork b) =>
        a.Features.Count == b.Features.Count
        && a.Features.Zip(b.Features).All(pair =>
            pair.First.ToolDiameterNm == pair.Second.ToolDiameterNm
            && pair.First.Path.AsSpan().SequenceEqual(pair.Second.Path));
}
