using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>Refuses layers that the stated stackup does not have. Without a stackup the board's files decide later.</summary>
internal static class LayerReferenceCheck
{
    public static void Run(
        IReadOnlyList<NetReview> nets, ThermalSection thermal, StackupSection? stackup, DiagnosticSink sink)
    {
        if (stackup is null)
        {
            return;
        }

        foreach (NetReview net in nets)
        {
            if (net.Selector is NetAtPoint at)
            {
                Check(at.Layer, net.Position);
            }

            CheckAll(net.Terminals.SelectMany(terminal => terminal.Contacts));
        }

        CheckAll(thermal.Losses.Select(loss => loss.Place).Concat(thermal.Sinks.Select(sink => sink.Place)));

        void CheckAll(IEnumerable<Contact> contacts)
        {
            foreach (Contact contact in contacts)
            {
                if (LayerOf(contact) is { } layer)
                {
                    Check(layer, contact.Position);
                }
            }
        }

        void Check(LayerReference layer, SourcePosition position)
        {
            if (layer.Resolve(stackup.CopperM.Count) is null)
            {
                sink.Error(BriefCodes.NoSuchLayer, position, $"layer {layer}",
                    $"a layer of the stackup, which has {stackup.CopperM.Count}");
            }
        }
    }

    private static LayerReference? LayerOf(Contact contact) => contact switch
    {
        PadContact pad => pad.Layer,
        PadsInContact pads => pads.Layer,
        RectangleContact rectangle => rectangle.Layer,
        CircleContact circle => circle.Layer,
        _ => null,
    };
}
