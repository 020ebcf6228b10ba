using System.Globalization;
using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Nets;
using CopperPath.OutsideText;

namespace CopperPath.Circuit;

/// <summary>Brief + nets -> each reviewed net with its terminals as places on its copper. Nothing is guessed: a name that is
/// not there is an error at its line of the brief, with the nearest name that is.</summary>
public static class CircuitBinder
{
    public static BoundCircuit Bind(ReviewBrief brief, NetList board)
    {
        List<BoundNet> bound = [];
        List<Diagnostic> diagnostics = [];
        foreach (NetReview review in brief.Nets)
        {
            if (FindNet(review, board, diagnostics) is not { } net)
            {
                continue;
            }

            ContactBinder contacts = new(net, board, diagnostics);
            List<BoundTerminal> terminals = [];
            foreach (Terminal terminal in review.Terminals)
            {
                List<Electrical.Contact> places = [.. terminal.Contacts.SelectMany(contacts.Bind)];
                if (places.Count > 0)
                {
                    terminals.Add(new BoundTerminal(terminal.Name, places, terminal.Mode == ContactMode.Joined, terminal.CurrentA));
                }
            }

            if (terminals.Count == review.Terminals.Count)
            {
                bound.Add(new BoundNet(review, net, terminals));
            }
        }

        return new BoundCircuit(bound, diagnostics);
    }

    private static Net? FindNet(NetReview review, NetList board, List<Diagnostic> diagnostics)
    {
        switch (review.Selector)
        {
            case NetByName byName:
                Net? named = board.Named(byName.Name);
                if (named is null)
                {
                    string hint = diagnostics.Count < RemarkBudget.ListedPerKind && NearestName.Of(byName.Name, board.Nets.Select(net => net.Name)) is { } near
                        ? $"a net of the files; did you mean '{near}'?" : "a net of the files; 'survey' lists them";
                    diagnostics.Add(new Diagnostic("CIR001", Severity.Error, review.Position, $"the net name '{byName.Name}'", hint));
                }

                return named;

            case NetAtPoint atPoint:
                Net? covering = atPoint.Layer.Resolve(board.Layers[^1].Number) is { } layer ? board.At(layer, atPoint.At) : null;
                if (covering is null)
                {
                    diagnostics.Add(new Diagnostic("CIR002", Severity.Error, review.Position, string.Create(CultureInfo.InvariantCulture,
                        $"no copper at x {atPoint.At.X / 1e6:0.###} mm, y {atPoint.At.Y / 1e6:0.###} mm on layer {atPoint.Layer}"),
                        "a point on the copper of the net"));
                }

                return covering;

            default:
                throw new InvalidOperationException($"unknown selector {review.Selector.GetType().Name}");
        }
    }
}
