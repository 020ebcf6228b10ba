using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using CopperPath.Brief;
using CopperPath.Circuit;
using CopperPath.Cli.Report.Starter;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests;
using CopperPath.Core.Tests.Gallery;
using Json.Schema;
using YamlDotNet.RepresentationModel;

namespace CopperPath.Cli.Tests.Report.Starter;

/// <summary>
/// The brief that a survey writes is one that can be checked as it stands: it parses, balances and finds its copper; what is
/// guessed in it is a blank, and a check of it lists them all and judges nothing.
/// </summary>
public sealed class StarterBriefTests : IDisposable
{
    private readonly SyntheticBoard _bar = new(1);

    public static TheoryData<string> Demo => ["revision-a/x2", "revision-a/bare", "revision-b/x2", "revision-b/bare"];

    public static TheoryData<string> Shared => ["bitaxe-ultra", "esp32-poe-b2", "picopd-v12", "eez-aux-ps", "vesc-4", "simplefoc-powershield"];

    public static TheoryData<string> LargeShared =>
        ["eez-dcp405-r4", "micro-driver-v2", "opsis", "orangecrab-r021", "sonata-one-r09", "thunderscope-r53", "ulx3s"];

    [Theory]
    [MemberData(nameof(Demo))]
    public void TheDemoBoardsParsesAndBalances(string files)
    {
        (ReviewBrief brief, Survey survey) = ShouldParse(Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", files));

        // The path of the demo board, stage by stage: feed over fuse and choke, its return, input, five phases, two outputs, return.
        brief.Nets.Count(net => net.Role == NetRole.SwitchNode).ShouldBe(5);
        brief.Nets.Count(net => net.Role == NetRole.Output).ShouldBe(2);
        brief.Nets.Count.ShouldBe(survey.Path!.Stages.Count);
        foreach (NetRole role in new[] { NetRole.Feed, NetRole.Input, NetRole.Return })
        {
            brief.Nets.ShouldContain(net => net.Role == role);
        }

        brief.Converters.Select(converter => converter.Facts.Stage.Phases).ShouldBe([4, 1]);
    }

    /// <summary>Where the files name pins, the terminals are those a person wrote into the brief of the same board.</summary>
    [Fact]
    public void TheDemoBoardsTerminalsAreThoseOfItsReviewedBrief()
    {
        (ReviewBrief brief, _) = ShouldParse(Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", "revision-a", "x2"));

        Pins("SW1", "low side").ShouldBe(["Q12.5", "Q13.5"]);
        Pins("SW1", "inductor").ShouldBe(["L1.1"]);
        Pins("GND", "choke").ShouldBe(["L6.3"]);
        Pins("5V", "load").ShouldBe(["J2.1"]);
        Pins("5V", "phase 1 inductor").ShouldBe(["L5.2"], "the converter's sense pin U3.3 carries no current");

        IEnumerable<string> Pins(string net, string terminal) => brief.Nets.First(entry => entry.Selector == new NetByName(net))
            .Terminals.First(entry => entry.Name == terminal).Contacts.Cast<PinContact>().Select(pin => $"{pin.Component}.{pin.Pin}");
    }

    [Theory]
    [MemberData(nameof(Shared))]
    public void RealBoardsParseAndBalance(string board) => ShouldParse(SharedData.Require("boards-open", board));

    [Theory]
    [MemberData(nameof(LargeShared))]
    [Trait("Category", "Soak")]
    public void LargeRealBoardsParseAndBalance(string board)
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is "1", "a soak; set COPPERPATH_SOAK=1");
        ShouldParse(SharedData.Require("boards-open", board));
    }

    [Fact]
    public void UneditedItIsNotJudgedAndEveryBlankIsListed()
    {
        string brief = WrittenBrief();
        CommandRun run = CommandRun.Of("check", brief, "--output", Path.Combine(_bar.Folder, "out"));

        run.ExitCode.ShouldBe(2);
        string[] lines = File.ReadAllLines(brief);
        string[] blanks = [.. Enumerable.Range(1, lines.Length).Where(line => lines[line - 1].Contains(": { guess:", StringComparison.Ordinal)).Select(line => $"starter.yaml:{line}:")];
        blanks.Length.ShouldBeGreaterThan(7);
        run.Errors.Count.ShouldBe(blanks.Length);
        run.Errors.Zip(blanks).ShouldAllBe(pair => pair.First.Contains(pair.Second, StringComparison.Ordinal));
        run.Errors.ShouldContain(line => line.EndsWith("found a guess for `stackup: plating`: 20 um; expected a value somebody confirms, such as 18 um, 20 um, 25 um", StringComparison.Ordinal));
        run.Output.ShouldContain($"Verdict: could not judge: {blanks.Length} values of the brief are guesses nobody has confirmed; as it stands, 0 findings beyond limits.");
        JsonNode results = JsonNode.Parse(File.ReadAllText(Path.Combine(_bar.Folder, "out", "results.json")))!;
        results["blanks"]!.AsArray().Count.ShouldBe(blanks.Length);
        results["nets"]![0]!["status"]!.GetValue<string>().ShouldBe("solved");
        CommandRun.Of("curve", brief, "--output", Path.Combine(_bar.Folder, "curves")).ExitCode.ShouldBe(2);
    }

    /// <summary>One blank is as good as many: with all but one confirmed nothing is judged, with all of them the board passes.</summary>
    [Fact]
    public void ItIsJudgedOnceEveryBlankIsConfirmed()
    {
        string brief = WrittenBrief();
        string confirmed = Confirmed(File.ReadAllText(brief));
        File.WriteAllText(brief, confirmed.Replace("ambient: 40 degC", "ambient: { guess: 40 degC }", StringComparison.Ordinal));
        CommandRun.Of("check", brief, "--quiet").Output.ShouldContain("could not judge: 1 value of the brief is a guess");

        File.WriteAllText(brief, confirmed);
        CommandRun run = CommandRun.Of("check", brief, "--quiet");
        run.ExitCode.ShouldBe(0, run.Error);
        run.Output.Trim().ShouldStartWith("Verdict: all within limits that could be judged over the range of what is not known; the board's temperature is not");
    }

    [Theory]
    [InlineData("12V_IN", 12.0)]
    [InlineData("+3V3", 3.3)]
    [InlineData("/FPGA/+1V0_R", 1.0)]
    [InlineData("1.8V", 1.8)]
    [InlineData("VCORE", null)]
    [InlineData("3V3_5V", null)]
    [InlineData("V12", null)]
    [InlineData("0V", null)]
    public void ANameThatSpeaksOfOneVoltageIsHeard(string name, double? volts) => NameVoltage.Of(name).ShouldBe(volts);

    public void Dispose() => _bar.Dispose();

    private static (ReviewBrief Brief, Survey Survey) ShouldParse(string files)
    {
        Survey survey = Analysis.Survey(files);
        string text = Encoding.UTF8.GetString(StarterBrief.Of(survey.Board, "files", survey.Path));
        BriefReading reading = BriefReader.Read("starter.yaml", text);
        reading.Diagnostics.ShouldAllBe(diagnostic => diagnostic.Code == BriefCodes.Unconfirmed);
        ReviewBrief brief = reading.Brief.ShouldNotBeNull();
        brief.Blanks.Count.ShouldBe(Regex.Count(text, @"\{ guess:") - 1, "one more in the comment on top");
        CircuitBinder.Bind(brief, survey.Board.Nets!).Diagnostics.ShouldBeEmpty();
        StackupBuilder.Build(brief, survey.Board.Nets!).Problem.ShouldBeNull();

        // With every guess taken as it stands nothing is left to be asked.
        BriefReader.Read("starter.yaml", Confirmed(text)).Diagnostics.ShouldBeEmpty();
        ShouldFollowTheSchema(text);
        return (brief, survey);
    }

    private static void ShouldFollowTheSchema(string text)
    {
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(Path.Combine(SharedData.ProjectRoot, "docs", "brief.schema.json")));
        YamlStream stream = [];
        stream.Load(new StringReader(text));
        System.Text.Json.JsonElement element = System.Text.Json.JsonSerializer.SerializeToElement(JsonOf(stream.Documents[0].RootNode));
        schema.Evaluate(element).IsValid.ShouldBeTrue();

        static JsonNode JsonOf(YamlNode node) => node switch
        {
            YamlMappingNode map => new JsonObject(map.Children.Select(entry => KeyValuePair.Create<string, JsonNode?>(((YamlScalarNode)entry.Key).Value!, JsonOf(entry.Value)))),
            YamlSequenceNode list => new JsonArray([.. list.Children.Select(JsonOf)]),
            YamlScalarNode { Style: YamlDotNet.Core.ScalarStyle.Plain } plain when int.TryParse(plain.Value, out int number) => JsonValue.Create(number),
            _ => JsonValue.Create(((YamlScalarNode)node).Value!),
        };
    }

    private string WrittenBrief()
    {
        string files = Directory.CreateDirectory(Path.Combine(_bar.Folder, "files")).FullName;
        _bar.Draw(1, "%TO.N,BAR*%").Rectangle(1, 0, 0, 50, 10).Draw(1, "%ADD10C,2*%D10*X5000000Y5000000D03*X45000000Y5000000D03*").WriteBrief("");
        foreach (string name in new[] { "layer1.gbr", "profile.gbr" })
        {
            File.Move(Path.Combine(_bar.Folder, name), Path.Combine(files, name));
        }

        string brief = Path.Combine(_bar.Folder, "starter.yaml");
        CommandRun.Of("survey", files, "--brief", brief).ExitCode.ShouldBe(0);
        return brief;
    }

    /// <summary>The text with each blank's guess in the blank's place.</summary>
    private static string Confirmed(string text)
    {
        const string Start = "{ guess: ";
        string body = string.Join('\n', text.Split('\n').Where(line => !line.StartsWith('#')));
        while (body.IndexOf(Start, StringComparison.Ordinal) is >= 0 and var start)
        {
            int from = start + Start.Length;
            int guessEnd = EndOfValue(body, from);
            int end = guessEnd;
            while (body[end] == ',')
            {
                end = EndOfValue(body, body.IndexOf(": ", end, StringComparison.Ordinal) + 2);
            }

            body = $"{body[..start]}{body[from..guessEnd].TrimEnd()}{body[(end + 1)..]}";
        }

        return body;
    }

    /// <summary>Where a value of a flow map ends: at the next comma or brace outside quotes and inner brackets.</summary>
    private static int EndOfValue(string text, int at)
    {
        bool isQuoted = false;
        int depth = 0;
        for (; isQuoted || depth > 0 || text[at] is not (',' or '}'); at++)
        {
            isQuoted ^= text[at] == '\'';
            depth += isQuoted ? 0 : text[at] is '[' or '{' ? 1 : text[at] is ']' or '}' ? -1 : 0;
        }

        return at;
    }
}
