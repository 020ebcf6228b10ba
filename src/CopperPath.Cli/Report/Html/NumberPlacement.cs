namespace CopperPath.Cli.Report.Html;

/// <summary>A mark and where it stands on a plot, pixels.</summary>
internal sealed record PlacedMark(LayerCapacity.Mark Mark, double X, double Y)
{
    public double DistanceTo(PlacedMark other) => Math.Sqrt(((X - other.X) * (X - other.X)) + ((Y - other.Y) * (Y - other.Y)));
}

/// <summary>A number with the mark it belongs to, or with the left end of its own baseline, pixels.</summary>
internal sealed record PlacedNumber(string Text, double X, double Y);

/// <summary>Where numbers stand beside the marks of a plot: on the first side that covers neither a mark nor another number.</summary>
internal static class NumberPlacement
{
    private const double TextHeightPx = 12;
    private const double DigitWidthPx = 7;
    private const double ReachPx = 8;

    /// <param name="numbers">Numbers and the marks they belong to.</param>
    /// <param name="marks">All marks.</param>
    /// <param name="left">Frame they must stay in.</param>
    /// <param name="top">The same frame.</param>
    /// <param name="right">The same frame.</param>
    /// <param name="bottom">The same frame.</param>
    /// <returns>The numbers where they stand, in the order given.</returns>
    public static IReadOnlyList<PlacedNumber> Of(IReadOnlyList<PlacedNumber> numbers, IReadOnlyList<PlacedMark> marks, double left, double top, double right, double bottom)
    {
        List<Box> taken = [.. marks.Select(mark => new Box(mark.X - 5, mark.Y - 5, mark.X + 5, mark.Y + 5))];
        List<PlacedNumber> placed = [];
        foreach (PlacedNumber number in numbers)
        {
            List<Box> places = [.. Around(number.X, number.Y, DigitWidthPx * number.Text.Length)];
            Box best = places.Find(place => place.Left >= left && place.Top >= top && place.Right <= right && place.Bottom <= bottom && !taken.Exists(place.Touches))
                ?? places[0];
            taken.Add(best);
            placed.Add(new PlacedNumber(number.Text, best.Left, best.Bottom - 2));
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

    private sealed record Box(double Left, double Top, double Right, double Bottom)
    {
        public static Box Of(double left, double top, double width) => new(left, top, left + width, top + TextHeightPx);

        public bool Touches(Box other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;
    }
}
