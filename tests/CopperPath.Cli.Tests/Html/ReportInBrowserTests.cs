using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using CopperPath.Cli.Tests.Report;
using Microsoft.Playwright;

namespace CopperPath.Cli.Tests.Html;

/// <summary>The report as its reader meets it: in a browser, from a file.</summary>
public sealed class ReportInBrowserTests(ReviewedNeck review, Browser browser) : IClassFixture<ReviewedNeck>, IClassFixture<Browser>
{
    private string Report => Path.Combine(review.Folder, "report.html");

    /// <summary>Oracle: results.json, whose probes name points and the solver's values there.</summary>
    [Fact]
    public async Task WhatIsReadAtAPointIsWhatTheJsonSaysThere()
    {
        await using ReportPage report = await browser.OpenAsync(Report);
        using JsonDocument results = JsonDocument.Parse(review.Text("results.json"));
        JsonElement[] probes = [.. results.RootElement.GetProperty("probes").EnumerateArray()];
        probes.Select(probe => probe.GetProperty("layer").GetInt32()).Distinct().Count().ShouldBe(2);
        await report.Page.Locator("#view").ScrollIntoViewIfNeededAsync();

        foreach (JsonElement probe in probes)
        {
            await report.Page.SelectOptionAsync("#view-layer", probe.GetProperty("layer").GetInt32().ToString(CultureInfo.InvariantCulture));
            await report.PointAtAsync(probe.GetProperty("xM").GetDouble() * 1e3, probe.GetProperty("yM").GetDouble() * 1e3);

            ShouldAgree(await ValueAsync(report, "density"), probe.GetProperty("currentDensityAPerM2").GetDouble());
            ShouldAgree(await ValueAsync(report, "drop"), probe.GetProperty("dropV").GetDouble());
            ShouldAgree(await ValueAsync(report, "rise"), probe.GetProperty("riseK").GetDouble());
        }
    }

    /// <summary>Oracle: the plated holes of results.json.</summary>
    [Fact]
    public async Task APlatedHoleTellsItsCurrentAndRise()
    {
        await using ReportPage report = await browser.OpenAsync(Report);
        using JsonDocument results = JsonDocument.Parse(review.Text("results.json"));
        JsonElement hole = results.RootElement.GetProperty("nets")[0].GetProperty("platedHoles")[0];
        await report.Page.Locator("#view").ScrollIntoViewIfNeededAsync();
        await report.Page.EvaluateAsync("() => boardView.zoom(8, ...boardView.toPx(35, 5))");

        await report.PointAtAsync(hole.GetProperty("xM").GetDouble() * 1e3, hole.GetProperty("yM").GetDouble() * 1e3);

        string rise = hole.GetProperty("riseK").GetDouble().ToString("F1", CultureInfo.InvariantCulture);
        (await report.ReadingAsync()).ShouldContain($"between layers 1 and 2 12.0 A, rise {rise} K");
    }

    [Fact]
    public async Task PressingAFindingMovesTheViewToIt()
    {
        await using ReportPage report = await browser.OpenAsync(Report);
        (double X, double Y, double Wide, string Layer) before = await report.ViewAsync();
        using JsonDocument results = JsonDocument.Parse(review.Text("results.json"));
        JsonElement finding = results.RootElement.GetProperty("findings")[0];

        await report.Page.Locator("#findings .fly").First.ClickAsync();

        (double X, double Y, double Wide, string Layer) after = await report.ViewAsync();
        after.X.ShouldBe(finding.GetProperty("xM").GetDouble() * 1e3, 1e-3);
        after.Y.ShouldBe(finding.GetProperty("yM").GetDouble() * 1e3, 1e-3);
        after.Wide.ShouldBeLessThan(before.Wide);
        (await report.ReadingAsync()).ShouldStartWith("Finding 1: Layer");
        await report.Page.Keyboard.PressAsync("Escape");
        (await report.Page.EvaluateAsync<bool>("() => document.activeElement.matches('#findings .fly')")).ShouldBeTrue();
    }

    [Fact]
    public async Task NothingIsFetchedAndNothingComplains()
    {
        await using ReportPage report = await browser.OpenAsync(Report);
        foreach (string quantity in new[] { "drop", "density" })
        {
            await report.Page.SelectOptionAsync("#view-quantity", quantity);
            await report.NextFrameAsync();
        }

        report.Complaints.ShouldBeEmpty();
        report.Requests.ShouldBe([new Uri(Report).AbsoluteUri]);
    }

    [Fact]
    public async Task TheKeyboardAloneReachesTheViewReadsAndMovesOn()
    {
        await using ReportPage report = await browser.OpenAsync(Report);
        for (int presses = 0; presses < 40 && await FocusedAsync(report) != "view"; presses++)
        {
            await report.Page.Keyboard.PressAsync("Tab");
        }

        (await FocusedAsync(report)).ShouldBe("view");
        await report.Page.Keyboard.PressAsync("ArrowRight");
        string first = await report.ReadingAsync();
        first.ShouldStartWith("Layer 1, x ");
        await report.Page.Keyboard.PressAsync("Shift+ArrowLeft");
        (await report.ReadingAsync()).ShouldNotBe(first);
        double wide = (await report.ViewAsync()).Wide;
        await report.Page.Keyboard.PressAsync("+");
        (await report.ViewAsync()).Wide.ShouldBeLessThan(wide);
        await report.Page.Keyboard.PressAsync("PageDown");
        (await report.ViewAsync()).Layer.ShouldBe("2");
        await report.Page.Keyboard.PressAsync("Tab");
        (await FocusedAsync(report)).ShouldNotBe("view");
    }

    [Fact]
    public async Task TablesSortByTheirHeads()
    {
        await using ReportPage report = await browser.OpenAsync(Report);
        ILocator head = report.Page.Locator("#hotspots table").First.Locator("th", new() { HasTextString = "Width" }).First;

        await head.Locator("button").ClickAsync();
        string[] falling = await KeysAsync(report);
        await head.Locator("button").ClickAsync();
        string[] rising = await KeysAsync(report);

        (await head.GetAttributeAsync("aria-sort")).ShouldBe("ascending");
        rising.Length.ShouldBeGreaterThan(1);
        rising.Select(Number).ShouldBeInOrder(SortDirection.Ascending);
        falling.Select(Number).ShouldBeInOrder(SortDirection.Descending);
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task ThePageIsNeverWiderThanItsWindow(int widthPx)
    {
        await using ReportPage report = await browser.OpenAsync(Report, widthPx: widthPx);

        (await report.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth")).ShouldBeLessThanOrEqualTo(widthPx);
    }

    [Fact]
    public async Task TheTableOfStretchesFitsAWindowOf1280Pixels()
    {
        await using ReportPage report = await browser.OpenAsync(Report);

        (await report.Page.EvaluateAsync<int>(
            "() => { const box = document.querySelector('#stretches .scroller'); return box.scrollWidth - box.clientWidth; }")).ShouldBe(0);
    }

    /// <summary>WCAG 2.2, 2.1.1: what scrolls can be reached by the keyboard; what does not is no stop on its way.</summary>
    [Fact]
    public async Task ATableThatScrollsSaysSoAndTakesTheFocus()
    {
        await using ReportPage report = await browser.OpenAsync(Report, widthPx: 390);
        ILocator box = report.Page.Locator("#stretches .scroller").First;

        (await report.Page.Locator("#stretches .scroll-note").First.IsVisibleAsync()).ShouldBeTrue();
        await box.FocusAsync();
        await report.Page.Keyboard.PressAsync("ArrowRight");
        await report.Page.WaitForFunctionAsync("() => document.querySelector('#stretches .scroller').scrollLeft > 0");
        await report.Page.SetViewportSizeAsync(1280, 900);
        await report.Page.WaitForFunctionAsync("() => document.querySelector('#stretches .scroller').tabIndex < 0");
        (await report.Page.Locator("#stretches .scroll-note").First.IsVisibleAsync()).ShouldBeFalse();
    }

    [Fact]
    public async Task AWindowOfAnotherSizeKeepsTheWholeBoardInView()
    {
        await using ReportPage report = await browser.OpenAsync(Report);
        double ShareOf(double wide) => 60 / wide;
        double before = ShareOf((await report.ViewAsync()).Wide);

        await report.Page.SetViewportSizeAsync(500, 900);
        await report.NextFrameAsync();

        before.ShouldBeInRange(0.5, 1);
        ShareOf((await report.ViewAsync()).Wide).ShouldBeInRange(0.5, 1);
        await report.Page.EvaluateAsync("() => boardView.zoom(4)");
        (double x, double y, double wide, _) = await report.ViewAsync();
        await report.Page.SetViewportSizeAsync(1000, 900);
        await report.NextFrameAsync();
        (double X, double Y, double Wide, string Layer) after = await report.ViewAsync();
        (after.X, after.Y).ShouldBe((x, y));
        after.Wide.ShouldBe(wide, 0.01 * wide);
    }

    /// <summary>A4 at 96 CSS pixels to the inch is 794 by 1123; 14 mm margins leave 688 (CSS Values and Units, section 6.2).</summary>
    [Fact]
    public async Task PrintedNothingIsCutOffAndControlsAreGone()
    {
        await using ReportPage report = await browser.OpenAsync(Report, ColorScheme.Dark, widthPx: 688);
        byte[] pdf = await report.Page.PdfAsync(new() { Format = "A4", PrintBackground = true });
        await report.Page.EmulateMediaAsync(new() { Media = Media.Print });

        pdf.Length.ShouldBeGreaterThan(20_000);
        (await report.Page.EvaluateAsync<int>("() => document.documentElement.scrollWidth")).ShouldBeLessThanOrEqualTo(688);
        (await report.Page.Locator("#view-controls").IsVisibleAsync()).ShouldBeFalse();
        (await report.Page.Locator(".fly").First.IsVisibleAsync()).ShouldBeFalse();
        (await report.Page.EvaluateAsync<string>("() => getComputedStyle(document.body).color")).ShouldBe("rgb(0, 0, 0)");
    }

    /// <summary>Paper shows each layer with reviewed copper as a picture of its own, painted before the pages are laid out.</summary>
    [Theory]
    [InlineData(ColorScheme.Light, 1280)]
    [InlineData(ColorScheme.Dark, 390)]
    public async Task PrintedEachLayerIsShownWholeAndInLightColours(ColorScheme theme, int widthPx)
    {
        await using ReportPage report = await browser.OpenAsync(Report, theme, widthPx);
        string onScreen = Encoding.Latin1.GetString(await report.Page.PdfAsync(new() { Format = "A4", PrintBackground = true }));
        (await report.Page.EvaluateAsync<int>("() => document.querySelectorAll('#view-sheets canvas').length")).ShouldBe(0);

        await report.Page.EmulateMediaAsync(new() { Media = Media.Print });
        await report.Page.WaitForSelectorAsync("#view-sheets canvas");

        // Two pictures of the board; this one has no converter and so no picture of waveforms.
        Regex.Count(onScreen, "/Subtype */Image").ShouldBeGreaterThanOrEqualTo(2);
        (await report.Page.Locator("#view-sheets figcaption").AllTextContentsAsync())
            .ShouldBe(["Layer 1 (top), current density, all stretches", "Layer 2 (bottom), current density, all stretches"]);
        (await report.Page.Locator("#view-sheets .scale-bar").First.TextContentAsync()).ShouldBe("10 mm");
        (await report.Page.Locator("#view").IsVisibleAsync()).ShouldBeFalse();
        string ground = await report.Page.EvaluateAsync<string>(
            "() => [...document.querySelector('#view-sheets canvas').getContext('2d').getImageData(2, 2, 1, 1).data].join()");
        ground.ShouldBe("236,233,226,255");
        double shape = await report.Page.EvaluateAsync<double>(
            "() => { const c = document.querySelector('#view-sheets canvas'), b = c.getBoundingClientRect(); return b.width / b.height / (c.width / c.height); }");
        shape.ShouldBe(1, 0.01);
    }

    /// <summary>Printed by a script at the moment the page is loaded, the board is there: the page is not loaded before.</summary>
    [Fact]
    public void PrintedUnattendedTheBoardIsShown() =>
        Regex.Count(Encoding.Latin1.GetString(Browser.PrintUnattended(Report)), "/Subtype */Image").ShouldBeGreaterThanOrEqualTo(2);

    /// <summary>The bar's length on the screen over its label is the scale of the view, which the view states itself.</summary>
    [Fact]
    public async Task TheScaleBarStandsUnderThePictureAndIsTrue()
    {
        await using ReportPage report = await browser.OpenAsync(Report);
        foreach (double zoom in new[] { 1, 3.7 })
        {
            await report.Page.EvaluateAsync("by => boardView.zoom(by)", zoom);
            double wide = (await report.ViewAsync()).Wide;
            LocatorBoundingBoxResult view = (await report.Page.Locator("#view").BoundingBoxAsync())!;
            LocatorBoundingBoxResult bar = (await report.Page.Locator("#view-bar i").BoundingBoxAsync())!;

            string label = (await report.Page.Locator("#view-bar span").TextContentAsync())!;
            label.ShouldEndWith(" mm");
            (bar.Width / view.Width * wide).ShouldBe(Number(label[..^3]), 0.01 * wide);
            bar.Y.ShouldBeGreaterThanOrEqualTo(view.Y + view.Height - 1);
        }
    }

    /// <summary>
    /// The fit itself, from memory: dT = 215.3 I^2 W^-1.15 Th^-1 in amperes, mils and kelvin (Brooks and Adam, 2015). The
    /// neck of 1 mm with 12 A lies above the curve, so its mark is a square.
    /// </summary>
    [Fact]
    public async Task TheCapacityCurveIsTheRelationAndTheNeckLiesBeyondIt()
    {
        await using ReportPage report = await browser.OpenAsync(Report);

        (await report.Page.Locator("#capacity figcaption").First.TextContentAsync()).ShouldStartWith("Outer layers 1 and 2, ");
        (await report.Page.Locator("#capacity rect.mark.beyond").CountAsync()).ShouldBe(1);
        (await report.Page.Locator("#capacity path.curve.chosen.dashed").CountAsync()).ShouldBeGreaterThan(0);
        double[][] points = await report.Page.EvaluateAsync<double[][]>("""
            () => {
              const svg = document.querySelector('#capacity svg');
              const ticks = (anchor, place) => [...svg.querySelectorAll(`text.label[text-anchor=${anchor}]`)].map(tick => ({ at: place(tick), value: Number(tick.textContent) }));
              const valueAt = ([first, ...others], at) => first.value * (others.at(-1).value / first.value) ** ((at - first.at) / (others.at(-1).at - first.at));
              const widths = ticks('middle', tick => tick.x.baseVal[0].value), currents = ticks('end', tick => tick.y.baseVal[0].value - 4);
              return [...svg.querySelectorAll('path.curve.chosen')].flatMap(path => path.getAttribute('d').slice(1).split('L'))
                .map(point => point.split(' ').map(Number)).map(([x, y]) => [valueAt(widths, x), valueAt(currents, y)]);
            }
            """);
        points.Length.ShouldBeGreaterThan(50);
        foreach (double[] point in points)
        {
            double currentA = Math.Sqrt(20 / (215.3 * Math.Pow(point[0] / 0.0254, -1.15) / (35 / 25.4)));
            point[1].ShouldBe(currentA, 0.01 * currentA);
        }
    }

    private static async Task<double> ValueAsync(ReportPage report, string kind)
    {
        string text = (await report.Page.Locator($"#view-reading [data-value={kind}]").TextContentAsync())!;
        string[] parts = text.Split(' ');
        double perUnit = parts[1] switch
        {
            "A/mm²" => 1e6,
            "V" or "K" => 1,
            "mV" => 1e-3,
            "µV" => 1e-6,
            "nV" => 1e-9,
            _ => throw new InvalidOperationException(text),
        };
        return Number(parts[0]) * perUnit;
    }

    /// <summary>Equal in the three digits shown; what is left is the rounding of binary numbers.</summary>
    private static void ShouldAgree(double shown, double exact)
    {
        double rounded = Number(exact.ToString("E2", CultureInfo.InvariantCulture));
        shown.ShouldBe(rounded, 1e-12 * Math.Abs(rounded));
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static Task<string> FocusedAsync(ReportPage report) => report.Page.EvaluateAsync<string>("() => document.activeElement.id");

    private static Task<string[]> KeysAsync(ReportPage report) => report.Page.EvaluateAsync<string[]>(
        "() => [...document.querySelector('#hotspots table').tBodies[0].rows].map(row => row.cells[2].dataset.key)");
}
