using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>The screening table: the worst section of each stretch with what a chart leaves out, the length of its neck.</summary>
internal static class NeckText
{
    public static void Write(Terminal terminal, IReadOnlyList<Stretch> stretches, ConductorRating rating)
    {
        TextTable table = new(
            ["Worst section of", "Copper", "Current", "As long conductor", "Neck is long", "Heat spreads over", "As short neck"],
            [false, false, true, true, true, true, true]);
        foreach (Stretch stretch in stretches.Where(stretch => stretch.IsSolved))
        {
            Section? single = stretch.HottestSections.Count == 0 ? null : stretch.HottestSections[0].Section;
            if (single is not null && NeckFigures.Of(stretch.Solved, single, rating) is { } figures)
            {
                Add(FormattableString.Invariant($"{QuantityText.Length(single.WidthM)} on layer {single.Layer}"), single.CurrentA, rating.TraceRiseText(single), figures);
            }

            // Copper that carries the current together is a line of its own where it is worse.
            if (stretch.Joint.Count > 0 && stretch.Joint[0] is var joint && !(rating.JointRiseK(joint) <= stretch.SectionRiseK))
            {
                Add(JointText.Of(joint, rating.Stack), joint.CurrentA, rating.JointRiseText(joint), NeckFigures.Of(joint, rating));
            }

            void Add(string copper, double currentA, string rise, NeckFigures neck) => table.Add(
            [
                stretch.Name, copper, QuantityText.Current(currentA), rise,
                QuantityText.Length(neck.LengthM), QuantityText.Length(neck.HeatLengthM), QuantityText.TemperatureDifference(neck.ShortNeckK),
            ]);
        }

        terminal.Out.WriteLine();
        table.Write(terminal.Out, terminal.Width);
        terminal.Out.WriteLine($"For screening, by {rating.Name}: a neck as long as its section stays within {QuantityText.Ratio(NeckLength.WidestRatio)} times the least; as a short neck it is a fin held "
            + "at the temperature of its ends, whose own rise comes on top (docs/judgement.md).");
    }
}
