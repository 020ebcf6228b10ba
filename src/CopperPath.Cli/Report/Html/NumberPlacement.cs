namespace CopperPath.Cli.Report.Html;

/// <summary>Where numbers stand beside the marks of a plot: on the first side that covers neither a mark nor another number.</summary>
internal static class NumberPlacement
{
    private const double TextHeightPx = 12;
    private const double DigitWidthPx = 7;
    private const double ReachPx = 8;

    /// <param name="plates">Numbers and the marks they belong to.</param>
    /// <param name="marks">All marks.</param>
    /// <param name="frame">Where they must stay: left, top, right, bottom.</param>
    /// <returns>Left end and baseline of each, in the order given.</returns>
    public static IReadOnlyList<(string Text, double X, double Y)> Of(
        IReadOnlyList<(string Text, double X, double Y)> plates, IReadOnlyList<(double X, double Y)> marks, (double Left, double Top, double Right, double Bottom) frame)
    {
        List<Box> taken = [.. marks.Select(mark => new Box(mark.X - 5, mark.Y - 5, mark.X + 5, mark.Y + 5))];
        List<(string, double, double)> placed = [];
        foreach ((string text, double x, double y) in plates)
        {
            Box[] places = [.. Around(x, y, DigitWidthPx * text.Length)];
            Box best = places.FirstOrDefault(place => IsInside(place, frame) && !taken.Exists(place.Touches), places[0]);
            taken.Add(best);
            placed.Add((text, best.Left, best.Bottom - 2));
        }

        return placed;
    }

    private static IEnumerable<Box> Around(double x, double y, double width)
    {
        const double half = TextHeightPx / 2;
        foreach (double reach in (double[])[ReachPx, 2 * ReachPx])
        {
            yield return Box.Of(x + reach, y - half, width);
            yield return Box.Of(x - reach - width, y - half, width);
            yield return Box.Of(x - (width / 2), y - reach - TextHeightPx, width);
            yield return Box.Of(x - (width / 2), y + reach, width);
            yield return Box.Of(x + (0.7 * reach), y - reach - TextHeightPx, width);
            yield return Box.Of(x + (0.7 * reach), y + reach, width);
            yield return Box.Of(x - (0.7 * reach) - width, y - reach - TextHeightPx, width);
            yield return Box.Of(x - (0.7 * reach) - width, y + reach, width);
        }
    }

    private static bool IsInside(Box box, (double Left, double Top, double Right, double Bottom) frame) =>
        box.Left >= frame.Left && box.Top >= frame.Top && box.Right <= frame.Right && box.Bottom <= frame.Bottom;

    private readonly record struct Box(double Left, double Top, double Right, double Bottom)
    {
        public static Box Of(double left, double top, double width) => new(left, top, left + width, top + TextHeightPx);

        public bool Touches(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
    }
}
