using CopperPath.Judging;
using CopperPath.Quantities;

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
        (Markup)$"layer\u00a0{layer}, {Coordinate("x", xM)}, {Coordinate("y", yM)}";

    /// <summary>Kept in one line: a number that stands apart from its axis is misread.</summary>
    public static string Coordinate(string axis, double m) => $"{axis} {QuantityText.Place(m)}".Replace(' ', '\u00a0');

    private static string Mm(double m) => FormattableString.Invariant($"{m * 1e3:0.######}");
}
