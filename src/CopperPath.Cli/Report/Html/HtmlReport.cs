using System.Reflection;
using System.Text;
using CopperPath.Cli.Overlays.Stages;
using CopperPath.Judging;

namespace CopperPath.Cli.Report.Html;

/// <summary>
/// The whole review as one page that needs nothing else: no network, no other file. Every figure is also there as text,
/// so the page can be read, searched and printed without its script.
/// </summary>
internal static class HtmlReport
{
    public const string FileName = "report.html";

    /// <param name="review">A review with at least one net.</param>
    /// <param name="stretches">Its stretches.</param>
    /// <param name="brief">The brief it was made from.</param>
    /// <param name="grids">The fields, sampled.</param>
    /// <param name="scales">The scales of the pictures.</param>
    /// <param name="waveforms">A picture for each converter of the brief.</param>
    /// <param name="loadProfile">The pictures of the load profile; none where there is none.</param>
    /// <param name="stages">The stages on the board; null where they could not be laid out.</param>
    /// <param name="parts">Told which section could not be made; the page then says so in its place.</param>
    public static OutputFile Of(
        Review review, IReadOnlyList<Stretch> stretches, BriefSource brief, IReadOnlyList<FieldGrid> grids, ReviewScales scales,
        IReadOnlyList<OutputFile> waveforms, IReadOnlyList<OutputFile> loadProfile, StageScene? stages, ReportParts parts)
    {
        ConductorRating rating = ConductorRating.Shown(review.Brief!.Limits.JudgeBy, review.Stack!);
        (string json, string bytes) = parts.Make($"{FileName}, data of the board view", () => BoardData.Of(review, rating, grids, scales), ("{}", ""));
        string revision = review.Brief.Board.Revision is { } text ? $", revision {text}" : "";
        Markup load = Section("load-profile", () => LoadProfileSection.Of(review, loadProfile));
        Markup capacity = Section("capacity", () => CapacitySection.Of(review, stretches, rating));
        Markup tolerance = Section("tolerance", () => ToleranceSection.Of(review));
        Markup converters = Section("converters", () => ConvertersSection.Of(review, waveforms));
        Markup page = $"""
            {Head($"{review.Brief.Board.Name}{revision}: review of its power copper")}
            <body>
            <a class="skip" href="#findings">Skip to the findings</a>
            <header>
            <p class="product">{Product.NameAndVersion} · review of power copper</p>
            <h1>{review.Brief.Board.Name}<span class="revision">{revision}</span></h1>
            <nav aria-label="Sections">{Contents(load, capacity, tolerance, converters)}</nav>
            </header>
            <main>
            {Section("summary", () => SummarySection.Of(review, stretches, rating, stages))}
            {Section("path", () => PowerPathSection.Of(stretches))}
            {Section("board", () => BoardSection.Of(review, grids))}
            {Section("findings", () => FindingsSection.Of(review))}
            {Section("stretches", () => StretchesSection.Of(review, stretches, rating))}
            {Section("hotspots", () => HotspotsSection.Of(review, stretches, rating))}
            {load}
            {capacity}
            {tolerance}
            {converters}
            {Section("basis", () => BasisSection.Of(review, rating))}
            {Section("repeat", () => RepeatSection.Of(review, brief))}
            </main>
            <footer><p>{Cautions.Text}</p></footer>
            <script type="application/json" id="board-data">{Markup.Raw(json)}</script>
            <script type="application/octet-stream" id="board-bytes">{Markup.Raw(bytes)}</script>
            <script>
            {Asset("quantities.js")}
            {Asset("tables.js")}
            {Asset("fields.js")}
            {Asset("board.js")}
            </script>
            </body>
            </html>

            """;
        return new OutputFile(FileName, Encoding.UTF8.GetBytes(page.ToString()));

        Markup Section(string id, Func<Markup> make) => parts.Make(
            $"{FileName}, section {id}", make, reason => (Markup)$"""<section id="{id}"><h2>Missing: {id}</h2><p>This section could not be made: {reason}.</p></section>""");
    }

    /// <summary>All of a page before its body.</summary>
    internal static Markup Head(string title) => $"""
        <!DOCTYPE html>
        <html lang="en">
        <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width, initial-scale=1">
        <meta name="color-scheme" content="light dark">
        <meta name="generator" content="{Product.NameAndVersion}">
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:">
        <title>{title}</title>
        <style>
        {Asset("report.css")}
        </style>
        </head>
        """;

    /// <summary>Sections that a review may lack are named where they are there.</summary>
    private static Markup Contents(Markup load, Markup capacity, Markup tolerance, Markup converters)
    {
        (string Id, string Name, bool IsThere)[] sections =
        [
            ("summary", "Summary", true), ("path", "Power path", true), ("board", "Board", true), ("findings", "Findings", true),
            ("stretches", "Stretches", true), ("hotspots", "Hottest copper", true), ("load-profile", "Load profile", load != Markup.Nothing),
            ("capacity", "Capacity", capacity != Markup.Nothing), ("tolerance", "Ranges", tolerance != Markup.Nothing), ("converters", "Converters", converters != Markup.Nothing),
            ("basis", "Basis", true), ("repeat", "Repeat", true),
        ];
        return $"""<ul>{sections.Where(section => section.IsThere).Select(section => (Markup)$"""<li><a href="#{section.Id}">{section.Name}</a></li>""")}</ul>""";
    }

    private static Markup Asset(string name)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream($"Report.Html.{name}")
            ?? throw new InvalidOperationException($"the asset {name} is not embedded");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return Markup.Raw(reader.ReadToEnd());
    }
}
