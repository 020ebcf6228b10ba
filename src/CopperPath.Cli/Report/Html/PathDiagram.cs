using CopperPath.Brief;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>The power path as a drawing: stages in the order of the current, a box for each stretch, arrows between stages.</summary>
internal static class PathDiagram
{
    private const int BoxWidth = 236;
    private const int BoxHeight = 132;
    private const int Gap = 14;
    private const int StageGap = 46;
    private const int HeadHeight = 30;
    private const int ValueColumn = 128;
    private const int NameLine = 28;

    /// <summary>Stages side by side, the return below them; for wide pages.</summary>
    public static Markup Across(IReadOnlyList<Stretch> stretches)
    {
        List<(NetRole Role, List<Stretch> Boxes)> forward = Stages(stretches, role => role is not (NetRole.Return or NetRole.Other));
        List<(NetRole Role, List<Stretch> Boxes)> below = Stages(stretches, role => role is NetRole.Return or NetRole.Other);
        List<Markup> parts = [];
        int deepest = forward.Select(stage => stage.Boxes.Count).DefaultIfEmpty(0).Max();
        int forwardHeight = deepest == 0 ? 0 : HeadHeight + (deepest * (BoxHeight + Gap));
        int x = 0;
        foreach ((NetRole role, List<Stretch> boxes) in forward)
        {
            if (x > 0)
            {
                parts.Add(Arrow(x - StageGap + 6, HeadHeight + (BoxHeight / 2), x - 6, HeadHeight + (BoxHeight / 2)));
            }

            parts.Add(Stage(role, boxes, x, 0, perRow: 1));
            x += BoxWidth + StageGap;
        }

        int width = Math.Max(x - StageGap, BoxWidth);
        int y = forwardHeight;
        int perRow = Math.Max(1, (width + Gap) / (BoxWidth + Gap));
        foreach ((NetRole role, List<Stretch> boxes) in below)
        {
            y += 10;
            if (role == NetRole.Return)
            {
                parts.Add(Arrow(width - 6, y + (HeadHeight / 2) - 4, 120, y + (HeadHeight / 2) - 4));
            }

            parts.Add(Stage(role, boxes, 0, y, perRow));
            y += HeadHeight + (((boxes.Count + perRow - 1) / perRow) * (BoxHeight + Gap));
        }

        return Drawing(width, y, "across", stretches.Count, parts);
    }

    /// <summary>Stages below one another; for narrow pages.</summary>
    public static Markup Down(IReadOnlyList<Stretch> stretches)
    {
        List<Markup> parts = [];
        int y = 0;
        foreach ((NetRole role, List<Stretch> boxes) in Stages(stretches, _ => true))
        {
            parts.Add(Stage(role, boxes, 0, y, perRow: 1));
            y += HeadHeight + (boxes.Count * (BoxHeight + Gap)) + 10;
        }

        return Drawing(BoxWidth + 10, y, "down", stretches.Count, parts);
    }

    private static Markup Drawing(int width, int height, string name, int count, List<Markup> parts) => $"""
        <svg class="path-{name}" viewBox="-2 -2 {width + 4} {height + 4}" width="{width + 4}" height="{height + 4}" role="img" aria-label="Power path of {count} stretches; the table of stretches below holds the same figures">
        <defs><marker id="tip-{name}" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="7" markerHeight="7" orient="auto"><path d="M0 0L8 4L0 8z" class="tip"/></marker></defs>
        {parts}
        </svg>
        """;

    private static List<(NetRole Role, List<Stretch> Boxes)> Stages(IReadOnlyList<Stretch> stretches, Func<NetRole, bool> isWanted) =>
        [.. StageLook.Order.Where(isWanted)
            .Select(role => (role, stretches.Where(stretch => stretch.Role == role).ToList()))
            .Where(stage => stage.Item2.Count > 0)];

    private static Markup Arrow(int fromX, int fromY, int toX, int toY) =>
        (Markup)$"""<path class="arrow" d="M{fromX} {fromY}L{toX} {toY}" marker-end="url(#tip-across)"/>""";

    private static Markup Stage(NetRole role, List<Stretch> boxes, int x, int y, int perRow) => $"""
        <g class="{StageLook.ClassOf(role)}"><text class="stage-name" x="{x}" y="{y + 16}">{StageLook.NameOf(role)}</text>
        {boxes.Select((box, i) => Box(box, x + ((i % perRow) * (BoxWidth + Gap)), y + HeadHeight + ((i / perRow) * (BoxHeight + Gap))))}
        </g>
        """;

    private static Markup Box(Stretch stretch, int x, int y)
    {
        double share = Math.Max(stretch.RiseShare ?? 0, stretch.DropShare ?? 0);
        List<string> name = Wrapped(stretch.Name);
        string rise = stretch.RiseK is { } riseK ? QuantityText.TemperatureDifference(riseK) : "-";
        return $"""
            <g class="{(share > 1 ? "box over" : "box")}" transform="translate({x} {y})">
            <rect class="frame" width="{BoxWidth}" height="{BoxHeight}" rx="5"/><rect class="edge" width="5" height="{BoxHeight}" rx="2"/>
            {name.Select((line, i) => (Markup)$"""<text class="name" x="14" y="{19 + (16 * i)}">{line}</text>""")}
            {Figure("current", QuantityText.Current(stretch.EnteringA), 14, 58)}{Figure("drop", Or(stretch, stretch.Conduction.DropV, QuantityText.Voltage), ValueColumn, 58)}
            {Figure("loss", Or(stretch, stretch.Conduction.LossW, QuantityText.Power), 14, 78)}{Figure("rise", rise, ValueColumn, 78)}
            {(stretch.Own is { } own ? Figure("on this board, rise", QuantityText.TemperatureDifference(own.PeakK), 14, 98) : Markup.Nothing)}
            <rect class="trough" x="14" y="112" width="{BoxWidth - 28}" height="6" rx="3"/><rect class="fill" x="14" y="112" width="{(int)Math.Round((BoxWidth - 28) * Math.Min(1, share))}" height="6" rx="3"/>
            </g>
            """;
    }

    private static Markup Figure(string label, string value, int x, int y) =>
        (Markup)$"""<text x="{x}" y="{y}"><tspan class="label">{label} </tspan><tspan class="value">{value}</tspan></text>""";

    private static string Or(Stretch stretch, double value, Func<double, string> text) => stretch.IsSolved ? text(value) : "not solved";

    /// <summary>A name in at most two lines, cut with an ellipsis when even those are too short.</summary>
    private static List<string> Wrapped(string name)
    {
        List<string> lines = [""];
        foreach (string word in name.Split(' '))
        {
            string longer = lines[^1].Length == 0 ? word : $"{lines[^1]} {word}";
            if (longer.Length <= NameLine || lines[^1].Length == 0)
            {
                lines[^1] = longer;
            }
            else
            {
                lines.Add(word);
            }
        }

        return lines.Count <= 2 ? lines : [lines[0], $"{lines[1]} …"];
    }
}
