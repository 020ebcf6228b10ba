using CopperPath.Cli.Tests.Report;

namespace CopperPath.Cli.Tests.Commands;

public sealed class QuietTests(ReviewedNeck review) : IClassFixture<ReviewedNeck>
{
    [Fact]
    public void QuietSaysTheVerdictOnly()
    {
        CommandRun run = CommandRun.Of("check", review.Brief, "--output", review.Folder, "--quiet");

        run.ExitCode.ShouldBe(1);
        run.Output.Trim().ShouldMatch("^Verdict: [0-9]+ findings? beyond limits(, [0-9]+ findings? within as stated only)?\\.$");
        run.Error.ShouldBeEmpty();
    }
}
