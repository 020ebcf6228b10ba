using CopperPath.Cli.Tests.Report;
using Microsoft.Playwright;

namespace CopperPath.Cli.Tests.Html;

/// <summary>
/// The report for people who see little or nothing or use no pointer. Oracle: success criteria of WCAG 2.2, levels A and
/// AA, as far as a program can decide them.
/// </summary>
public sealed class AccessibilityTests(ReviewedNeck review, Browser browser) : IClassFixture<ReviewedNeck>, IClassFixture<Browser>
{
    private string Report => Path.Combine(review.Folder, "report.html");

    [Theory]
    [InlineData(ColorScheme.Light, 1280)]
    [InlineData(ColorScheme.Dark, 1280)]
    [InlineData(ColorScheme.Dark, 390)]
    public async Task AScanFindsNoBarrier(ColorScheme theme, int widthPx)
    {
        await using ReportPage report = await browser.OpenAsync(Report, theme, widthPx);

        AccessibilityScan scan = await AccessibilityScan.OfAsync(report);

        scan.Faults.ShouldBeEmpty();
        scan.Seen["texts"].ShouldBeGreaterThan(100);
        scan.Seen["tables"].ShouldBeGreaterThan(3);
        scan.Seen["targets"].ShouldBeGreaterThan(20);
        scan.Seen.ShouldAllBe(kind => kind.Value > 0);
    }

    /// <summary>Each fault is planted once; the scan must name its criterion.</summary>
    [Theory]
    [InlineData("1.1.1", "document.querySelector('svg').removeAttribute('aria-label')")]
    [InlineData("1.3.1", "document.querySelector('h2').outerHTML = '<h4 id=summary-head>Summary</h4>'")]
    [InlineData("1.3.1", "document.querySelector('th').removeAttribute('scope')")]
    [InlineData("1.3.1", "document.querySelector('caption').remove(); document.querySelector('table').removeAttribute('aria-label')")]
    [InlineData("1.3.1", "document.querySelector('tbody tr').deleteCell(0)")]
    [InlineData("1.4.3", "document.querySelector('#summary p').style.color = '#999'")]
    [InlineData("1.4.3", "document.querySelector('svg text').style.fill = '#e8e6e0'")]
    [InlineData("1.4.11", "document.querySelector('#view-in').style.borderColor = '#ddd'")]
    [InlineData("2.1.1", "document.querySelector('main').insertAdjacentHTML('beforeend', '<div style=\"width: 90px; overflow: auto\"><p style=\"width: 900px\">words</p></div>')")]
    [InlineData("2.4.1", "document.querySelector('.skip').remove(); document.querySelector('nav').remove()")]
    [InlineData("2.4.1", "document.querySelector('#findings').id = 'elsewhere'")]
    [InlineData("2.4.2", "document.title = ''")]
    [InlineData("2.4.3", "document.querySelector('#view').tabIndex = 3")]
    [InlineData("2.5.8", "document.querySelector('#view-in').style.cssText = 'min-height: 0; height: 12px'")]
    [InlineData("3.1.1", "document.documentElement.lang = ''")]
    [InlineData("3.3.2", "const field = document.querySelector('#view-layer'); field.parentElement.replaceWith(field)")]
    [InlineData("4.1.2", "const button = document.querySelector('#view-all'); button.textContent = ''; button.style.width = '60px'")]
    [InlineData("4.1.2", "document.querySelector('section').setAttribute('aria-labelledby', 'nobody')")]
    [InlineData("4.1.3", "document.querySelector('#view-reading').removeAttribute('aria-live')")]
    public async Task AScanFindsABarrierWhereThereIsOne(string criterion, string planting)
    {
        await using ReportPage report = await browser.OpenAsync(Report);
        await report.Page.EvaluateAsync($"() => {{ {planting} }}");

        AccessibilityScan scan = await AccessibilityScan.OfAsync(report);

        scan.Faults.ShouldNotBeEmpty();
        scan.Faults.ShouldAllBe(fault => fault.StartsWith(criterion + " ", StringComparison.Ordinal));
    }

    /// <summary>2.4.3 focus order follows the order of reading; 2.4.7 what has the focus shows it; 2.1.2 no trap.</summary>
    [Fact]
    public async Task TheKeyboardWalksThePageInOrderAndShowsWhereItIs()
    {
        await using ReportPage report = await browser.OpenAsync(Report);
        int stops = await report.Page.EvaluateAsync<int>(
            "() => [...document.querySelectorAll('a[href], button, select, input, [tabindex]')].filter(e => e.tabIndex >= 0 && e.checkVisibility()).length");
        List<int> places = [];
        for (int i = 0; i < stops; i++)
        {
            await report.Page.Keyboard.PressAsync("Tab");
            places.Add(await report.Page.EvaluateAsync<int>("""
                () => {
                  const at = document.activeElement, style = getComputedStyle(at);
                  const isSeen = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2;
                  return isSeen ? [...document.querySelectorAll('*')].indexOf(at) : -1;
                }
                """));
        }

        places.ShouldNotContain(-1);
        places.ShouldBeInOrder(SortDirection.Ascending);
        places.ShouldBeUnique();
    }
}
