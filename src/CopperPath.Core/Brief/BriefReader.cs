using CopperPath.Brief.Yaml;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>
/// Reads a review brief: the YAML file in which a person says what board it is, how it is built, what currents flow
/// and what is allowed (docs/brief.md).
/// </summary>
public static class BriefReader
{
    /// <summary>Version of the format this reader understands: the value of the key <c>copperpath</c>.</summary>
    public const string FormatVersion = "1";

    // Bounds that no board of the trade leaves; beyond them a unit was mistaken. Common practice, no source.
    private static readonly double s_coldestAmbientK = Units.ZeroCelsiusK - 60;
    private static readonly double s_hottestAmbientK = Units.ZeroCelsiusK + 200;
    private static readonly double s_hottestConductorK = Units.ZeroCelsiusK + 300;

    private const double DefaultAccuracy = 0.01;
    private const double LeastAccuracy = 1e-4;
    private const double MostAccuracy = 0.1;

    /// <summary>
    /// Reads a brief. Never throws on bad text: each fault becomes a diagnostic with line and column, and as many
    /// faults as can be told apart are reported at once.
    /// </summary>
    /// <param name="file">File name for positions, as the user would write it.</param>
    /// <param name="text">The whole text.</param>
    public static BriefReading Read(string file, string text)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(text);
        DiagnosticSink sink = new();
        BlankReader blanks = new(sink);
        ReviewBrief? brief = YamlTreeReader.Read(file, text, sink) is { } root ? ReadRoot(blanks.Fill(root), sink) : null;
        brief = brief is null ? null : brief with { Blanks = blanks.Blanks };
        return new BriefReading(sink.HasErrors ? null : brief, sink.InFileOrder());
    }

    private static ReviewBrief? ReadRoot(YamlNode root, DiagnosticSink sink)
    {
        if (SectionReader.Open(root, BriefKeys.Root, sink) is not { } section)
        {
            return null;
        }

        BriefContext context = new(sink);
        if (section.Required("copperpath", "`copperpath: 1`, the version of the format") is { } version
            && !(version is YamlText { Text: var written } && written == FormatVersion))
        {
            sink.Error(BriefCodes.FormatVersion, version.Position, $"format {version.Shape}", $"`copperpath: {FormatVersion}`, the only format there is");
        }

        BoardSection? board = BoardSectionReader.Read(section, context);
        StackupSection? stackup = StackupSectionReader.Read(section, context);
        double? ambientK = section.Required("ambient", "`ambient: 45 degC`: how warm is the air around the board?") is { } ambient
            ? context.Values.QuantitySi(ambient, Dimension.Temperature, s_coldestAmbientK, s_hottestAmbientK, QuantityText.Temperature)
            : null;
        ReviewLimits? limits = LimitsSectionReader.Read(section, context);
        double? conductorK = ReadConductorTemperature(section, ambientK, limits, context);
        double? accuracy = ReadAccuracy(section, context);
        ThermalSection thermal = ThermalSectionReader.Read(section, context);
        ToleranceSection? tolerance = ToleranceSectionReader.Read(section, stackup, ambientK, context);
        List<ConverterSection> converters = ConverterSectionReader.ReadAll(section, context);
        context.Converters = converters;
        List<NetReview> nets = NetSectionReader.ReadAll(section, limits, context);
        List<SensitiveNet> sensitive = SensitiveNetReader.ReadAll(section, context);
        List<Waiver> waivers = WaiverSectionReader.ReadAll(section, context);
        List<FaultCase> faults = FaultSectionReader.ReadAll(section, nets, context);
        LoadProfile? load = LoadProfileReader.Read(section, nets, context);
        LayerReferenceCheck.Run(nets, thermal, stackup, sink);

        // The sections that could not be read have said so; without one of them there is no brief.
        return board is null || ambientK is null || limits is null || conductorK is null ? null
            : new ReviewBrief(board, stackup, ambientK.Value, conductorK.Value, limits, nets, context.StatedDefaults)
            {
                Accuracy = accuracy ?? DefaultAccuracy,
                Thermal = thermal,
                ConductorFollowsAmbient = !section.Has("conductor temperature"),
                Tolerance = tolerance,
                Converters = converters,
                SensitiveNets = sensitive,
                Waivers = waivers,
                Faults = faults,
                LoadProfile = load,
            };
    }

    private static double? ReadAccuracy(SectionReader section, BriefContext context)
    {
        if (section.Optional("accuracy") is { } stated)
        {
            return context.Values.Share(stated, LeastAccuracy, MostAccuracy);
        }

        context.StateDefault("accuracy: 1 %, the distance of the bounds of each loss and drop");
        return DefaultAccuracy;
    }

    private static double? ReadConductorTemperature(
        SectionReader section, double? ambientK, ReviewLimits? limits, BriefContext context)
    {
        if (section.Has("conductor temperature"))
        {
            return section.Optional("conductor temperature") is not { } stated ? null
                : context.Values.QuantitySi(
                    stated, Dimension.Temperature, ambientK ?? s_coldestAmbientK, s_hottestConductorK, QuantityText.Temperature);
        }

        if (ambientK is null || limits is null)
        {
            return null;
        }

        double worstK = ambientK.Value + limits.TemperatureRiseK;
        context.StateDefault(
            $"conductor temperature: {QuantityText.Temperature(worstK)}, ambient plus the allowed temperature rise (worst case)");
        return worstK;
    }
}
