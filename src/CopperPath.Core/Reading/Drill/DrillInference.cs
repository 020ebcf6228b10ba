using System.Globalization;

namespace CopperPath.Reading.Drill;

/// <summary>Outcome of <see cref="DrillFormatInference.Infer"/>.</summary>
/// <param name="Chosen">The format that explains the holes, or null when none does clearly.</param>
/// <param name="Evidence">All distinct decodings, best first.</param>
public sealed record DrillInference(DrillFormat? Chosen, IReadOnlyList<CandidateScore> Evidence)
{
    /// <summary>When a decoding is taken, in words that fit after "expected".</summary>
    public static string Rule { get; } = string.Create(CultureInfo.InvariantCulture,
        $"one that reaches {DrillFormatInference.LeastScore:P0} in every share and leads the next by {DrillFormatInference.LeastLead:P0}");
}
