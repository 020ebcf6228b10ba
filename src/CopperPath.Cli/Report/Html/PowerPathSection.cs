namespace CopperPath.Cli.Report.Html;

/// <summary>The way of the current from connector to load and back, one box for each stretch.</summary>
internal static class PowerPathSection
{
    public static Markup Of(IReadOnlyList<Stretch> stretches) => $"""
        <section id="path" aria-labelledby="path-head">
        <h2 id="path-head">Power path</h2>
        <p>From the connector to the load and back, by the roles the brief gives. Rise is that of the hottest section or hole by the relation chosen; the bar in each box is the larger share of its allowed rise or drop.</p>
        {Scroller.Of("Diagram of the power path", PathDiagram.Across(stretches), "wide-only")}
        <div class="narrow-only">{PathDiagram.Down(stretches)}</div>
        </section>
        """;
}
