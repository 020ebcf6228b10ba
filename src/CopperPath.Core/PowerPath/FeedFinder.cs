using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.PowerPath;

/// <summary>A step of the feed: the net nearer to the connector and the part that joins it to the next.</summary>
/// <param name="Net">The net.</param>
/// <param name="Link">Part that joins it to the net after it.</param>
internal sealed record FeedStep(Net Net, Part Link);

/// <summary>Follows the supply from a converter's input back to the connector, over fuses, chokes, shunts and switches.</summary>
internal sealed class FeedFinder(BoardCensus census, Net back, IReadOnlySet<Net> converterNets)
{
    private const int MostSteps = 6;

    /// <summary>Pads of parts in series with the feed, square metres: smaller ones carry signals. Common practice, no source.</summary>
    private const double LeastPadM2 = 0.9e-6;

    /// <summary>Steps from the input back to the connector, nearest first; empty when the input itself is at the connector.</summary>
    public IReadOnlyList<FeedStep> From(Net input)
    {
        HashSet<Net> seen = new(NetIdentity.Comparer) { input, back };
        List<FeedStep> steps = [];
        Net at = input;
        while (steps.Count < MostSteps && (steps.Count == 0 ? !IsAtConnector(at, 2) : !IsAtConnector(at, 1)))
        {
            FeedStep? next = census.PartsOn(at)
                .SelectMany(part => Across(part, at).Select(net => new FeedStep(net, part)))
                .Where(step => !seen.Contains(step.Net) && !converterNets.Contains(step.Net))
                .OrderByDescending(step => IsAtConnector(step.Net, 1)).ThenByDescending(step => step.Net.AreaM2).ThenBy(step => step.Net.Name, StringComparer.Ordinal)
                .FirstOrDefault();
            if (next is null)
            {
                break;
            }

            steps.Add(next);
            seen.Add(next.Net);
            at = next.Net;
        }

        return UpToConnector(steps);
    }

    /// <summary>Steps beyond the last connector lead nowhere; without any connector only large parts in series count.</summary>
    private List<FeedStep> UpToConnector(List<FeedStep> steps)
    {
        int last = steps.FindLastIndex(step => IsAtConnector(step.Net, 1));
        return last >= 0 ? steps.GetRange(0, last + 1) : [.. steps.TakeWhile(step => step.Link.Shape != PartShape.Package)];
    }

    /// <summary>The net beyond a four-terminal part in the return, or null: the return as it arrives at the connector.</summary>
    public FeedStep? ReturnBeyond(Part choke) => Across(choke, back).Select(net => new FeedStep(net, choke)).FirstOrDefault();

    /// <summary>True when a part with pins in holes stands on the net and on the return side too, with at least so many pins on the net.</summary>
    public bool IsAtConnector(Net net, int pins) => ConnectorsOf(net).Any(part => part.PadsOn(net).Count() >= pins);

    public IEnumerable<Part> ConnectorsOf(Net net) => census.PartsOn(net)
        .Where(part => part.Shape == PartShape.ThroughHole && part.Pads.Count >= 2 && part.Nets.Count is 2 or 3);

    /// <summary>Nets a part in series joins a net to.</summary>
    private IEnumerable<Net> Across(Part part, Net at) => part.Shape switch
    {
        PartShape.TwoTerminal when part.Nets.Count == 2 && part.Pads.Min(pad => pad.AreaM2) >= LeastPadM2 && !part.Touches(back) => [part.Across(at)],
        PartShape.FourTerminal => OtherEndOfWinding(part, at),
        PartShape.Package => SeriesNets(part, at),
        _ => [],
    };

    /// <summary>Windings run along the longer side of the rectangle.</summary>
    private static IEnumerable<Net> OtherEndOfWinding(Part part, Net at)
    {
        PartPad pad = part.PadsOn(at).First();
        BoxNm centres = BoxNm.Of(part.Pads.Select(corner => corner.At));
        bool alongX = centres.WidthNm >= centres.HeightNm;
        return part.Pads.Where(other => !ReferenceEquals(other, pad)
            && (alongX ? Math.Abs(other.At.Y - pad.At.Y) < centres.HeightNm / 2 : Math.Abs(other.At.X - pad.At.X) < centres.WidthNm / 2))
            .Select(other => other.Net);
    }

    /// <summary>A shunt monitor or a switch in the feed has two or more pins, or a tab, on either side.</summary>
    private IEnumerable<Net> SeriesNets(Part part, Net at) => part.Nets.Where(net => !ReferenceEquals(net, at) && !ReferenceEquals(net, back)
        && IsPowerEnd(part, net) && IsPowerEnd(part, at));

    private static bool IsPowerEnd(Part part, Net net) => part.PadsOn(net).Count() >= 2 || part.PadAreaM2(net) >= 2 * LeastPadM2;
}
