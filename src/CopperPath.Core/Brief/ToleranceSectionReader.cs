using CopperPath.Brief.Yaml;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>
/// Reads <c>tolerance</c>: ranges of values stated elsewhere, <c>31..38 um</c> with the nominal value inside, or
/// <c>-10..10 %</c> of it; or the one word that takes all ranges away.
/// </summary>
internal static class ToleranceSectionReader
{
    /// <summary>The word that takes away all ranges.</summary>
    internal const string AsStated = "as stated";

    internal static readonly IReadOnlyList<(string Word, BoardClass Value)> Classes =
        [("1", BoardClass.Class1), ("2", BoardClass.Class2), ("3", BoardClass.Class3)];

    private const string Joint = "..";

    /// <summary>A factor below this is a unit mistaken, or a film that is not there. Common practice, no source.</summary>
    private const double LeastFactor = 0.05;

    private const double MostFactor = 20;

    /// <summary>The section, or null when it is absent or could not be read (which the sink then knows).</summary>
    public static ToleranceSection? Read(SectionReader root, StackupSection? stackup, double? ambientK, BriefContext context)
    {
        if (root.Optional("tolerance") is not { } node)
        {
            return null;
        }

        if (node is YamlText { Text: AsStated })
        {
            return new ToleranceSection { IsAsStated = true };
        }

        if (SectionReader.Open(node, BriefKeys.Tolerance, context.Sink) is not { } section)
        {
            return null;
        }

        return new ToleranceSection
        {
            BoardClass = section.Optional("class") is { } ordered ? context.Values.Choice(ordered, Classes) ?? BoardClass.Class2 : BoardClass.Class2,
            CopperM = section.Optional("copper") is { } copper ? ReadCopper(copper, stackup, context) : null,
            PlatingM = section.Optional("plating") is { } plating && HasStackup(plating, stackup, context)
                ? ReadRange(plating, Dimension.CopperThickness, stackup!.PlatingM, context) : null,
            Dielectric = section.Optional("dielectric") is { } dielectric ? ReadShares(dielectric, 1, context) : null,
            Laminate = section.Optional("laminate") is { } laminate ? ReadShares(laminate, 1, context) : null,
            AmbientK = section.Optional("ambient") is { } ambient && ambientK is { } nominalK
                ? ReadRange(ambient, Dimension.Temperature, nominalK, context) : null,
            Film = section.Optional("film") is { } film ? ReadShares(film, 1, context) : null,
            Current = section.Optional("current") is { } current ? ReadShares(current, 1, context) : null,
        };
    }

    /// <summary>One range for all layers, or one for each.</summary>
    private static List<ValueRange>? ReadCopper(YamlNode node, StackupSection? stackup, BriefContext context)
    {
        if (!HasStackup(node, stackup, context))
        {
            return null;
        }

        IReadOnlyList<YamlNode> items = context.Values.OneOrMany(node, "a range, or one for each copper layer");
        IReadOnlyList<double> nominalM = stackup!.CopperM;
        if (node is YamlList && items.Count > 0 && items.Count != nominalM.Count)
        {
            context.Sink.Error(BriefCodes.StackupCount, node.Position, $"{items.Count} ranges for {nominalM.Count} copper layers",
                $"{nominalM.Count}, or one without brackets for all of them");
            return null;
        }

        List<ValueRange> ranges = [];
        for (int layer = 0; layer < nominalM.Count && items.Count > 0; layer++)
        {
            if (ReadRange(items[node is YamlList ? layer : 0], Dimension.CopperThickness, nominalM[layer], context) is not { } range)
            {
                return null;
            }

            ranges.Add(range);
        }

        return ranges.Count > 0 ? ranges : null;
    }

    private static bool HasStackup(YamlNode node, StackupSection? stackup, BriefContext context)
    {
        if (stackup is null)
        {
            context.Sink.Error(BriefCodes.Range, node.Position, "a range without a `stackup` that states the value", "a `stackup`, or no range");
        }

        return stackup is not null;
    }

    /// <summary>A range in the unit of the value or, but for temperatures, in per cent of it.</summary>
    private static ValueRange? ReadRange(YamlNode node, Dimension dimension, double nominalSi, BriefContext context)
    {
        if (dimension != Dimension.Temperature && node is YamlText { Text: { } written } && written.TrimEnd().EndsWith('%'))
        {
            return ReadShares(node, nominalSi, context);
        }

        string example = dimension == Dimension.Temperature ? "`20..55 degC`" : "`31..38 um` or `-10..10 %`";
        if (Ends(node) is not var (low, high) || UnitOf(high) is not { Length: > 0 } unit)
        {
            context.Sink.Error(BriefCodes.Range, node.Position, node.Shape, $"a range, {example}");
            return null;
        }

        QuantityReading least = Quantity.Read(UnitOf(low).Length > 0 ? low : $"{low} {unit}", dimension, Sign.Any);
        QuantityReading most = Quantity.Read(high, dimension, Sign.Any);
        if (least.Quantity is null || most.Quantity is null)
        {
            QuantityReading wrong = least.Quantity is null ? least : most;
            context.Sink.Error(BriefCodes.Quantity, node.Position, wrong.Found, wrong.Expected);
            return null;
        }

        return Around(node, new ValueRange(least.Quantity.Value.ValueSi, most.Quantity.Value.ValueSi), nominalSi, context);
    }

    /// <summary>A range in per cent of a nominal value; never down to nothing.</summary>
    private static ValueRange? ReadShares(YamlNode node, double nominal, BriefContext context)
    {
        if (Ends(node) is var (low, high) && high.EndsWith('%')
            && DecimalNumber.Read(low.TrimEnd('%').TrimEnd(), 0) is { } least && DecimalNumber.Read(high.TrimEnd('%').TrimEnd(), 0) is { } most
            && 1 + (least / 100) >= LeastFactor && 1 + (most / 100) <= MostFactor)
        {
            return Around(node, new ValueRange(nominal * (1 + (least / 100)), nominal * (1 + (most / 100))), nominal, context);
        }

        context.Sink.Error(BriefCodes.Range, node.Position, node.Shape,
            "a range in per cent of what is stated, e.g. `-10..10 %`, from -95 % to 1900 %");
        return null;
    }

    private static ValueRange? Around(YamlNode node, ValueRange range, double nominal, BriefContext context)
    {
        // Numbers written in decimal may miss the nominal value by rounding.
        double slack = 1e-12 * Math.Abs(nominal);
        if (range.Least <= nominal + slack && range.Most >= nominal - slack)
        {
            return range;
        }

        context.Sink.Error(BriefCodes.Range, node.Position, node.Shape, "a range from low to high that holds the value stated in the brief");
        return null;
    }

    private static (string Low, string High)? Ends(YamlNode node)
    {
        if (node is not YamlText { Text: { } text } || text.IndexOf(Joint, StringComparison.Ordinal) is not (> 0 and var joint))
        {
            return null;
        }

        (string low, string high) = (text[..joint].Trim(), text[(joint + Joint.Length)..].Trim());
        return low.Length > 0 && high.Length > 0 ? (low, high) : null;
    }

    private static string UnitOf(string quantity) => quantity[DecimalNumber.End(quantity)..].Trim();
}
