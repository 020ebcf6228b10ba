using CopperPath.Judging;

namespace CopperPath.Cli.Report.Html;

/// <summary>A button that takes the board view to a place.</summary>
internal static class FlyButton
{
    public static Markup To(Finding finding, int number) => finding.Layer == 0
        ? Markup.Nothing
        : To(finding.Layer, finding.XM, finding.YM, FormattableString.Invariant($"finding {number}"));

    /// <param name="layer">Layer number, 1 = top.</param>
    /// <param name="xM">Place, metres.</param>
    /// <param name="yM">Place, metres.</param>
    /// <param name="what">What is there, for those who do not see the row the button stands in.</param>
    public static Markup To(int layer, double xM, double yM, string what) => $"""
        <button type="button" class="fly" data-layer="{layer}" data-x="{Mm(xM)}" data-y="{Mm(yM)}" data-what="{what}">Show<span class="unseen"> {what}</span> on the board</button>
        """;

    public static Markup Place(int layer, double xM, double yM) =>
        (Markup)$"layer {layer}, x {FormattableString.Invariant($"{xM * 1e3:0.00}")} mm, y {FormattableString.Invariant($"{yM * 1e3:0.00}")} mm";

    private static string Mm(double m) => FormattableString.Invariant($"{m * 1e3:0.######}");
}
