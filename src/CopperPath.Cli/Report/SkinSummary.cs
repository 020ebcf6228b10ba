using CopperPath.Capacity;
using CopperPath.Converter;
using CopperPath.Electrical;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>Where direct-current sharing stops telling the truth for the switched currents of each converter.</summary>
internal static class SkinSummary
{
    private const int Harmonics = 5;

    public static void Write(TextWriter writer, Review review)
    {
        foreach ((string depth, string? sharing) in Of(review))
        {
            writer.WriteLine(depth);
            if (sharing is not null)
            {
                writer.WriteLine($"  {sharing}");
            }
        }
    }

    /// <summary>For each converter how deep its currents run and, with more than one layer, up to where they share like direct current.</summary>
    public static IEnumerable<(string Depth, string? Sharing)> Of(Review review)
    {
        Stackup stack = review.Stack!;
        foreach (ConverterFacts facts in review.Brief!.Converters.Select(section => section.Facts))
        {
            double thicknessM = stack.ThicknessM.Max();
            IReadOnlyList<SkinNote> notes = CurrentSharing.Of(thicknessM, facts.Stage.SwitchingHz, review.Brief.ConductorK, Harmonics);
            int thin = notes.TakeWhile(note => note.FillsCopper).Count();
            string filled = thin == notes.Count
                ? FormattableString.Invariant($"thinner than the skin up to harmonic {Harmonics}")
                : FormattableString.Invariant($"thicker than the skin from harmonic {thin + 1}, {QuantityText.Frequency(notes[thin].FrequencyHz)}, on");
            string depth = $"Alternating current of {facts.Name}: at {QuantityText.Frequency(notes[0].FrequencyHz)} the skin is "
                + $"{QuantityText.Length(notes[0].DepthM)} deep; copper of {QuantityText.Length(thicknessM)} is {filled}.";
            string? sharing = null;
            if (stack.ThicknessM.Count > 1)
            {
                double limitHz = CurrentSharing.LateralLimitHz(stack.DielectricM[0], stack.ThicknessM[0], stack.ThicknessM[1], review.Brief.ConductorK);
                sharing = $"Across their width, conductors of layer 1 over layer 2 share like direct current below about {QuantityText.Frequency(limitHz)} only; "
                    + "above it current gathers over its return, and the shares solved here do not hold for it.";
            }

            yield return (depth, sharing);
        }
    }
}
