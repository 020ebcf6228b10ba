using CopperPath.Brief.Yaml;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads <c>stackup</c>.</summary>
internal static class StackupSectionReader
{
    // Bounds that no board of the trade leaves; beyond them a unit was mistaken. Common practice, no source.
    private const double LeastCopperM = 1e-6;
    private const double MostCopperM = 2e-3;
    private const double LeastDielectricM = 1e-6;
    private const double MostDielectricM = 10e-3;
    private const double LeastPlatingM = 1e-6;
    private const double MostPlatingM = 0.5e-3;

    private static readonly IReadOnlyList<(string Word, SolderAlloy Value)> s_alloys =
        [("tin-silver-copper", SolderAlloy.TinSilverCopper), ("tin-lead", SolderAlloy.TinLead)];

    private static readonly IReadOnlyList<(string Word, HoleDiameters Value)> s_meanings =
        [("finished", HoleDiameters.Finished), ("drilled", HoleDiameters.Drilled)];

    /// <summary>The section, or null when it is absent or could not be read (which the sink then knows).</summary>
    public static StackupSection? Read(SectionReader root, BriefContext context)
    {
        if (root.Optional("stackup") is not { } node
            || SectionReader.Open(node, BriefKeys.Stackup, context.Sink) is not { } section)
        {
            return null;
        }

        List<double>? copperM = section.Required(
            "copper", "`copper: [35 um, 35 um]`: how thick is each finished copper layer, top to bottom?") is { } copper
            ? ReadThicknesses(copper, Dimension.CopperThickness, LeastCopperM, MostCopperM, context) : null;
        double? platingM = section.Required("plating", "`plating: 25 um`: how thick is the copper on the hole walls?") is { } plating
            ? context.Values.QuantitySi(plating, Dimension.CopperThickness, LeastPlatingM, MostPlatingM, QuantityText.Length) : null;

        // A board with one copper layer has nothing between its layers.
        YamlNode? dielectric = copperM is { Count: 1 }
            ? section.Optional("dielectric")
            : section.Required("dielectric", "`dielectric: [1.5 mm]`: how thick is the material between the copper layers?");
        List<double>? dielectricM = dielectric is null ? (copperM is { Count: 1 } ? [] : null)
            : ReadThicknesses(dielectric, Dimension.Length, LeastDielectricM, MostDielectricM, context);
        if (copperM is null || dielectricM is null || platingM is null)
        {
            return null;
        }

        if (dielectricM.Count != copperM.Count - 1)
        {
            context.Sink.Error(BriefCodes.StackupCount, section.PositionOf("dielectric"),
                $"{dielectricM.Count} dielectric thicknesses for {copperM.Count} copper layers",
                $"{copperM.Count - 1}, one between each two neighbouring layers");
        }

        return new StackupSection(copperM, dielectricM, platingM.Value, section.Position)
        {
            HoleDiameters = ReadHoleDiameters(section, context),
            SolderM = section.Optional("solder on exposed copper") is { } solder
                ? context.Values.QuantitySi(solder, Dimension.Length, LeastCopperM, MostCopperM, QuantityText.Length) : null,
            RelativePermittivity = section.Optional("relative permittivity") is { } permittivity
                ? context.Values.Ratio(permittivity, least: 1) ?? StackupSection.UsualRelativePermittivity
                : StackupSection.UsualRelativePermittivity,
            SolderAlloy = section.Optional("solder alloy") is { } alloy ? context.Values.Choice(alloy, s_alloys) ?? default : default,
        };
    }

    private static HoleDiameters ReadHoleDiameters(SectionReader section, BriefContext context)
    {
        if (section.Optional("hole diameters") is { } stated)
        {
            return context.Values.Choice(stated, s_meanings) ?? default;
        }

        context.StateDefault("stackup: hole diameters: finished, the wall lies outside the diameter in the drill file");
        return HoleDiameters.Finished;
    }

    private static List<double>? ReadThicknesses(
        YamlNode node, Dimension dimension, double leastM, double mostM, BriefContext context)
    {
        List<double> thicknessesM = [];
        IReadOnlyList<YamlNode> items = context.Values.OneOrMany(node, "a thickness for each layer");
        foreach (YamlNode item in items)
        {
            if (context.Values.QuantitySi(item, dimension, leastM, mostM, QuantityText.Length) is { } thicknessM)
            {
                thicknessesM.Add(thicknessM);
            }
        }

        return items.Count > 0 && thicknessesM.Count == items.Count ? thicknessesM : null;
    }
}
