using System.Globalization;
using Microsoft.Playwright;

namespace CopperPath.Cli.Tests.Html;

/// <summary>An open report and everything the browser complained about or asked for since.</summary>
internal sealed class ReportPage : IAsyncDisposable
{
    private ReportPage(IPage page) => Page = page;

    public IPage Page { get; }

    public List<string> Complaints { get; } = [];

    public List<string> Requests { get; } = [];

    public static async Task<ReportPage> OpenAsync(IPage page, string file)
    {
        ReportPage report = new(page);
        page.Console += (_, message) => report.Complaints.Add($"{message.Type}: {message.Text}");
        page.PageError += (_, error) => report.Complaints.Add(error);
        page.Request += (_, request) => report.Requests.Add(request.Url);
        await page.GotoAsync(new Uri(file).AbsoluteUri);
        await page.WaitForSelectorAsync("html[data-ready=true]");
        await report.NextFrameAsync();
        return report;
    }

    /// <summary>Waits until what was asked for has been drawn.</summary>
    public Task NextFrameAsync() => Page.EvaluateAsync(
        "() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => requestAnimationFrame(done))))");

    /// <summary>Middle of the view and its width, millimetres of the board, and the layer shown.</summary>
    public async Task<(double X, double Y, double Wide, string Layer)> ViewAsync()
    {
        await NextFrameAsync();
        ILocator view = Page.Locator("#view");
        return (await Number("data-x"), await Number("data-y"), await Number("data-wide"), (await view.GetAttributeAsync("data-layer"))!);

        async Task<double> Number(string name) => double.Parse((await view.GetAttributeAsync(name))!, CultureInfo.InvariantCulture);
    }

    public async Task<string> ReadingAsync() => (await Page.Locator("#view-reading").TextContentAsync())!;

    /// <summary>Moves the pointer to a place of the board as it is shown now.</summary>
    public async Task PointAtAsync(double xMm, double yMm)
    {
        (double x, double y, double wide, _) = await ViewAsync();
        LocatorBoundingBoxResult box = (await Page.Locator("#view").BoundingBoxAsync())!;
        double pxPerMm = box.Width / wide;
        await Page.Mouse.MoveAsync(
            (float)(box.X + (box.Width / 2) + ((xMm - x) * pxPerMm)), (float)(box.Y + (box.Height / 2) - ((yMm - y) * pxPerMm)));
    }

    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();
}
