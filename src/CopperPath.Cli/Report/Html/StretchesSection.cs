using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>The reviewed stretches and how their terminals share the current.</summary>
internal static class StretchesSection
{
    public static Markup Of(Review review, IReadOnlyList<Stretch> stretches, ConductorRating rating) => $"""
        <section id="stretches" aria-labelledby="stretches-head">
        <h2 id="stretches-head">Stretches of copper</h2>
        {ReportTable.Of("Reviewed stretches",
            [new("Stretch"), new("Stage"), new("Current", true), new("Resistance", true), new("Drop", true), new("Of allowed", true), new("Loss", true), new("Hottest section", true), new("Hottest hole", true), new("Peak on this board", true), new("Copper", true)],
            stretches.Select(Row))}
        <p class="note">Rises of sections and holes by {rating.Name}; the peak on this board is from its own temperatures, all copper spreading heat. Below each name stands its net; copper is the net's area over all {review.Board!.Nets!.Layers.Count} layers.</p>
        <h3>Sharing at the terminals</h3>
        {ReportTable.Of("Terminals; a positive current enters the copper",
            [new("Stretch"), new("Terminal"), new("Contacts", true), new("Current", true), new("Least in one contact", true), new("Most in one contact", true), new("Most over equal share", true), new("Busiest contact"), new("Potential", true)],
            stretches.Where(s => s.IsSolved).SelectMany(s => s.Conduction.Terminals.Select(terminal => Sharing(s, terminal))))}
        <p class="note">results.json and terminals.csv hold every contact.</p>
        </section>
        """;

    private static IReadOnlyList<TableCell> Row(Stretch s) =>
    [
        new((Markup)$"""{s.Name}<br><small>{s.Solved.Bound.Net.Name}</small>""", s.Name),
        new((Markup)$"""<span class="stage {StageLook.ClassOf(s.Role)}">{StageLook.NameOf(s.Role)}</span>""", StageLook.NameOf(s.Role)),
        new(QuantityText.Current(s.EnteringA), s.EnteringA),
        new(s.Conduction.ResistanceOhm is { } ohm ? QuantityText.Resistance(ohm) : "-", s.Conduction.ResistanceOhm ?? double.NaN),
        new(s.IsSolved ? QuantityText.Voltage(s.Conduction.DropV) : "not solved", s.Conduction.DropV),
        new(s.DropShare is { } share ? QuantityText.Percent(share) : "-", s.DropShare ?? double.NaN),
        new(s.IsSolved ? QuantityText.Power(s.Conduction.LossW) : "-", s.Conduction.LossW),
        new(s.SectionRiseK is { } section ? QuantityText.TemperatureDifference(section) : "-", s.SectionRiseK ?? double.NaN),
        new(s.HoleRiseK is { } hole ? QuantityText.TemperatureDifference(hole) : "-", s.HoleRiseK ?? double.NaN),
        new(s.Own is { } own ? QuantityText.TemperatureDifference(own.PeakK) : "-", s.Own?.PeakK ?? double.NaN),
        new(QuantityText.Area(s.Solved.Bound.Net.AreaM2), s.Solved.Bound.Net.AreaM2),
    ];

    private static IReadOnlyList<TableCell> Sharing(Stretch stretch, TerminalResult terminal)
    {
        IReadOnlyList<double> shares = terminal.ContactCurrentsA;
        int busiest = Enumerable.Range(0, shares.Count).MaxBy(c => Math.Abs(shares[c]));
        double leastA = shares.MinBy(Math.Abs);
        double equalA = terminal.Terminal.CurrentA / shares.Count;
        bool shared = shares.Count > 1 && equalA != 0;
        return
        [
            new(stretch.Name),
            new(terminal.Terminal.Name),
            new(FormattableString.Invariant($"{shares.Count}"), shares.Count),
            new(QuantityText.Current(terminal.Terminal.CurrentA), terminal.Terminal.CurrentA),
            new(QuantityText.Current(leastA), leastA),
            new(QuantityText.Current(shares[busiest]), shares[busiest]),
            new(shared ? QuantityText.Ratio(shares[busiest] / equalA) : "-", shared ? shares[busiest] / equalA : double.NaN),
            new(terminal.Terminal.Contacts[busiest].Name),
            new(QuantityText.Voltage(terminal.PotentialV), terminal.PotentialV),
        ];
    }
}
