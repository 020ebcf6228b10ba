using CopperPath.Converter;

namespace CopperPath.Cli.Report.Html;

/// <summary>Operating points and waveforms of the converters, where the brief describes any.</summary>
internal static class ConvertersSection
{
    public static Markup Of(Review review, IReadOnlyList<OutputFile> waveforms)
    {
        if (review.Brief!.Converters.Count == 0)
        {
            return Markup.Nothing;
        }

        using StringWriter text = new() { NewLine = "\n" };
        ConverterSummary.Write(text, review);
        return $"""
            <section id="converters" aria-labelledby="converters-head">
            <h2 id="converters-head">Converters</h2>
            <pre tabindex="0" aria-label="Operating points of the converters"><code>{text.ToString()}</code></pre>
            {review.Brief.Converters.Zip(waveforms, (section, picture) => Waveforms(section.Facts, picture))}
            </section>
            """;
    }

    private static Markup Waveforms(ConverterFacts facts, OutputFile picture) =>
        (Markup)$"""<img class="chart" alt="Waveforms of {facts.Name} over one period: switch nodes, inductors, their sum, input capacitors; the table above holds averages and RMS values" src="data:image/png;base64,{Convert.ToBase64String(picture.Content)}">""";
}
