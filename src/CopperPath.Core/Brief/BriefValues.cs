using System.Globalization;
using CopperPath.Brief.Yaml;
using CopperPath.Geometry;
using CopperPath.OutsideText;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads single values of the brief; each method gives null after saying what is wrong.</summary>
internal sealed class BriefValues(DiagnosticSink sink)
{
    /// <summary>A non-empty text.</summary>
    public string? Text(YamlNode node, string what)
    {
        if (node is YamlText { Text: { } text } && !string.IsNullOrWhiteSpace(text))
        {
            return text;
        }

        sink.Error(node is YamlText ? BriefCodes.Empty : BriefCodes.WrongShape, node.Position,
            node is YamlText ? "an empty value" : node.Shape, what);
        return null;
    }

    public double? QuantitySi(YamlNode node, Dimension dimension, Sign sign)
    {
        if (node is not YamlText text)
        {
            sink.Error(BriefCodes.WrongShape, node.Position, node.Shape, DimensionWords.Expectation(dimension));
            return null;
        }

        QuantityReading reading = Quantity.Read(text.Text, dimension, sign);
        if (reading.Quantity is { } quantity)
        {
            return quantity.ValueSi;
        }

        sink.Error(BriefCodes.Quantity, node.Position, reading.Found, reading.Expected);
        return null;
    }

    /// <summary>A quantity between two plausible bounds, both allowed: outside them a unit was probably mistaken.</summary>
    public double? QuantitySi(YamlNode node, Dimension dimension, double least, double most, Func<double, string> print)
    {
        if (QuantitySi(node, dimension, Sign.Any) is not { } valueSi)
        {
            return null;
        }

        if (valueSi >= least && valueSi <= most)
        {
            return valueSi;
        }

        sink.Error(BriefCodes.OutOfRange, node.Position, node.Shape,
            $"{DimensionWords.Noun(dimension)} from {print(least)} to {print(most)}");
        return null;
    }

    /// <summary>A length rounded to whole nanometres, no longer than a coordinate may be.</summary>
    public long? LengthNm(YamlNode node, Sign sign)
    {
        if (QuantitySi(node, Dimension.Length, sign) is not { } lengthM)
        {
            return null;
        }

        double lengthNm = Math.Round(Units.NmFromMetres(lengthM));
        if (Math.Abs(lengthNm) > PointNm.LimitNm || (sign == Sign.Positive && lengthNm < 1))
        {
            sink.Error(BriefCodes.OutOfRange, node.Position, node.Shape,
                $"a length of at most {QuantityText.Length(Units.MetresFromNm(PointNm.LimitNm))}, resolved to 1 nm");
            return null;
        }

        return (long)lengthNm;
    }

    public int? WholeNumber(YamlNode node, int least, int most)
    {
        if (node is YamlText { Text: { } text }
            && int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number)
            && number >= least && number <= most)
        {
            return number;
        }

        sink.Error(BriefCodes.Number, node.Position, node.Shape,
            string.Create(CultureInfo.InvariantCulture, $"a whole number from {least} to {most}"));
        return null;
    }

    /// <summary>A plain number of at least <paramref name="least"/>, without a unit.</summary>
    public double? Ratio(YamlNode node, double least) => PlainNumber(
        node, least, double.MaxValue, string.Create(CultureInfo.InvariantCulture, $"a plain number of at least {least}"));

    /// <summary>A share written as `1 %` or as a plain number, above <paramref name="least"/> and at most <paramref name="most"/>.</summary>
    public double? Share(YamlNode node, double least, double most)
    {
        string text = node is YamlText written ? written.Text : "";
        bool isPercent = text.EndsWith('%');
        if (double.TryParse(text.TrimEnd('%').TrimEnd(), NumberStyles.Float, CultureInfo.InvariantCulture, out double number))
        {
            double share = isPercent ? number / 100 : number;
            if (share >= least && share <= most)
            {
                return share;
            }
        }

        sink.Error(BriefCodes.Number, node.Position, node.Shape,
            string.Create(CultureInfo.InvariantCulture, $"a share from {100 * least} % to {100 * most} %"));
        return null;
    }

    /// <summary>A plain number between two bounds, both allowed.</summary>
    public double? Number(YamlNode node, double least, double most) => PlainNumber(
        node, least, most, string.Create(CultureInfo.InvariantCulture, $"a plain number from {least} to {most}"));

    public T? Choice<T>(YamlNode node, IReadOnlyList<(string Word, T Value)> choices)
        where T : struct
    {
        string written = node is YamlText text ? text.Text : "";
        foreach ((string word, T value) in choices)
        {
            if (word == written)
            {
                return value;
            }
        }

        sink.Error(BriefCodes.Choice, node.Position, () =>
        {
            string? near = NearestName.Of(written, choices.Select(choice => choice.Word));
            string hint = near is null ? "" : $"; did you mean `{near}`?";
            return (node.Shape, $"one of {string.Join(", ", choices.Select(choice => choice.Word))}{hint}");
        });
        return null;
    }

    public LayerReference? Layer(YamlNode node)
    {
        string written = node is YamlText text ? text.Text : "";
        if (written is "top" or "bottom")
        {
            return written == "top" ? LayerReference.Top : LayerReference.Bottom;
        }

        if (int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= 1)
        {
            return LayerReference.Number(number);
        }

        sink.Error(BriefCodes.Layer, node.Position, node.Shape, "`top`, `bottom` or a layer number from 1 at the top");
        return null;
    }

    /// <summary>A pair of coordinates <c>[x, y]</c>.</summary>
    public PointNm? Corner(YamlNode node)
    {
        if (node is not YamlList { Items: [var x, var y] })
        {
            sink.Error(BriefCodes.WrongShape, node.Position, node.Shape, "a corner `[x, y]`, e.g. `[1 mm, 2 mm]`");
            return null;
        }

        long? xNm = LengthNm(x, Sign.Any);
        long? yNm = LengthNm(y, Sign.Any);
        return xNm is null || yNm is null ? null : new PointNm(xNm.Value, yNm.Value);
    }

    /// <summary>The entries of a list; one value without the brackets counts as a list of one.</summary>
    public IReadOnlyList<YamlNode> OneOrMany(YamlNode node, string what)
    {
        if (node is not YamlList list)
        {
            return [node];
        }

        if (list.Items.Count == 0)
        {
            sink.Error(BriefCodes.Empty, node.Position, "an empty list", what);
        }

        return list.Items;
    }

    private double? PlainNumber(YamlNode node, double least, double most, string expected)
    {
        if (node is YamlText { Text: { } text }
            && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
            && number >= least && number <= most)
        {
            return number;
        }

        sink.Error(BriefCodes.Number, node.Position, node.Shape, expected);
        return null;
    }
}
