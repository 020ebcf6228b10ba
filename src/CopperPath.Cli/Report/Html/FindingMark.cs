using CopperPath.Judging;

namespace CopperPath.Cli.Report.Html;

/// <summary>The number of a finding on the plate it has in every picture: filled and square where it counts, else rounded and open.</summary>
internal static class FindingMark
{
    public static bool IsBeyond(Finding finding) => finding.Level is FindingLevel.BeyondLimit or FindingLevel.Undecided && finding.Waiver is null;

    /// <param name="finding">The finding.</param>
    /// <param name="number">Its place in the report, from 1.</param>
    public static Markup Of(Finding finding, int number) => $"""<span class="number{(IsBeyond(finding) ? " beyond" : "")}">{number}</span>""";
}
