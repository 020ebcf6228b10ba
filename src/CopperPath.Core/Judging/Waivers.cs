using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>Marks the findings that the brief waives, and speaks of waivers that meet none.</summary>
public static class Waivers
{
    /// <summary>How far a finding may be from the place a waiver names.</summary>
    private const double ReachNm = 2 * Units.NmPerMm;

    /// <returns>The findings in the same order, waived ones marked, and a warning for each waiver that meets none.</returns>
    public static (IReadOnlyList<Finding> Findings, IReadOnlyList<Diagnostic> Diagnostics) Apply(
        IReadOnlyList<Finding> findings, IReadOnlyList<Waiver> waivers)
    {
        HashSet<Waiver> used = new(ReferenceEqualityComparer.Instance);
        List<Finding> marked = [];
        foreach (Finding finding in findings)
        {
            Waiver? waiver = waivers.FirstOrDefault(candidate => Meets(candidate, finding));
            if (waiver is not null)
            {
                used.Add(waiver);
            }

            marked.Add(waiver is null ? finding : finding with { Waiver = waiver });
        }

        return (marked, [.. waivers.Where(waiver => !used.Contains(waiver)).Select(Unused)]);
    }

    private static bool Meets(Waiver waiver, Finding finding) => waiver.Rule == finding.Rule && waiver.Net == finding.Subject
        && (waiver.Near is not { } near
            || near.DistanceNmTo(new PointNm((long)Units.NmFromMetres(finding.XM), (long)Units.NmFromMetres(finding.YM))) <= ReachNm);

    private static Diagnostic Unused(Waiver waiver) => RuleCatalogue.All.Any(rule => rule.Id == waiver.Rule)
        ? new Diagnostic("JDG001", Severity.Warning, waiver.Position, $"a waiver of '{waiver.Rule}' for '{waiver.Net}' that meets no finding",
            "a finding to waive; remove the waiver when the fault is mended")
        : new Diagnostic("JDG002", Severity.Warning, waiver.Position, $"a waiver of the rule '{waiver.Rule}'", "a rule of docs/rules.md");
}
