using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Report;

/// <summary>A picture of the waveforms of each converter, in the order of the brief.</summary>
internal static class WaveformFiles
{
    public static IReadOnlyList<OutputFile> Of(Review review) => [.. review.Brief!.Converters.Select((section, i) => new OutputFile(
        FormattableString.Invariant($"waveforms-{i + 1}.png"), WaveformChart.PaintPng(section.Facts)))];
}
