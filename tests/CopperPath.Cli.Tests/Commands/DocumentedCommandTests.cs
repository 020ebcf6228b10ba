using CommandLine;
using CopperPath.Core.Tests;

namespace CopperPath.Cli.Tests.Commands;

/// <summary>Every command that the README and the tutorial show is one the program understands, on files that are there.</summary>
public sealed class DocumentedCommandTests
{
    private const string FromSource = "dotnet run -c Release --project src/CopperPath.Cli -- ";
    private const string Installed = "copperpath ";

    public static TheoryData<string, string> Commands
    {
        get
        {
            TheoryData<string, string> commands = [];
            foreach (string page in new[] { "README.md", "docs/tutorial.md" })
            {
                foreach (string line in File.ReadLines(Path.Combine(SharedData.ProjectRoot, page)))
                {
                    string text = line.Trim().Split(" #")[0].Trim();
                    string? command = !line.StartsWith("    ", StringComparison.Ordinal) ? null
                        : text.StartsWith(FromSource, StringComparison.Ordinal) ? text[FromSource.Length..]
                        : text.StartsWith(Installed, StringComparison.Ordinal) ? text[Installed.Length..]
                        : null;
                    if (command is not null)
                    {
                        commands.Add(page, command);
                    }
                }
            }

            return commands;
        }
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void IsUnderstood(string page, string command)
    {
        using Parser parser = new(settings => settings.HelpWriter = null);

        ParserResult<object> parsed = parser.ParseArguments(
            command.Split(' ', StringSplitOptions.RemoveEmptyEntries), Program.CommandOptions);

        parsed.Tag.ShouldBe(ParserResultType.Parsed, $"{page}: {command}");
        string[] inputs = [.. command.Split(' ').Where(word => word.StartsWith("boards/", StringComparison.Ordinal))];
        inputs.ShouldAllBe(path => Path.Exists(Path.Combine(SharedData.ProjectRoot, path)));
    }
}
