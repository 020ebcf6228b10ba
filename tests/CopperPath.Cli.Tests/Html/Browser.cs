using System.Diagnostics;
using Microsoft.Playwright;

namespace CopperPath.Cli.Tests.Html;

/// <summary>The machine's own Chromium without a window; tests skip, visibly, where it is absent.</summary>
public sealed class Browser : IAsyncLifetime
{
    /// <summary>Long, for machines with much else to do; a passing test waits for none of it.</summary>
    private const int PatienceMs = 240_000;

    private const string Absent = "needs Chromium (Debian package chromium), which is not installed; COPPERPATH_CHROMIUM may name it";

    private static readonly string[] s_places =
        ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome-stable", "/snap/bin/chromium"];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>An explicit path in COPPERPATH_CHROMIUM goes before the usual places.</summary>
    private static string? Executable => s_places
        .Prepend(Environment.GetEnvironmentVariable("COPPERPATH_CHROMIUM") ?? "").FirstOrDefault(File.Exists);

    public async ValueTask InitializeAsync()
    {
        if (Executable is { } executable)
        {
            _playwright = await Playwright.CreateAsync();
            _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = executable, Args = ["--no-sandbox"], Timeout = PatienceMs });
        }
    }

    public async ValueTask DisposeAsync()
    {
        await (_browser?.DisposeAsync() ?? ValueTask.CompletedTask);
        _playwright?.Dispose();
    }

    /// <summary>The PDF of a file as a script prints it, nobody waiting for anything.</summary>
    internal static byte[] PrintUnattended(string file)
    {
        string? executable = Executable;
        if (executable is null)
        {
            Assert.Skip(Absent);
        }

        string pdf = Path.ChangeExtension(file, ".pdf");
        string[] arguments = ["--headless", "--no-sandbox", "--disable-gpu", $"--print-to-pdf={pdf}", new Uri(file).AbsoluteUri];
        using Process browser = Process.Start(new ProcessStartInfo(executable, arguments) { RedirectStandardError = true })!;
        browser.StandardError.ReadToEnd();
        browser.WaitForExit(PatienceMs).ShouldBeTrue();
        return File.ReadAllBytes(pdf);
    }

    /// <summary>A page showing a file, its script done.</summary>
    internal async Task<ReportPage> OpenAsync(string file, ColorScheme theme = ColorScheme.Light, int widthPx = 1280)
    {
        if (_browser is null)
        {
            Assert.Skip(Absent);
        }

        IBrowserContext context = await _browser.NewContextAsync(new()
        {
            ViewportSize = new() { Width = widthPx, Height = 900 },
            ColorScheme = theme,
            ReducedMotion = ReducedMotion.Reduce,
        });
        context.SetDefaultTimeout(PatienceMs);
        return await ReportPage.OpenAsync(await context.NewPageAsync(), file);
    }
}
