using CopperPath.Brief.Yaml;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads <c>thermal</c>; what it leaves open is filled in and stated.</summary>
internal static class ThermalSectionReader
{
    internal static readonly IReadOnlyList<(string Word, BoardPosture Value)> Orientations =
        [("horizontal", BoardPosture.Horizontal), ("vertical", BoardPosture.Vertical)];

    private static readonly string[] s_places = ["component", "rectangle", "circle"];

    // Bounds beyond which a unit was mistaken. Common practice, no source.
    private const double MostFilmWPerM2K = 1e5;
    private const double LeastLaminateWPerMK = 0.01;
    private const double MostLaminateWPerMK = 1000;
    private const double LeastCellM = 20e-6;
    private const double MostCellM = 20e-3;
    private const double MostBelowM = 20e-3;
    private static readonly double s_coldestK = Units.ZeroCelsiusK - 100;
    private static readonly double s_hottestK = Units.ZeroCelsiusK + 300;

    public static ThermalSection Read(SectionReader root, BriefContext context)
    {
        ThermalSection defaults = ThermalSection.Default;
        if (!root.Has("thermal"))
        {
            context.StateDefault("thermal: board horizontal in still air, emissivity 0.9, FR-4 of 0.3 W/(m·K) through and "
                + "0.8 W/(m·K) in plane; losses of parts as the converters' efficiencies say");
            return defaults;
        }

        if (root.Optional("thermal") is not { } node || SectionReader.Open(node, BriefKeys.Thermal, context.Sink) is not { } section)
        {
            return defaults;
        }

        BoardPosture posture = section.Optional("orientation") is { } orientation
            ? context.Values.Choice(orientation, Orientations) ?? defaults.Posture
            : Stated(defaults.Posture, "thermal: orientation: horizontal, top face up", context);
        FaceSection top = ReadFace(section, "top", context);
        FaceSection bottom = ReadFace(section, "bottom", context);
        LaminateSection laminate = ReadLaminate(section.Optional("laminate"), context);
        double? cellM = section.Optional("cell") is { } cell
            ? context.Values.QuantitySi(cell, Dimension.Length, LeastCellM, MostCellM, QuantityText.Length) : null;
        List<ComponentLoss> losses = ReadAll(section, "losses", "at least one `{ name, component, power }`", item => ReadLoss(item, context), context);
        List<SinkPlace> sinks = ReadAll(section, "heat sinks", "at least one `{ name, component, resistance }`", item => ReadSink(item, context), context);
        if (losses.Count == 0)
        {
            context.StateDefault("thermal: losses: none stated, parts lose what the converters' efficiencies say");
        }

        return new ThermalSection(posture, top, bottom, laminate, cellM, losses, sinks);
    }

    private static FaceSection ReadFace(SectionReader thermal, string key, BriefContext context)
    {
        FaceSection defaults = FaceSection.Default;
        SectionReader? section = thermal.Optional(key) is { } node ? SectionReader.Open(node, BriefKeys.Face, context.Sink) : null;
        double? filmWPerM2K = section?.Optional("film") is { } film
            ? context.Values.QuantitySi(film, Dimension.FilmCoefficient, 0, MostFilmWPerM2K, QuantityText.Film)
            : Stated<double?>(null, $"thermal: {key}: film: still air, natural convection", context);
        double emissivity = section?.Optional("emissivity") is { } share
            ? context.Values.Number(share, 0, 1) ?? defaults.Emissivity
            : Stated(defaults.Emissivity, $"thermal: {key}: emissivity: {QuantityText.Ratio(defaults.Emissivity)}", context);
        return new FaceSection(filmWPerM2K, emissivity);
    }

    private static LaminateSection ReadLaminate(YamlNode? node, BriefContext context)
    {
        LaminateSection defaults = LaminateSection.Default;
        SectionReader? section = node is null ? null : SectionReader.Open(node, BriefKeys.Laminate, context.Sink);
        double through = Conductivity("through", defaults.ThroughWPerMK);
        double inPlane = Conductivity("in plane", defaults.InPlaneWPerMK);
        double? belowM = section?.Optional("below") is { } below
            ? context.Values.QuantitySi(below, Dimension.Length, 0, MostBelowM, QuantityText.Length) : null;
        return new LaminateSection(through, inPlane, belowM ?? defaults.BelowM)
        {
            IsThroughStated = section?.Has("through") ?? false,
            IsInPlaneStated = section?.Has("in plane") ?? false,
        };

        double Conductivity(string key, double standard) => section?.Optional(key) is { } value
            ? context.Values.QuantitySi(
                value, Dimension.ThermalConductivity, LeastLaminateWPerMK, MostLaminateWPerMK, QuantityText.ThermalConductivity) ?? standard
            : Stated(standard, $"thermal: laminate: {key}: {QuantityText.ThermalConductivity(standard)}", context);
    }

    private static ComponentLoss? ReadLoss(YamlNode node, BriefContext context)
    {
        if (SectionReader.Open(node, BriefKeys.Loss, context.Sink) is not { } section)
        {
            return null;
        }

        string? name = ReadName(section, "`name: Q1`: what gets warm here?", context);
        Contact? place = ReadPlace(section, context);
        double? powerW = section.Required("power", "`power: 1.2 W`: how much heat does it put into the board?") is { } power
            ? context.Values.QuantitySi(power, Dimension.Power, Sign.NotNegative) : null;
        double? toAirKPerW = section.Optional("to air") is { } toAir
            ? context.Values.QuantitySi(toAir, Dimension.ThermalResistance, Sign.Positive) : null;
        return name is null || place is null || powerW is null ? null : new ComponentLoss(name, place, powerW.Value, toAirKPerW);
    }

    private static SinkPlace? ReadSink(YamlNode node, BriefContext context)
    {
        if (SectionReader.Open(node, BriefKeys.HeatSink, context.Sink) is not { } section)
        {
            return null;
        }

        string? name = ReadName(section, "`name: chassis`: what takes the heat here?", context);
        Contact? place = ReadPlace(section, context);
        double? temperatureK = section.Optional("temperature") is { } temperature
            ? context.Values.QuantitySi(temperature, Dimension.Temperature, s_coldestK, s_hottestK, QuantityText.Temperature) : null;
        double? resistanceKPerW = section.Optional("resistance") is { } resistance
            ? context.Values.QuantitySi(resistance, Dimension.ThermalResistance, Sign.NotNegative) : null;
        return name is null || place is null ? null
            : new SinkPlace(name, place, temperatureK, resistanceKPerW ?? 0, section.Position);
    }

    private static string? ReadName(SectionReader section, string question, BriefContext context) =>
        section.Required("name", question) is { } node ? context.Values.Text(node, "a name") : null;

    private static Contact? ReadPlace(SectionReader section, BriefContext context)
    {
        string[] given = [.. s_places.Where(section.Has)];
        if (given.Length != 1)
        {
            context.Sink.Error(BriefCodes.HeatPlace, section.Position,
                given.Length == 0 ? "no place" : $"`{string.Join("` and `", given)}`",
                "exactly one of `component`, `rectangle` and `circle`");
            return null;
        }

        return section.Optional(given[0]) switch
        {
            null => null,
            { } node when given[0] == "component" =>
                context.Values.Text(node, "a designator such as `Q1`") is { } name ? new ComponentContact(name, node.Position) : null,
            { } node when given[0] == "rectangle" =>
                ContactReader.ReadBox(node, context) is var (layer, box) ? new RectangleContact(layer, box, node.Position) : null,
            { } node => ContactReader.ReadCircle(node, context),
        };
    }

    private static List<T> ReadAll<T>(
        SectionReader section, string key, string what, Func<YamlNode, T?> read, BriefContext context)
        where T : class =>
        section.Optional(key) is { } node ? [.. context.Values.OneOrMany(node, what).Select(read).OfType<T>()] : [];

    private static T Stated<T>(T value, string line, BriefContext context)
    {
        context.StateDefault(line);
        return value;
    }
}
