using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// Marks the findings that the brief waives, and speaks of waivers that do nothing. A waiver holds for the files it was
/// given for: whoever accepted a neck has not accepted the next revision's.
/// </summary>
public static class Waivers
{
    /// <summary>How far a finding may be from the place a waiver names.</summary>
    private const double ReachNm = 2 * Units.NmPerMm;

    /// <param name="findings">All findings.</param>
    /// <param name="waivers">Those of the brief.</param>
    /// <param name="fingerprint">Of the board's files.</param>
    /// <returns>The findings in the same order, waived ones marked, and a warning for each waiver that was not applied.</returns>
    public static (IReadOnlyList<Finding> Findings, IReadOnlyList<Diagnostic> Diagnostics) Apply(
        IReadOnlyList<Finding> findings, IReadOnlyList<Waiver> waivers, string fingerprint)
    {
        HashSet<Waiver> used = new(ReferenceEqualityComparer.Instance);
        List<Waiver> bound = [.. waivers.Where(waiver => IsFor(fingerprint, waiver))];
        List<Finding> marked = [];
        foreach (Finding finding in findings)
        {
            Waiver? waiver = bound.Find(candidate => Meets(candidate, finding));
            if (waiver is not null)
            {
                used.Add(waiver);
            }

            marked.Add(waiver is null ? finding : finding with { Waiver = waiver });
        }

        return (marked, [.. waivers.Where(waiver => !used.Contains(waiver)).Select(waiver => NotApplied(waiver, fingerprint))]);
    }

    private static bool IsFor(string fingerprint, Waiver waiver) => string.Equals(waiver.Fingerprint, fingerprint, StringComparison.OrdinalIgnoreCase);

    private static bool Meets(Waiver waiver, Finding finding) => waiver.Rule == finding.Rule && waiver.Net == finding.Subject
        && (waiver.Near is not { } near
            || near.DistanceNmTo(new PointNm((long)Units.NmFromMetres(finding.XM), (long)Units.NmFromMetres(finding.YM))) <= ReachNm);

    private static Diagnostic NotApplied(Waiver waiver, string fingerprint)
    {
        string spoken = $"a waiver of '{waiver.Rule}' for '{waiver.Net}'";
        return RuleCatalogue.All.All(rule => rule.Id != waiver.Rule)
            ? Warning("JDG002", $"a waiver of the rule '{waiver.Rule}'", "a rule of docs/rules.md")
            : waiver.Fingerprint is null
            ? Warning("JDG003", $"{spoken} that does not say for which files, and is not applied",
                $"`fingerprint: '{fingerprint}'`, when whoever accepts it has seen these files")
            : !IsFor(fingerprint, waiver)
            ? Warning("JDG004", $"{spoken} given for the files {waiver.Fingerprint}, and not applied",
                $"`fingerprint: '{fingerprint}'`, when whoever accepts it has seen these files")
            : Warning("JDG001", $"{spoken} that meets no finding", "a finding to waive; remove the waiver when the fault is mended");

        Diagnostic Warning(string code, string found, string expected) => new(code, Severity.Warning, waiver.Position, found, expected);
    }
}
