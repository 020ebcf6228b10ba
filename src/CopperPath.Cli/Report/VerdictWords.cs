using System.Text.Json;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>The answer in one sentence, and what stands beside it: findings waived, values nobody confirmed.</summary>
internal static class VerdictWords
{
    public static string Of(Review review)
    {
        string beyond = Counted.Of(review.Findings.Count(finding => finding.Counts), "finding");
        return review.Verdict switch
        {
            Verdict.WithinLimits when review.PartsHeat is { IsKnown: false } =>
                $"all {Verdict.WithinLimits.Word()} that could be judged{OverTheRange(review)}{Waived(review)}; the board's temperature is not: heat of parts is neither stated nor follows from an efficiency.",
            Verdict.WithinLimits => $"all {Verdict.WithinLimits.Word()}{OverTheRange(review)}{Waived(review)}.",
            Verdict.WithinAsStated => $"{Verdict.WithinAsStated.Word()}{Waived(review)}: {OnlyAsStated(review)} not over the range of what is not known.",
            Verdict.BeyondLimits => $"{beyond} {Verdict.BeyondLimits.Word()}{Waived(review)}{(OnlyAsStated(review) is { } more ? $", {more} within as stated only" : "")}.",
            _ => $"{Verdict.CouldNotJudge.Word()}: {string.Join("; ", Reasons(review))}{Waived(review)}.",
        };
    }

    private static string OverTheRange(Review review) => review.Tolerance is { Ranges.HasAny: true } ? " over the range of what is not known" : " as stated";

    private static string? OnlyAsStated(Review review) =>
        review.Findings.Count(finding => finding.IsOnlyAsStated) is > 0 and var count ? Counted.Of(count, "finding") : null;

    private static IEnumerable<string> Reasons(Review review)
    {
        int blanks = review.Brief?.Blanks.Count ?? 0;
        if (blanks == 0 || review.Board is null or { CopperIsUncertain: true }
            || review.Findings.Any(finding => finding.Level == FindingLevel.Undecided && finding.Waiver is null))
        {
            yield return "part of the input was not understood or not solved, see the messages";
        }

        if (blanks > 0)
        {
            yield return $"{Counted.Of(blanks, "value")} of the brief {(blanks == 1 ? "is a guess" : "are guesses")} nobody has confirmed";
            yield return $"as it stands, {Counted.Of(review.Findings.Count(finding => finding.Counts), "finding")} {Verdict.BeyondLimits.Word()}";
        }
    }

    /// <summary>The same for programs, as members of the object being written.</summary>
    public static void Write(Utf8JsonWriter json, Review review)
    {
        json.WriteString("verdict", review.Verdict.Word());
        json.WriteString("verdictText", Of(review));
        json.WriteNumber("waivedFindings", review.Findings.Count(finding => finding.IsWaived));
        json.WriteStartArray("waivedBy");
        foreach (string name in WaivedBy(review))
        {
            json.WriteStringValue(name);
        }

        json.WriteEndArray();
    }

    private static string Waived(Review review) => review.Findings.Count(finding => finding.IsWaived) is > 0 and var count
        ? $", {Counted.Of(count, "finding")} waived by {string.Join(" and ", WaivedBy(review))}" : "";

    private static IEnumerable<string> WaivedBy(Review review) => review.Findings.Where(finding => finding.IsWaived)
        .Select(finding => finding.Waiver!.By).Distinct().Order(StringComparer.Ordinal);
}
