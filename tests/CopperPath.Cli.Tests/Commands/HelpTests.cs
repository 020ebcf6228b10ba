namespace CopperPath.Cli.Tests.Commands;

public sealed class HelpTests
{
    [Theory]
    [InlineData("check", "boards/furrow-compute/revision-a.yaml")]
    [InlineData("survey", "boards/furrow-compute")]
    public void HelpOfACommandHasAnExample(string command, string example)
    {
        CommandRun run = CommandRun.Of(command, "--help");

        run.ExitCode.ShouldBe(0);
        run.Output.ShouldContain(example);
        run.Output.ShouldContain("Exit codes");
    }

    [Fact]
    public void VersionIsOneLine() => CommandRun.Of("--version").Output.Trim().ShouldStartWith("CopperPath ");
}
