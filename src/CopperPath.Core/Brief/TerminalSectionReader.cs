using CopperPath.Brief.Yaml;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads <c>terminals</c> of a net.</summary>
internal static class TerminalSectionReader
{
    internal static readonly IReadOnlyList<(string Word, ContactMode Value)> ContactModes =
        [("joined", ContactMode.Joined), ("spread", ContactMode.Spread)];

    // Beyond what any board carries; a larger number is a unit mistaken. Common practice, no source.
    private const double MostCurrentA = 10e3;

    /// <summary>No power path carries less; far below, the square of a current is no number of a computer any more.</summary>
    private const double LeastCurrentA = 1e-9;

    private static readonly IReadOnlyList<string> s_currentKeys = ["enters", "leaves", "takes"];

    /// <summary>The terminals with their currents balanced; those that could not be read are left out.</summary>
    public static IReadOnlyList<Terminal> ReadAll(SectionReader net, string netName, BriefContext context)
    {
        if (net.Required("terminals", "`terminals:`: where does current enter and leave?") is not { } node)
        {
            return [];
        }

        List<Terminal> terminals = [];
        List<string> withDefaultContact = [];
        IReadOnlyList<YamlNode> items = context.Values.OneOrMany(node, "at least two terminals");
        foreach (YamlNode item in items)
        {
            if (SectionReader.Open(item, BriefKeys.Terminal, context.Sink) is not { } section
                || Read(section, context) is not { } terminal)
            {
                continue;
            }

            if (terminals.Find(other => other.Name == terminal.Name) is { } earlier)
            {
                context.Sink.Error(BriefCodes.RepeatedName, section.PositionOf("name"),
                    $"terminal name '{terminal.Name}' again", $"another name; line {earlier.Position.Line} uses it in this net");
            }

            if (!section.Has("contact"))
            {
                withDefaultContact.Add(terminal.Name);
            }

            if (terminal.Derived is { } derived)
            {
                context.StateDefault(StageCurrentReader.LineOf(netName, terminal.Name, derived));
            }

            terminals.Add(terminal);
        }

        if (withDefaultContact.Count > 0)
        {
            context.StateDefault($"net '{netName}': contact: joined, at {string.Join(", ", withDefaultContact)}");
        }

        if (items.Count == 1)
        {
            context.Sink.Error(BriefCodes.TooFewTerminals, net.PositionOf("terminals"),
                "one terminal", "at least two: current that enters must leave");
        }

        // A balance over a list with a faulty terminal in it would blame the wrong line.
        return items.Count >= 2 && terminals.Count == items.Count
            ? CurrentBalance.Settle(terminals, netName, net.PositionOf("terminals"), context.Sink)
            : terminals;
    }

    private static Terminal? Read(SectionReader section, BriefContext context)
    {
        string? name = section.Required("name", "`name: connector`: what is this terminal to be called?") is { } nameNode
            ? context.Values.Text(nameNode, "a name for the terminal") : null;
        int faultsBefore = context.Sink.ErrorCount;
        List<Contact> contacts = ContactReader.ReadAll(section, context);
        if (contacts.Count == 0 && context.Sink.ErrorCount == faultsBefore)
        {
            context.Sink.Error(BriefCodes.NoContact, section.Position, "a terminal that touches no copper",
                "at least one of pins, component, pads, pads in, holes, rectangle, circle");
        }

        ContactMode mode = section.Optional("contact") is { } contactNode
            ? context.Values.Choice(contactNode, ContactModes) ?? ContactMode.Joined : ContactMode.Joined;
        bool takesRest = section.Has("takes");
        (double CurrentA, DerivedCurrent? Derived)? current = ReadCurrent(section, context);
        double? ratingA = section.Optional("contact rating") is { } rating
            ? context.Values.QuantitySi(rating, Dimension.Current, Sign.Positive) : null;
        return name is null || contacts.Count == 0 || current is null ? null
            : new Terminal(name, contacts, mode, current.Value.CurrentA, takesRest, section.Position)
            {
                Derived = current.Value.Derived,
                ContactRatingA = ratingA,
            };
    }

    /// <summary>The current entering here; zero for now at the terminal that takes the rest.</summary>
    private static (double CurrentA, DerivedCurrent? Derived)? ReadCurrent(SectionReader section, BriefContext context)
    {
        string[] stated = [.. s_currentKeys.Where(section.Has)];
        if (stated.Length != 1)
        {
            context.Sink.Error(BriefCodes.TerminalCurrent, section.Position,
                stated.Length == 0 ? "no current" : $"`{string.Join("` and `", stated)}`",
                "exactly one of `enters: 9 A`, `leaves: 9 A`, `takes: rest`");
            return null;
        }

        if (section.Optional(stated[0]) is not { } value)
        {
            return null;
        }

        if (stated[0] == "takes")
        {
            return context.Values.Choice(value, [("rest", 0.0)]) is { } rest ? (rest, null) : null;
        }

        DerivedCurrent? derived = StageCurrentReader.IsStage(value) ? StageCurrentReader.Read(value, context) : null;
        double? currentA = StageCurrentReader.IsStage(value) ? derived?.CurrentA
            : context.Values.QuantitySi(value, Dimension.Current, 0, MostCurrentA, QuantityText.Current);
        if (currentA is > 0 and < LeastCurrentA)
        {
            context.Sink.Error(BriefCodes.OutOfRange, value.Position, value.Shape, $"0 A, or a current of at least {QuantityText.Current(LeastCurrentA)}");
            return null;
        }

        return currentA is null ? null : (stated[0] == "leaves" ? -currentA.Value : currentA.Value, derived);
    }
}
