using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>What a trace of any width carries on the layers in use, and where this board's copper stands.</summary>
internal static class CapacitySection
{
    public static Markup Of(Review review, IReadOnlyList<Stretch> stretches, ConductorRating rating)
    {
        IReadOnlyList<LayerCapacity> kinds = LayerCapacity.Of(stretches, rating, review.Stack!);
        if (kinds.Count == 0)
        {
            return Markup.Nothing;
        }

        IEnumerable<Stretch> marked = kinds.SelectMany(kind => kind.Marks).Select(mark => mark.Stretch).DistinctBy(stretch => stretch.Number).OrderBy(stretch => stretch.Number);
        return $"""
            <section id="capacity" aria-labelledby="capacity-head">
            <h2 id="capacity-head">What the layers carry</h2>
            <p>Current that warms one long trace by the allowed rise, over its width: the thick line by {rating.Name}, the thin one by {rating.Other.Name}; dashed where the relation is not known to hold. A mark is the hottest section of a stretch on these layers: round below its limit, a red square beyond it.</p>
            <div class="charts">{kinds.Select(kind => Chart(kind, rating))}</div>
            <ol class="mark-key">{marked.Select(stretch => (Markup)$"""<li><span class="mark-number">{stretch.Number + 1}</span> {stretch.Name}</li>""")}</ol>
            <p class="note">What a trace carries on this very board, its planes and cooling counted, is drawn by <code>copperpath curve</code> with the same brief; each point takes a solve of its own.</p>
            </section>
            """;
    }

    private static Markup Chart(LayerCapacity kind, ConductorRating rating)
    {
        string allowed = string.Join(", ", kind.AllowedK.Select(QuantityText.TemperatureDifference));
        string borrowed = rating.IsBorrowedFor(kind.Layers[0]) ? "; the fit is for outer layers and is borrowed here" : "";
        return $"""
            <figure><figcaption>{CapacityChart.NameOf(kind)}; allowed rise {allowed}{borrowed}</figcaption>
            {CapacityChart.Of(kind, rating)}</figure>
            """;
    }
}
