using CopperPath.Brief.Yaml;
using CopperPath.Converter;
using CopperPath.OutsideText;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>A terminal current that follows from a converter.</summary>
/// <param name="Converter">Name of the converter.</param>
/// <param name="Stage">Which of its currents.</param>
/// <param name="Current">Average and RMS.</param>
/// <param name="IsRms">True when the terminal asks for the RMS instead of the average.</param>
public sealed record DerivedCurrent(string Converter, PathStage Stage, StageCurrent Current, bool IsRms)
{
    /// <summary>The current the terminal carries in the field solve, amperes.</summary>
    public double CurrentA => IsRms ? Current.RmsA : Current.AverageA;
}

/// <summary>
/// Reads a current written as a stage of a converter: <c>low side of core</c>, <c>rms high side of core</c>. Which of
/// the two it is to be is the writer's choice: drop asks for averages, heat for RMS.
/// </summary>
internal static class StageCurrentReader
{
    internal static readonly IReadOnlyList<(string Word, PathStage Value)> Stages =
    [
        ("feed", PathStage.Feed),
        ("input capacitors", PathStage.InputCapacitors),
        ("phase input capacitors", PathStage.PhaseInputCapacitors),
        ("high side", PathStage.HighSide),
        ("low side", PathStage.LowSide),
        ("inductor", PathStage.Inductor),
        ("output", PathStage.Output),
        ("output capacitors", PathStage.OutputCapacitors),
    ];

    private const string Joint = " of ";
    private const string RmsPrefix = "rms ";
    private const string AveragePrefix = "average ";

    /// <summary>True when the value is meant as a stage of a converter: it contains the word "of".</summary>
    public static bool IsStage(YamlNode node) => node is YamlText { Text: { } text } && text.Contains(Joint, StringComparison.Ordinal);

    public static DerivedCurrent? Read(YamlNode node, BriefContext context)
    {
        string written = ((YamlText)node).Text.Trim();
        int joint = written.IndexOf(Joint, StringComparison.Ordinal);
        string converterName = written[(joint + Joint.Length)..].Trim();
        string stageWord = written[..joint].Trim();
        bool isRms = stageWord.StartsWith(RmsPrefix, StringComparison.Ordinal);
        if (isRms || stageWord.StartsWith(AveragePrefix, StringComparison.Ordinal))
        {
            stageWord = stageWord[(isRms ? RmsPrefix : AveragePrefix).Length..].Trim();
        }

        if (context.Converters.FirstOrDefault(candidate => candidate.Facts.Name == converterName) is not { } converter)
        {
            context.Sink.Error(BriefCodes.StageCurrent, node.Position, () => ($"the converter '{converterName}'",
                NearestName.Of(converterName, context.Converters.Select(candidate => candidate.Facts.Name)) is { } near
                    ? $"a converter of the section `converters`; did you mean '{near}'?" : "a converter of the section `converters`"));
            return null;
        }

        foreach ((string word, PathStage stage) in Stages)
        {
            if (word != stageWord)
            {
                continue;
            }

            DerivedCurrent derived = new(converterName, stage, converter.Facts.CurrentOf(stage), isRms);
            if (derived.CurrentA > 0)
            {
                return derived;
            }

            context.Sink.Error(BriefCodes.StageCurrent, node.Position, $"the average of `{word}`, which is zero", $"`{RmsPrefix}{word} of {converterName}`");
            return null;
        }

        string? nearStage = NearestName.Of(stageWord, Stages.Select(stage => stage.Word));
        context.Sink.Error(BriefCodes.StageCurrent, node.Position, $"the stage '{stageWord}'",
            $"one of {string.Join(", ", Stages.Select(stage => stage.Word))}{(nearStage is null ? "" : $"; did you mean `{nearStage}`?")}");
        return null;
    }

    /// <summary>The line the review lists for a current that was derived and not stated.</summary>
    public static string LineOf(string netName, string terminalName, DerivedCurrent derived) =>
        $"net '{netName}': {terminalName}: {QuantityText.Current(derived.CurrentA)}, the {(derived.IsRms ? "RMS" : "average")} of "
        + $"{Stages.First(stage => stage.Value == derived.Stage).Word} of {derived.Converter} "
        + $"({(derived.IsRms ? $"average {QuantityText.Current(derived.Current.AverageA)}" : $"RMS {QuantityText.Current(derived.Current.RmsA)}")})";
}
