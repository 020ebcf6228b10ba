using System.Text.RegularExpressions;
using CopperPath.Core.Tests;

namespace CopperPath.Cli.Tests.Commands;

/// <summary>What can not be understood on the command line ends in one line. The table of docs/command-line.md is run row by row.</summary>
public sealed class CommandLineTests
{
    private static readonly string[] s_lines = File.ReadAllLines(Path.Combine(SharedData.ProjectRoot, "docs", "command-line.md"));

    public static TheoryData<string, string, int> Rows()
    {
        TheoryData<string, string, int> rows = [];
        foreach (Match row in s_lines.Select(line => Regex.Match(line, "^\\| `(.+)` \\| `(.+)` \\| (\\d) \\|$")).Where(match => match.Success))
        {
            rows.Add(row.Groups[1].Value, row.Groups[2].Value, int.Parse(row.Groups[3].Value, System.Globalization.CultureInfo.InvariantCulture));
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void EveryRowOfTheTableIsWhatIsSaid(string input, string message, int exit)
    {
        CommandRun run = CommandRun.Of(input.Split(' '));

        run.ExitCode.ShouldBe(exit);
        run.Errors.ShouldHaveSingleItem().Trim().ShouldBe(message);
        run.Output.ShouldBeEmpty();
    }

    [Fact]
    public void EveryKindOfComplaintIsInTheTable()
    {
        string all = string.Join('\n', s_lines);
        for (int code = 1; code <= 7; code++)
        {
            all.ShouldContain(FormattableString.Invariant($"CMD{code:D3}"));
        }

        Rows().Count.ShouldBeGreaterThan(20);
    }

    [Theory]
    [InlineData("-h", "survey")]
    [InlineData("help", "survey")]
    [InlineData("check -h", "--picture-width")]
    [InlineData("help survey", "--brief")]
    [InlineData("curve --help", "--output")]
    public void HelpIsAnAnswerNotAnError(string input, string holds)
    {
        CommandRun run = CommandRun.Of(input.Split(' '));

        run.ExitCode.ShouldBe(0);
        run.Error.ShouldBeEmpty();
        run.Output.ShouldContain(holds);
        run.Output.ShouldNotContain("ERROR(S)");
    }

    [Fact]
    public void NothingAtAllShowsWhatThereIs()
    {
        CommandRun run = CommandRun.Of();

        run.ExitCode.ShouldBe(2);
        run.Error.ShouldContain("survey ");
        run.Errors[^1].Trim().ShouldBe("copperpath: error CMD002: found no command; expected check, survey or curve; 'copperpath --help' explains them");
    }

    /// <summary>A format alone before the brief: the brief must not be taken for a second format.</summary>
    [Theory]
    [InlineData("check -p svg no-such.yaml")]
    [InlineData("check --pictures=svg no-such.yaml")]
    [InlineData("check -psvg no-such.yaml")]
    public void AFormatDoesNotSwallowTheBrief(string input) =>
        CommandRun.Of(input.Split(' ')).Errors[0].ShouldContain("no-such.yaml: error BRF000");

    [Fact]
    public void APathWithoutACommandIsToldTheCommands()
    {
        string folder = Directory.CreateTempSubdirectory("path").FullName;

        CommandRun.Of(folder).Errors.ShouldHaveSingleItem().Trim().ShouldBe(
            $"copperpath: error CMD002: found '{folder}'; expected check, survey or curve; for a brief write 'copperpath check {folder}', for a folder 'copperpath survey {folder}'");
        Directory.Delete(folder);
    }

    /// <summary>An option named in a text of the program exists in a command.</summary>
    [Fact]
    public void OptionsNamedInMessagesExist()
    {
        string[] known = [.. Program.CommandOptions.SelectMany(type => type.GetProperties())
            .Select(property => property.GetCustomAttributes(typeof(CommandLine.OptionAttribute), false).OfType<CommandLine.OptionAttribute>().FirstOrDefault()?.LongName)
            .OfType<string>(), "help"];
        IEnumerable<string> named = Directory.EnumerateFiles(Path.Combine(SharedData.ProjectRoot, "src"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(File.ReadAllLines).Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal))
            .SelectMany(line => Regex.Matches(line, "(?<=[ \"'])--([a-z][a-z-]+)").Select(match => match.Groups[1].Value)).Distinct();

        named.Except(known).ShouldBeEmpty();
    }
}
