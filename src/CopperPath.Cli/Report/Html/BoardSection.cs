using CopperPath.Copper;
using CopperPath.Nets;

namespace CopperPath.Cli.Report.Html;

/// <summary>The frame of the interactive board view; its script fills it.</summary>
internal static class BoardSection
{
    public static Markup Of(Review review, IReadOnlyList<FieldGrid> grids) => $"""
        <section id="board" aria-labelledby="board-head">
        <h2 id="board-head">Board</h2>
        <noscript><p>The board view needs the page's own script. All figures are in the tables below; pictures of the layers lie beside this file.</p></noscript>
        <form class="controls" id="view-controls">
        <label>Layer <select id="view-layer">{review.Board!.Nets!.Layers.Select(layer => Layer(review, layer))}</select></label>
        <label>Quantity <select id="view-quantity"></select></label>
        <label>Stretch <select id="view-stretch"><option value="-1">all</option>{review.Nets.Select((net, n) => (Markup)$"""<option value="{n}">{net.Bound.Review.Name}</option>""")}</select></label>
        <label class="tick"><input type="checkbox" id="view-below"> seen from below</label>
        <span class="buttons"><button type="button" id="view-in" aria-label="Zoom in">+</button><button type="button" id="view-out" aria-label="Zoom out">−</button><button type="button" id="view-all">Whole board</button></span>
        </form>
        <div class="view"><canvas id="view" tabindex="0" role="application" aria-label="Board view" aria-describedby="view-keys view-about"></canvas>
        <p class="scale-bar" id="view-bar" aria-hidden="true"><i></i><span></span></p>
        <div class="legend" id="view-legend" aria-hidden="true"></div></div>
        <div class="sheets" id="view-sheets"></div>
        <p class="reading" id="view-reading" aria-live="polite">Point at the copper, or move the cross with the arrow keys, to read values.</p>
        <p class="note" id="view-keys">Drag to pan, wheel or + and − to zoom, 0 for the whole board; arrow keys move the cross (with Shift ten times as far), Page Up and Page Down change the layer.</p>
        <p class="note" id="view-about">{About(grids)}</p>
        </section>
        """;

    private static Markup Layer(Review review, CopperLayer layer)
    {
        NetList nets = review.Board!.Nets!;
        string side = layer.Number == nets.Layers[0].Number ? " (top)" : layer.Number == nets.Layers[^1].Number ? " (bottom)" : "";
        return (Markup)$"""<option value="{layer.Number}">{layer.Number}{side}</option>""";
    }

    private static string About(IReadOnlyList<FieldGrid> grids) => grids.Count == 0
        ? "No stretch was solved: only copper is shown."
        : "Each value is the solver's own in the triangle at the centre of the cell pointed at, to three digits; cells are "
            + FormattableString.Invariant($"{grids.Min(grid => grid.PitchNm) / 1e6:0.##} mm to {grids.Max(grid => grid.PitchNm) / 1e6:0.##} mm wide, finer for smaller stretches. ")
            + "Potential drop is counted from the stretch's highest terminal. Where stretches share copper all are read, and the largest value is painted. "
            + "Outlines are drawn to about 0.02 mm.";
}
