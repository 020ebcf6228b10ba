using CopperPath.PowerPath;

namespace CopperPath.Core.Tests.PowerPath;

/// <summary>
/// The demo board's path proposed from copper alone. Expected nets come from the generator of the board: places of
/// switch nodes and inductors as its drawing states them.
/// </summary>
public sealed class DemoBoardProposalTests
{
    [Theory]
    [InlineData("revision-a", "bare")]
    [InlineData("revision-b", "x2")]
    public void ProposesEveryStageAndFourElectricalPhases(string revision, string dialect)
    {
        Survey survey = Analysis.Survey(Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", revision, dialect));
        PathProposal path = survey.Path.ShouldNotBeNull();

        path.Converters.Select(converter => converter.Phases.Count).ShouldBe([4, 1]);
        ConverterProposal core = path.Converters[0];
        core.Phases.ShouldAllBe(phase => phase.Inductors.Count == 1 && phase.HighSides.Count == 1 && phase.LowSides.Count == 2);
        core.Phases.ShouldAllBe(phase => phase.Confidence == Confidence.High && phase.Reasons.Count >= 4);
        core.Phases.ShouldAllBe(phase => phase.InputCapacitors.Count == 5);

        // A point on each net, from the drawing: inductor, load, connector, fuse and choke pads.
        string At(double xMm, double yMm) => survey.Board.Nets!.At(1, new((long)(xMm * 1e6), (long)(yMm * 1e6))).ShouldNotBeNull().Name;
        core.Phases.Select(phase => phase.SwitchNode.Name)
            .ShouldBe([At(30.2, 57.6), At(30.2, 30.4), At(119.8, 57.6), At(119.8, 30.4)], ignoreOrder: true);
        path.Converters[1].Phases[0].SwitchNode.Name.ShouldBe(At(113.4, 12));
        Stages(StageRole.Feed).ShouldBe([At(15, 85.2), At(38.9, 85.2)]);
        Stages(StageRole.FeedReturn).ShouldBe([At(15, 80)]);
        Stages(StageRole.Input).ShouldBe([At(57.5, 85)]);
        Stages(StageRole.Output).ShouldBe([At(38.4, 57.6), At(108.6, 12)]);
        Stages(StageRole.Return).ShouldBe([At(57.5, 80)]);
        Stages(StageRole.HighSideSupply).Count().ShouldBe(5);
        path.Stages.ShouldAllBe(stage => stage.Confidence >= Confidence.Medium && stage.Reasons.Count > 0);

        IEnumerable<string> Stages(StageRole role) => path.Stages.Where(stage => stage.Role == role).Select(stage => stage.Net.Name);
    }
}
