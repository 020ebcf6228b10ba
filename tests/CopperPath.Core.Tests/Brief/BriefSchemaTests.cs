using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using CopperPath.Brief;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Brief;

/// <summary>The schema that editors complete by and the reader must know the same keys and words.</summary>
public class BriefSchemaTests
{
    private static readonly JsonNode s_schema = JsonNode.Parse(
        File.ReadAllText(Path.Combine(SharedData.ProjectRoot, "docs", "brief.schema.json")))!;

    public static TheoryData<string> Sections => [.. s_keysByDefinition.Keys.Order()];

    private static readonly Dictionary<string, SectionKeys> s_keysByDefinition = new()
    {
        [""] = BriefKeys.Root,
        ["blank"] = BriefKeys.Blank,
        ["board"] = BriefKeys.Board,
        ["layerAnswer"] = BriefKeys.LayerAnswer,
        ["drillFormat"] = BriefKeys.DrillFormat,
        ["stackup"] = BriefKeys.Stackup,
        ["limits"] = BriefKeys.Limits,
        ["net"] = BriefKeys.Net,
        ["netLimits"] = BriefKeys.NetLimits,
        ["terminal"] = BriefKeys.Terminal,
        ["thermal"] = BriefKeys.Thermal,
        ["tolerance"] = BriefKeys.Tolerance,
        ["face"] = BriefKeys.Face,
        ["laminate"] = BriefKeys.Laminate,
        ["loss"] = BriefKeys.Loss,
        ["heatSink"] = BriefKeys.HeatSink,
        ["fault"] = BriefKeys.Fault,
        ["loadProfile"] = BriefKeys.LoadProfile,
        ["stretchLoad"] = BriefKeys.StretchLoad,
        ["point"] = BriefKeys.Point,
        ["pointOnLayer"] = BriefKeys.PointOnLayer,
        ["boxOnLayer"] = BriefKeys.BoxOnLayer,
        ["circleOnLayer"] = BriefKeys.CircleOnLayer,
        ["converter"] = BriefKeys.Converter,
        ["lossShares"] = BriefKeys.LossShares,
        ["capacitorGroup"] = BriefKeys.CapacitorGroup,
        ["supplyConnector"] = BriefKeys.SupplyConnector,
        ["sensitiveNet"] = BriefKeys.SensitiveNet,
        ["waiver"] = BriefKeys.Waiver,
    };

    [Theory]
    [MemberData(nameof(Sections))]
    public void KeysAreThoseOfTheReader(string definition) =>
        Definition(definition)["properties"]!.AsObject().Select(property => property.Key)
            .ShouldBe(s_keysByDefinition[definition].Keys);

    [Fact]
    public void EveryMapOfTheSchemaIsHeldToTheReader()
    {
        string[] maps =
        [
            .. s_schema["$defs"]!.AsObject()
                .Where(definition => definition.Value!["properties"] is not null)
                .Select(definition => definition.Key),
        ];

        maps.Append("").ShouldBe(s_keysByDefinition.Keys, ignoreOrder: true);
        maps.ShouldAllBe(map => !(bool)Definition(map)["additionalProperties"]!);
    }

    /// <summary>The reader takes a blank for any value; only the format's version must stand.</summary>
    [Fact]
    public void EveryValueMayBeABlank()
    {
        foreach (string definition in s_keysByDefinition.Keys.Where(key => key != "blank"))
        {
            foreach ((string key, JsonNode? property) in Definition(definition)["properties"]!.AsObject().Where(property => property.Key != "copperpath"))
            {
                property!["anyOf"].ShouldNotBeNull($"{definition}: {key}").AsArray()
                    .ShouldContain(kind => (string?)kind!["$ref"] == "#/$defs/blank", $"{definition}: {key}");
            }
        }
    }

    [Fact]
    public void WordsAreThoseOfTheReader()
    {
        Words("layerAnswer", "role").ShouldBe(BoardSectionReader.FileRoles.Select(choice => choice.Word));
        Words("layerAnswer", "polarity").ShouldBe(BoardSectionReader.Polarities.Select(choice => choice.Word));
        Words("drillFormat", "unit").ShouldBe(BoardSectionReader.DrillUnits.Select(choice => choice.Word));
        Words("drillFormat", "zeros").ShouldBe(BoardSectionReader.OmittedZerosWords.Select(choice => choice.Word));
        Words("limits", "judge by").ShouldBe(LimitsSectionReader.JudgingRules.Select(choice => choice.Word));
        Words("loadProfile", "start").ShouldBe(LoadProfileReader.Starts.Select(choice => choice.Word));
        Words("net", "flow").ShouldBe(NetSectionReader.Flows.Select(choice => choice.Word));
        Words("net", "role").ShouldBe(NetSectionReader.Roles.Select(choice => choice.Word));
        StageCurrentReader.Stages.Select(stage => stage.Word).ShouldBe(
            Regex.Match((string)Definition("stageCurrent")["pattern"]!, @"\((feed[^)]*)\) of").Groups[1].Value.Split('|'));
        Words("terminal", "contact").ShouldBe(TerminalSectionReader.ContactModes.Select(choice => choice.Word));
        Words("thermal", "orientation").ShouldBe(ThermalSectionReader.Orientations.Select(choice => choice.Word));

        static IEnumerable<string> Words(string definition, string key) =>
            Definition(definition)["properties"]![key]!["anyOf"]!.AsArray().First(kind => kind!["enum"] is not null)!["enum"]!.AsArray().Select(word => (string)word!);
    }

    /// <summary>A key the schema requires is asked for by the reader when it is missing, and no other.</summary>
    [Theory]
    [InlineData("", "b: 1")]
    [InlineData("blank", "ambient: { candidates: [25 degC] }")]
    [InlineData("board", "board: {}")]
    [InlineData("limits", "limits: {}")]
    [InlineData("stackup", "stackup: { dielectric: [1 mm] }")]
    [InlineData("drillFormat", "board: { drill format: {} }")]
    [InlineData("net", "nets: [ { net: N } ]")]
    [InlineData("loss", "thermal: { losses: {} }")]
    [InlineData("heatSink", "thermal: { heat sinks: {} }")]
    [InlineData("fault", "faults: {}")]
    [InlineData("stretchLoad", "load profile: { stretches: {} }")]
    [InlineData("pointOnLayer", "nets: [ { at: {} } ]")]
    [InlineData("boxOnLayer", "nets: [ { terminals: [ { rectangle: {} } ] } ]")]
    [InlineData("circleOnLayer", "nets: [ { terminals: [ { circle: {} } ] } ]")]
    [InlineData("point", "nets: [ { terminals: [ { holes: {} } ] } ]")]
    [InlineData("converter", "converters: {}")]
    [InlineData("capacitorGroup", "converters: { input capacitors: {} }")]
    [InlineData("supplyConnector", "converters: { connector: {} }")]
    [InlineData("sensitiveNet", "sensitive nets: {}")]
    [InlineData("waiver", "waivers: {}")]
    public void RequiredKeysAreThoseOfTheReader(string definition, string text)
    {
        string suffix = " in " + s_keysByDefinition[definition].Section;
        string[] asked =
        [
            .. BriefReader.Read("b.yaml", text).Diagnostics
                .Where(d => d.Code == BriefCodes.MissingKey && d.Found.EndsWith(suffix, StringComparison.Ordinal))
                .Select(d => Regex.Match(d.Found, "`(.*)`").Groups[1].Value),
        ];

        asked.ShouldBe(Definition(definition)["required"]!.AsArray().Select(key => (string)key!));
    }

    [Theory]
    [InlineData("length", Dimension.Length)]
    [InlineData("thickness", Dimension.CopperThickness)]
    [InlineData("current", Dimension.Current)]
    [InlineData("voltage", Dimension.Voltage)]
    [InlineData("temperature", Dimension.Temperature)]
    [InlineData("rise", Dimension.TemperatureDifference)]
    [InlineData("film", Dimension.FilmCoefficient)]
    [InlineData("conductivity", Dimension.ThermalConductivity)]
    [InlineData("thermalResistance", Dimension.ThermalResistance)]
    [InlineData("power", Dimension.Power)]
    [InlineData("frequency", Dimension.Frequency)]
    [InlineData("inductance", Dimension.Inductance)]
    [InlineData("capacitance", Dimension.Capacitance)]
    [InlineData("resistance", Dimension.Resistance)]
    [InlineData("time", Dimension.Time)]
    public void PatternsAcceptWhatTheReaderAccepts(string definition, Dimension dimension)
    {
        Regex pattern = new((string)Definition(definition)["pattern"]!);
        string[] units =
        [
            "", "A", "mA", "MA", "V", "uV", "kV", "m", "um", "\u00B5m", "nm", "mm", "cm", "km", "mil", "in", "oz",
            "K", "mK", "degC", "\u00B0C", "C", "Hz", "ohm",
            "W", "mW", "s", "ms", "F", "uF", "W/m2K", "W/mK", "K/W",
        ];
        foreach (string unit in units)
        {
            foreach (string number in (string[])["1", "+1.5", ".5", "1.", "1e3 ", "1e", ".", "1,5", "x"])
            {
                string text = number + unit;
                pattern.IsMatch(text).ShouldBe(Quantity.Read(text, dimension).Quantity.HasValue, text);
            }
        }
    }

    private static JsonNode Definition(string name) => name.Length == 0 ? s_schema : s_schema["$defs"]![name]!;
}
