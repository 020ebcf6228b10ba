using CopperPath.Cli.Report.Html;
using CopperPath.Judging;

namespace CopperPath.Cli.Report;

/// <summary>The second and third line of the answer: what is worst, and how much room there is.</summary>
internal static class AnswerText
{
    public static void Write(TextWriter writer, Review review)
    {
        Finding? worst = review.Findings.Where(finding => finding.Counts || finding.IsOnlyAsStated).OrderByDescending(finding => finding.Counts)
            .ThenBy(finding => finding.Measure?.MarginRatio ?? double.NegativeInfinity).FirstOrDefault();
        writer.WriteLine(worst is null ? "Worst: nothing beyond a limit." : $"Worst: {FindingsText.PlaceOf(worst)}. {worst.Sentence}");
        string hottest = HeatText.HottestPlaceOf(review) is { } place
            ? $"hottest place of the board {place.Temperature} ({place.Where}); {place.Judged}." : "no temperatures were solved.";
        writer.WriteLine(worst?.Measure is { } measure ? $"Margin: {MarginOf(measure)}; {hottest}" : $"Margin: {hottest}");
    }

    private static string MarginOf(Measure measure) => FormattableString.Invariant($"{measure.Name} ")
        + $"{MeasureText.ValueOf(measure)}, {(measure.LimitIsLeast ? "at least " : "")}{MeasureText.LimitOf(measure)} allowed, "
        + FormattableString.Invariant($"{100 * Math.Abs(measure.MarginRatio):0} % {(measure.MarginRatio < 0 ? "beyond it" : "left")}");
}
