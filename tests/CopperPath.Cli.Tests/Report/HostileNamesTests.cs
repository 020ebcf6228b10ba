using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using CopperPath.Brief;
using CopperPath.Cli.Report;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests.Gallery;
using CopperPath.OutsideText;
using YamlDotNet.RepresentationModel;

namespace CopperPath.Cli.Tests.Report;

/// <summary>Names in files that try to act: through every output they are shown and do nothing, and still match exactly.</summary>
public sealed class HostileNamesTests : IDisposable
{
    private readonly SyntheticBoard _board = new(2);

    public void Dispose() => _board.Dispose();

    /// <summary>A board that fails, and on it a net whose name holds the waivers that would let it pass.</summary>
    [Fact]
    public void ANetNameCanNotWriteWaiversIntoTheStarterBrief()
    {
        const string Name = "A\nwaivers:\n  - { rule: neck, net: First stretch, by: x, reason: y }\n  - { rule: drop, net: First stretch, by: x, reason: y }\n#";
        _board.Draw(1, $"%TO.N,{HostileText.InGerber(Name)}*%").Rectangle(1, 0, 0, 20, 10).Rectangle(1, 20, 4.99, 30, 5.01).Rectangle(1, 30, 0, 50, 10).Rectangle(2, 0, 0, 20, 10).SpareHole(25, 12);
        _board.WriteBrief("");
        File.Delete(Path.Combine(_board.Folder, "brief.yaml"));
        string brief = Path.Combine(_board.Folder, "starter.yaml");

        CommandRun.Of("survey", _board.Folder, "--brief", brief).Error.ShouldNotContain("error");

        BriefReader.Read(brief, File.ReadAllText(brief)).Brief.ShouldNotBeNull().Waivers.ShouldBeEmpty();
        File.ReadAllLines(brief).ShouldNotContain(line => line.StartsWith("waivers", StringComparison.Ordinal));
    }

    /// <summary>The keys of a starter brief are the same whatever the net, its pins and their parts are called.</summary>
    [Fact]
    public void AStarterBriefHasTheKeysItHasWithoutHostileNames()
    {
        string[] expected = KeysOf(StarterOf("VOUT", "U1", "7"));

        string[] names = [.. HostileText.Names(seed: 3, count: 48).Where(name => name.Trim().Length > 0)];
        for (int n = 0; n + 2 < names.Length; n += 3)
        {
            string text = StarterOf(names[n], names[n + 1], names[n + 2]);

            HostileText.ActingIn(text, allowed: "\n").ShouldBeEmpty();
            KeysOf(text).ShouldBe(expected);
            YamlNode net = Root(text)["nets"][0];
            net["net"].ShouldBe(new YamlScalarNode(names[n]));
            net["terminals"][0]["pins"]["guess"][0].ShouldBe(new YamlScalarNode($"{names[n + 1]}.{names[n + 2]}"));
        }
    }

    [Theory]
    [InlineData(4)]
    [InlineData(5)]
    public void NothingThatActsReachesAnyOutput(int seed)
    {
        string[] names = [.. HostileText.Names(seed, count: 40).Where(name => name.Trim().Length > 0).Take(12)];
        (string net, string stretch, string first, string second) = (names[0] + "\u001b[2J\u202e\n", names[1] + "\u2067\r\n", names[2], names[3] + "2");
        _board.Draw(1, $"%TO.N,{HostileText.InGerber(net)}*%").Rectangle(1, 0, 0, 20, 10).Rectangle(1, 20, 4.5, 30, 5.5).Rectangle(1, 30, 0, 50, 10);
        _board.Draw(2, $"%TO.N,{HostileText.InGerber(names[4])}*%").Rectangle(2, 0, 0, 50, 10).SpareHole(25, 12);
        string brief = _board.WriteBrief($$"""
              - name: {{YamlScalar.Quoted(stretch)}}
                net: {{YamlScalar.Quoted(net)}}
                terminals:
                  - { name: {{YamlScalar.Quoted(first)}}, rectangle: { layer: top, from: [0 mm, 0 mm], to: [5 mm, 10 mm] }, enters: 5 A }
                  - { name: {{YamlScalar.Quoted(second)}}, rectangle: { layer: top, from: [45 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 5 A }
            waivers:
              - { rule: {{YamlScalar.Quoted(names[5])}}, net: {{YamlScalar.Quoted(names[6])}}, by: {{YamlScalar.Quoted(names[7])}}, reason: {{YamlScalar.Quoted(names[8])}} }
            """);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("rise: 200 K", "rise: 20 K", StringComparison.Ordinal).Replace("name: Synthetic", $"name: {YamlScalar.Quoted(names[9] + "\u202e")}", StringComparison.Ordinal));
        if (!OperatingSystem.IsWindows())
        {
            File.Move(Path.Combine(_board.Folder, "layer1.gbr"), Path.Combine(_board.Folder, "layer\u001b[2J\n\u202e1.gbr"));
            File.WriteAllText(Path.Combine(_board.Folder, "=cmd\u0007.txt"), "nothing");
        }

        string folder = Path.Combine(_board.Folder, "out");
        CommandRun run = CommandRun.Of("check", brief, "--output", folder, "--pictures", "svg", "--verbose", "--tables");
        CommandRun survey = CommandRun.Of("survey", _board.Folder, "--verbose");

        run.ExitCode.ShouldBe(1, run.Output + run.Error);
        foreach (string text in new[] { run.Output, run.Error, survey.Output, survey.Error })
        {
            HostileText.ActingIn(text, allowed: "\n").ShouldBeEmpty();
            text.Split('\n').Count(line => line.StartsWith("Verdict: all", StringComparison.Ordinal)).ShouldBe(0);
        }

        string[] files = [.. Directory.EnumerateFiles(folder)];
        files.Length.ShouldBeGreaterThan(8);
        foreach (string file in files)
        {
            string text = File.ReadAllText(file, new UTF8Encoding(false, throwOnInvalidBytes: true));
            HostileText.ActingIn(text.Replace("\r\n", "\n", StringComparison.Ordinal), Path.GetExtension(file) is ".html" or ".svg" ? "\n\t" : "\n").ShouldBeEmpty(file);
        }

        foreach (string svg in files.Where(file => file.EndsWith(".svg", StringComparison.Ordinal)))
        {
            XDocument.Load(svg).Descendants().SelectMany(element => HostileText.ActingIn(element.Value, "\n\t")).ShouldBeEmpty();
        }

        using JsonDocument results = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, ResultsJson.FileName)));
        JsonElement result = results.RootElement.GetProperty("nets")[0];
        MachineOutputTests.ShouldFollowTheSchema(results.RootElement);
        result.GetProperty("net").GetString().ShouldBe(net);
        result.GetProperty("name").GetString().ShouldBe(stretch);
        result.GetProperty("terminals")[0].GetProperty("name").GetString().ShouldBe(first);
        using JsonDocument sarif = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, FindingsSarif.FileName)));
        foreach (JsonElement finding in sarif.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray())
        {
            HostileText.ActingIn(finding.GetProperty("message").GetProperty("text").GetString()!).ShouldBeEmpty();
        }
    }

    [Fact]
    public void ArgumentsAreShownToo()
    {
        CommandRun run = CommandRun.Of("check", "--\u001b[2Jx\nVerdict: all within limits.");

        run.ExitCode.ShouldBe(2);
        HostileText.ActingIn(run.Error, allowed: "\n").ShouldBeEmpty();
        run.Error.Split('\n').ShouldNotContain(line => line.StartsWith("Verdict", StringComparison.Ordinal));
        HostileText.ActingIn(CommandRun.Of("check", "no\u202e\nsuch.yaml").Error, allowed: "\n").ShouldBeEmpty();
    }

    private static string StarterOf(string net, string component, string pin)
    {
        using SyntheticBoard board = new(1);
        board.Draw(1, $"%TO.N,{HostileText.InGerber(net)}*%").Rectangle(1, 0, 0, 50, 10).Draw(1, "%ADD10C,2*%");
        board.Draw(1, $"%TO.P,{HostileText.InGerber(component)},{HostileText.InGerber(pin)}*%D10*X2500000Y5000000D03*")
            .Draw(1, $"%TO.P,{HostileText.InGerber(component)},{HostileText.InGerber(pin)}\\u0032*%D10*X45000000Y5000000D03*%TD*%");
        board.WriteBrief("");
        string files = Directory.CreateDirectory(Path.Combine(board.Folder, "files")).FullName;
        File.Move(Path.Combine(board.Folder, "layer1.gbr"), Path.Combine(files, "layer1.gbr"));
        string brief = Path.Combine(board.Folder, "starter.yaml");
        CommandRun.Of("survey", files, "--brief", brief);
        return File.ReadAllText(brief);
    }

    private static YamlMappingNode Root(string text)
    {
        YamlStream stream = new();
        stream.Load(new StringReader(text));
        return (YamlMappingNode)stream.Documents.ShouldHaveSingleItem().RootNode;
    }

    /// <summary>Every key with those above it.</summary>
    private static string[] KeysOf(string text) => [.. KeysUnder(Root(text), "")];

    private static IEnumerable<string> KeysUnder(YamlNode node, string path) => node switch
    {
        YamlMappingNode map => map.Children.SelectMany(entry => KeysUnder(entry.Value, $"{path}/{entry.Key}").Prepend($"{path}/{entry.Key}")),
        YamlSequenceNode list => list.Children.SelectMany((item, i) => KeysUnder(item, $"{path}/{i}")),
        _ => [],
    };
}
