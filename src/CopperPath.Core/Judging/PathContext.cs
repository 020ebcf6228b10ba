using CopperPath.Brief;
using CopperPath.Circuit;
using CopperPath.Converter;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.PowerPath;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>What the rules about the power path look at.</summary>
/// <param name="Brief">What was asked.</param>
/// <param name="Nets">Reviewed nets that were solved.</param>
/// <param name="Board">All nets.</param>
/// <param name="Path">The power path as the copper suggests it.</param>
/// <param name="Stack">Thicknesses.</param>
/// <param name="Rating">Relation between current, section and rise.</param>
/// <param name="Ranges">What is not known.</param>
public sealed record PathContext(
    ReviewBrief Brief, IReadOnlyList<SolvedNet> Nets, NetList Board, PathProposal Path, Stackup Stack, ConductorRating Rating,
    BoardRanges Ranges)
{
    public PracticeLimits Limits => Brief.Limits.Practice;

    /// <summary>The converter of the copper that a converter of the brief speaks of; null where the copper does not tell.</summary>
    public ConverterProposal? ProposalOf(ConverterFacts facts) =>
        ConverterMatch.Of(facts, Brief.Converters.Count, Nets.Select(net => net.Bound), Path);

    /// <summary>The converter of the brief that a switch node belongs to, or null.</summary>
    public ConverterFacts? FactsOf(Net switchNode) => Brief.Converters.Select(section => section.Facts)
        .FirstOrDefault(facts => ProposalOf(facts) is { } proposal && proposal.Phases.Any(phase => ReferenceEquals(phase.SwitchNode, switchNode)));

    /// <summary>A finding's level under a limit without a published source.</summary>
    public static FindingLevel LevelOf(PracticeLimit limit) => limit.IsStated ? FindingLevel.BeyondLimit : FindingLevel.Remark;

    internal static Finding FindingAt(
        Rule rule, FindingLevel level, string subject, int layer, PointNm at, Measure? measure, string sentence, string advice) =>
        new(rule.Id, level, subject, layer, Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y), measure, sentence, advice,
            rule.LimitSource == "common practice, no source" ? $"{rule.Evidence}; the limit is common practice, no source" : rule.Evidence);
}
