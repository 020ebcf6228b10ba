using System.Text;
using System.Text.Json;

namespace CopperPath.Cli.Tests.Html;

/// <summary>What a look through a page for barriers found; the rules stand in accessibility.js.</summary>
/// <param name="Faults">One line each, led by the number of the success criterion of WCAG 2.2.</param>
/// <param name="Seen">How many things of each kind were looked at.</param>
internal sealed record AccessibilityScan(string[] Faults, Dictionary<string, int> Seen)
{
    private static readonly JsonSerializerOptions s_names = new(JsonSerializerDefaults.Web);

    public static async Task<AccessibilityScan> OfAsync(ReportPage report)
    {
        using StreamReader reader = new(
            typeof(AccessibilityScan).Assembly.GetManifestResourceStream("Html.accessibility.js")!, Encoding.UTF8);
        string json = await report.Page.EvaluateAsync<string>($"() => JSON.stringify(({await reader.ReadToEndAsync()})())");
        return JsonSerializer.Deserialize<AccessibilityScan>(json, s_names)!;
    }
}
