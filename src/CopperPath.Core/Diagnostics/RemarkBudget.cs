using System.Globalization;

namespace CopperPath.Diagnostics;

/// <summary>
/// How much a run says. Broken input can make as many remarks as it has bytes; nobody reads them, and the first few tell what to
/// mend. What is left out is counted, and never lost for the verdict.
/// </summary>
public static class RemarkBudget
{
    /// <summary>Remarks of one code about one file that are listed.</summary>
    public const int ListedPerKind = 50;

    /// <summary>Remarks listed in all.</summary>
    public const int ListedInAll = 1_000;

    /// <summary>Characters of either half of a remark; longer ones quote text that stands in a wrong place.</summary>
    public const int LongestWords = 600;

    /// <summary>The code of a remark that counts others.</summary>
    public const string MoreCode = "MSG001";

    /// <summary>The remarks within the budget, in their order, then one for each kind of those left out.</summary>
    public static IReadOnlyList<Diagnostic> Apply(IReadOnlyList<Diagnostic> remarks)
    {
        Dictionary<(string File, string Code), int> counts = [];
        Dictionary<(string File, string Code), List<Diagnostic>> leftOut = [];
        List<Diagnostic> listed = [];
        foreach (Diagnostic remark in remarks)
        {
            (string File, string Code) kind = (remark.Position.File, remark.Code);
            int count = counts[kind] = counts.GetValueOrDefault(kind) + 1;
            if (count <= ListedPerKind && listed.Count < ListedInAll)
            {
                listed.Add(remark with { Found = Cut(remark.Found), Expected = Cut(remark.Expected) });
            }
            else if (leftOut.TryGetValue(kind, out List<Diagnostic>? more))
            {
                more.Add(remark);
            }
            else
            {
                leftOut.Add(kind, [remark]);
            }
        }

        List<Diagnostic> counted = [.. leftOut.OrderBy(kind => kind.Key.File, StringComparer.Ordinal).ThenBy(kind => kind.Key.Code, StringComparer.Ordinal)
            .Select(kind => More(kind.Key.File, kind.Key.Code, kind.Value.Count,
                kind.Value.Max(remark => remark.Severity), kind.Value.Exists(remark => remark.AffectsCopper)))];
        return [.. listed, .. counted.Count <= ListedInAll ? counted : [More("", "", remarks.Count - listed.Count,
            counted.Max(remark => remark.Severity), counted.Exists(remark => remark.AffectsCopper))]];
    }

    /// <summary>The remark that stands for those left out.</summary>
    /// <param name="file">The file they are about; empty for several.</param>
    /// <param name="code">Their code; empty for several.</param>
    /// <param name="count">How many they are.</param>
    /// <param name="severity">The gravest of theirs.</param>
    /// <param name="affectsCopper">True when one of them affects copper.</param>
    public static Diagnostic More(string file, string code, int count, Severity severity, bool affectsCopper) => new(
        MoreCode, severity, SourcePosition.WholeFile(file.Length > 0 ? file : "all files"),
        string.Create(CultureInfo.InvariantCulture, $"{count} more remarks{(code.Length > 0 ? " " : "")}{code} than are listed"),
        "the same correction as for those listed", affectsCopper);

    private static string Cut(string words) => words.Length <= LongestWords ? words : words[..LongestWords] + "...";
}
