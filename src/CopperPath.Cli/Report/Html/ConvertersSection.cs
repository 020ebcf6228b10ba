using CopperPath.Converter;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>Operating points and waveforms of the converters, their switch nodes and hot loops, where there are any.</summary>
internal static class ConvertersSection
{
    public static Markup Of(Review review, IReadOnlyList<OutputFile> waveforms)
    {
        if (review.Brief!.Converters.Count == 0 && review.SwitchNodes.Count == 0 && review.HotLoops.Count == 0)
        {
            return Markup.Nothing;
        }

        return $"""
            <section id="converters" aria-labelledby="converters-head">
            <h2 id="converters-head">Converters</h2>
            {review.Brief.Converters.Zip(waveforms, (section, picture) => Converter(section.Facts, picture))}
            {(review.SwitchNodes.Count == 0 ? Markup.Nothing : SwitchNodes(review.SwitchNodes))}
            {(review.HotLoops.Count == 0 ? Markup.Nothing : HotLoops(review))}
            </section>
            """;
    }

    private static Markup Converter(ConverterFacts facts, OutputFile picture)
    {
        BuckStage stage = facts.Stage;
        return $"""
            <h3>{facts.Name}: {QuantityText.Voltage(stage.InputV)} to {QuantityText.Voltage(facts.OutputV)}, {QuantityText.Current(stage.OutputA)}</h3>
            <dl class="facts">
            <div><dt>Duty</dt><dd>{QuantityText.Percent(stage.Duty)}</dd></div>
            <div><dt>Phases</dt><dd>{ConverterSummary.PhasesText(stage)}</dd></div>
            <div><dt>Ripple in each inductor</dt><dd>{QuantityText.Current(stage.PhaseRippleA)}</dd></div>
            <div><dt>Ripple summed</dt><dd>{QuantityText.Current(stage.OutputRippleA)} at {QuantityText.Frequency(stage.RippleHz)}</dd></div>
            {(facts.OutputRipple is { } ripple ? (Markup)$"<div><dt>Ripple on the output capacitors</dt><dd>at most {QuantityText.Voltage(ripple.ResistiveV + ripple.CapacitiveV)}</dd></div>" : Markup.Nothing)}
            </dl>
            <div class="compact">{ReportTable.Of($"Currents of {facts.Name}",
                [new("Stage", IsSortable: false), new("Average", true), new("RMS", true)],
                ConverterSummary.Currents(facts).Select(current => (IReadOnlyList<TableCell>)
                    [new(current.Word), new(QuantityText.Current(current.Current.AverageA), current.Current.AverageA), new(QuantityText.Current(current.Current.RmsA), current.Current.RmsA)]))}</div>
            <p class="note">{ConverterSummary.Basis}</p>
            <img class="chart" decoding="sync" alt="Waveforms of {facts.Name} over one period: switch nodes, inductors, their sum, input capacitors; the table above holds averages and RMS values" src="data:image/png;base64,{Convert.ToBase64String(picture.Content)}">
            """;
    }

    private static Markup SwitchNodes(IReadOnlyList<SwitchNodeFacts> nodes) => $"""
        <h3>Switch nodes</h3>
        {ReportTable.Of("Copper that swings",
            [new("Switch node"), new("Copper", true), new("Least needed", true), new("Capacitance to return", true), new("Edge current", true), new("C V\u00B2 f", true)],
            nodes.Select(node => (IReadOnlyList<TableCell>)
            [
                new(node.Net.Bound.Review.Name),
                new(QuantityText.Area(node.AreaM2), node.AreaM2),
                new(QuantityText.Area(node.LeastAreaM2), node.LeastAreaM2),
                new(QuantityText.Capacitance(node.CapacitanceF), node.CapacitanceF),
                new(node.DisplacementA is { } displacementA ? QuantityText.Current(displacementA) : "-", node.DisplacementA ?? double.NaN),
                new(node.SwitchingLossW is { } lossW ? QuantityText.Power(lossW) : "-", node.SwitchingLossW ?? double.NaN),
            ]))}
        <p class="note">{ConverterSummary.SwitchNodeBasis}</p>
        """;

    private static Markup HotLoops(Review review) => $"""
        <h3>Hot loops</h3>
        {ReportTable.Of("From input capacitor over the switches and back, best first within each converter",
            [new("Loop"), new("Capacitor"), new("Length", true), new("Area", true), new("Over plane", true), new("Inductance", true)],
            review.HotLoops.Select(loop => (IReadOnlyList<TableCell>)
            [
                new(ConverterSummary.NameOf(loop, review)),
                new(loop.Capacitor.Name),
                new(QuantityText.Length(loop.LengthM), loop.LengthM),
                new(QuantityText.Area(loop.AreaM2), loop.AreaM2),
                new(loop.HeightM is { } heightM ? QuantityText.Length(heightM) : "none", loop.HeightM ?? double.NaN),
                new(loop.Inductance is { } inductance ? QuantityText.Inductance(inductance.InductanceH) : "-", loop.Inductance?.InductanceH ?? double.NaN),
            ]))}
        <p class="note">{ConverterSummary.HotLoopBasis}</p>
        """;
}
