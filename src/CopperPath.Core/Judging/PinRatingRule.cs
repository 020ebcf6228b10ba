using System.Globalization;
using CopperPath.Brief;
using CopperPath.Converter;
using CopperPath.Electrical;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>Judges connector pins by their rating, with the currents of the field solve where a terminal states the rating.</summary>
internal static class PinRatingRule
{
    public static IEnumerable<Finding> Judge(PathContext path)
    {
        foreach (SolvedNet net in path.Nets)
        {
            for (int t = 0; t < net.Conduction.Terminals.Count; t++)
            {
                TerminalResult terminal = net.Conduction.Terminals[t];
                if (RatingA(path, net, net.Bound.Review.Terminals[t]) is not { } ratingA)
                {
                    continue;
                }

                double equalA = terminal.ContactCurrentsA.Sum(Math.Abs) / terminal.ContactCurrentsA.Count;
                double worstA = terminal.ContactCurrentsA.Max(Math.Abs);
                if (worstA > ratingA)
                {
                    yield return FindingOf(net, terminal, equalA, worstA, ratingA);
                }
            }
        }

        foreach (ConverterSection section in path.Brief.Converters)
        {
            ConverterFacts facts = section.Facts;
            if (facts.Connector is { } connector && facts.EqualPinCurrentA is { } eachA && eachA > connector.RatingA)
            {
                yield return new Finding(RuleCatalogue.PinRating.Id, FindingLevel.BeyondLimit, facts.Name, 0, 0, 0,
                    new Measure("pin current", "A", eachA, connector.RatingA),
                    string.Create(CultureInfo.InvariantCulture,
                        $"{connector.Pins} pins share a feed of {QuantityText.Current(facts.Stage.FeedA)}: {QuantityText.Current(eachA)} each even if they share alike; the rating is {QuantityText.Current(connector.RatingA)}."),
                    string.Create(CultureInfo.InvariantCulture, $"Use {(int)Math.Ceiling(facts.Stage.FeedA / connector.RatingA)} pins or more. Pins beyond their rating overheat and can burn: limit and fuse the current."),
                    "feed current of the ideal converter at the stated efficiency, equal shares");
            }
        }
    }

    /// <summary>
    /// Resistance of the contacts themselves evens out the shares, so the truth lies between the equal share and what the
    /// field solve gives with contacts joined without resistance.
    /// </summary>
    private static Finding FindingOf(SolvedNet net, TerminalResult terminal, double equalA, double worstA, double ratingA)
    {
        int worst = terminal.ContactCurrentsA.ToList().FindIndex(currentA => Math.Abs(currentA) == worstA);
        bool isCertain = equalA > ratingA;
        (int layer, Geometry.PointNm at) = DropRule.PlaceOf(terminal.Terminal with { Contacts = [terminal.Terminal.Contacts[worst]] });
        double judgedA = isCertain ? equalA : worstA;
        return PathContext.FindingAt(RuleCatalogue.PinRating, isCertain ? FindingLevel.BeyondLimit : FindingLevel.Remark,
            net.Bound.Review.Name, layer, at, new Measure("pin current", "A", judgedA, ratingA),
            isCertain
                ? $"Each of the {terminal.ContactCurrentsA.Count} contacts of {terminal.Terminal.Name} carries {QuantityText.Current(equalA)} even if they share alike; the rating is {QuantityText.Current(ratingA)}."
                : $"{terminal.Terminal.Contacts[worst].Name} of {terminal.Terminal.Name} carries up to {QuantityText.Current(worstA)} where the contacts themselves have no resistance, "
                    + $"{QuantityText.Current(equalA)} where they share alike; the rating is {QuantityText.Current(ratingA)}.",
            string.Create(CultureInfo.InvariantCulture, $"Use about {(int)Math.Ceiling(terminal.ContactCurrentsA.Count * judgedA / ratingA)} pins, or copper that shares the current better.")
                + " Pins beyond their rating overheat and can burn: limit and fuse the current.");
    }

    /// <summary>The terminal's own rating, or that of a converter's connector with as many pins on a feed.</summary>
    private static double? RatingA(PathContext path, SolvedNet net, Brief.Terminal terminal)
    {
        if (terminal.ContactRatingA is not null || net.Bound.Review.Role != NetRole.Feed || terminal.Mode != ContactMode.Joined)
        {
            return terminal.ContactRatingA;
        }

        int contacts = net.Bound.Terminals.First(bound => bound.Name == terminal.Name).Contacts.Count;
        return contacts < 2 ? null : path.Brief.Converters.Select(section => section.Facts.Connector)
            .FirstOrDefault(connector => connector is not null && connector.Pins == contacts)?.RatingA;
    }
}
