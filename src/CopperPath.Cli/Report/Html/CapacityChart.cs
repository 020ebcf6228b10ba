using CopperPath.Cli.Overlays;
using CopperPath.Cli.Plots;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>Current over width on layers of one kind, drawn as text the page can scale, search and print.</summary>
internal static class CapacityChart
{
    private const int Width = 440;
    private const int Height = 350;
    private const int Left = 46;
    private const int Right = 12;
    private const int Top = 12;
    private const int Foot = 44;

    /// <summary>Widths every plot shows, metres, so that boards can be compared.</summary>
    private const double LeastWidthM = 0.2e-3;
    private const double MostWidthM = 10e-3;

    /// <summary>Marks nearer than this share one number plate, pixels.</summary>
    private const double SamePlacePx = 9;

    public static Markup Of(LayerCapacity capacity, ConductorRating rating)
    {
        double[] widthsM = [.. capacity.Marks.Select(mark => mark.WidthM), LeastWidthM, MostWidthM];
        LogAxis x = LogAxis.For(widthsM.Select(m => m * 1e3), Left, Width - Right);
        (double fromM, double toM) = (RoundNumbers.AtMost(widthsM.Min() * 1e3) * 1e-3, RoundNumbers.AtLeast(widthsM.Max() * 1e3) * 1e-3);
        List<Curve> curves =
        [
            .. capacity.AllowedK.Select(riseK => new Curve("other", capacity.Curve(rating.Other, riseK, fromM, toM))),
            .. capacity.AllowedK.Select(riseK => new Curve("chosen", capacity.Curve(rating, riseK, fromM, toM))),
        ];
        LogAxis y = LogAxis.For(curves.SelectMany(curve => curve.Points).Select(point => point.CurrentA).Concat(capacity.Marks.Select(mark => mark.CurrentA)), Height - Foot, Top);
        return $"""
            <svg class="capacity" viewBox="0 0 {Width} {Height}" role="img" aria-label="{NameOf(capacity)}: current over width, and the hottest section of each stretch; the table of hottest sections holds the same figures">
            <rect class="frame" x="{Left}" y="{Top}" width="{Width - Left - Right}" height="{Height - Top - Foot}"/>
            {x.Ticks.Select(tick => (Markup)$"""<path class="rule" d="M{Px(tick.Place)} {Top}V{Height - Foot}"/><text class="label" text-anchor="middle" x="{Px(tick.Place)}" y="{Height - Foot + 16}">{RoundNumbers.Plain(tick.Value)}</text>""")}
            {y.Ticks.Select(tick => (Markup)$"""<path class="rule" d="M{Left} {Px(tick.Place)}H{Width - Right}"/><text class="label" text-anchor="end" x="{Left - 6}" y="{Px(tick.Place + 4)}">{RoundNumbers.Plain(tick.Value)}</text>""")}
            <text text-anchor="middle" x="{(Left + Width - Right) / 2}" y="{Height - 8}">Width, mm</text>
            <text text-anchor="middle" transform="translate(12 {(Top + Height - Foot) / 2}) rotate(-90)">Current, A</text>
            {curves.Select(curve => Line(curve, x, y))}
            {Marks(capacity, x, y)}
            </svg>
            """;
    }

    /// <summary>How a kind of layers is called, its layers and its copper.</summary>
    public static string NameOf(LayerCapacity capacity)
    {
        string kind = capacity.Placement == Capacity.ConductorPlacement.External ? "Outer" : "Inner";
        string layers = string.Join(" and ", capacity.Layers.Select(layer => FormattableString.Invariant($"{layer}")));
        return $"{kind} {(capacity.Layers.Count == 1 ? "layer" : "layers")} {layers}, {QuantityText.Length(capacity.ThicknessM)}";
    }

    /// <summary>Whole where the relation is known to hold, dashed elsewhere.</summary>
    private static Markup Line(Curve curve, LogAxis x, LogAxis y)
    {
        List<Markup> runs = [];
        IReadOnlyList<LayerCapacity.Point> points = curve.Points;
        for (int from = 0; from < points.Count - 1;)
        {
            bool isIn = IsIn(from);
            int to = from + 1;
            while (to < points.Count - 1 && IsIn(to) == isIn)
            {
                to++;
            }

            string path = string.Join("L", points.Skip(from).Take(to - from + 1).Select(point => $"{Px(x.PlaceOf(point.WidthM * 1e3))} {Px(y.PlaceOf(point.CurrentA))}"));
            runs.Add($"""<path class="curve {curve.Look}{(isIn ? "" : " dashed")}" d="M{path}"/>""");
            from = to;
        }

        return $"{runs}";

        bool IsIn(int i) => points[i].IsInRange && points[i + 1].IsInRange;
    }

    private static Markup Marks(LayerCapacity capacity, LogAxis x, LogAxis y)
    {
        List<PlacedMark> marks = [.. capacity.Marks.Select(mark => new PlacedMark(mark, x.PlaceOf(mark.WidthM * 1e3), y.PlaceOf(mark.CurrentA)))];
        List<PlacedNumber> numbers = [];
        List<PlacedMark> waiting = [.. marks];
        while (waiting.Count > 0)
        {
            PlacedMark first = waiting[0];
            List<PlacedMark> here = waiting.FindAll(mark => mark.DistanceTo(first) < SamePlacePx);
            waiting.RemoveAll(mark => mark.DistanceTo(first) < SamePlacePx);
            numbers.Add(new PlacedNumber(string.Join(", ", here.Select(mark => FormattableString.Invariant($"{mark.Mark.Stretch.Number + 1}"))), first.X, first.Y));
        }

        return $"""
            {marks.Select(MarkAt)}
            {NumberPlacement.Of(numbers, marks, Left, Top, Width - Right, Height - Foot)
                .Select(number => (Markup)$"""<text class="mark-number" x="{Px(number.X)}" y="{Px(number.Y)}">{number.Text}</text>""")}
            """;
    }

    /// <summary>Round within its limit, square beyond it; the same difference as of the marks on the board.</summary>
    private static Markup MarkAt(PlacedMark mark) => mark.Mark.IsBeyond
        ? (Markup)$"""<rect class="mark beyond" x="{Px(mark.X - 4.5)}" y="{Px(mark.Y - 4.5)}" width="9" height="9"/>"""
        : (Markup)$"""<circle class="mark {StageLook.ClassOf(mark.Mark.Stretch.Role)}" cx="{Px(mark.X)}" cy="{Px(mark.Y)}" r="4.5"/>""";

    private static string Px(double px) => FormattableString.Invariant($"{px:0.#}");

    private sealed record Curve(string Look, IReadOnlyList<LayerCapacity.Point> Points);
}
