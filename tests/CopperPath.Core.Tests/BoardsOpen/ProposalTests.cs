using CopperPath.Nets;
using CopperPath.PowerPath;

namespace CopperPath.Core.Tests.BoardsOpen;

/// <summary>
/// Proposals for real boards against what their pin attributes (or the paths their origin notes state) say, with the
/// names in the files and with all names taken away. The same figures stand in docs/proposals.md.
/// </summary>
public sealed class ProposalTests
{
    private static readonly Dictionary<string, (StageRole Role, string Net)[]> s_facts = new()
    {
        ["bitaxe-ultra"] =
        [
            (StageRole.Feed, "/Power/VIN"), (StageRole.Input, "/5V"), (StageRole.SwitchNode, "/Power/SW"), (StageRole.Output, "/VDD"), (StageRole.Return, "GND"),
        ],
        ["thunderscope-r53"] =
        [
            (StageRole.Input, "+VUSB"),
            (StageRole.SwitchNode, "Net-(U20-SW)"), (StageRole.Output, "/FPGA/FPGA Voltage Regs/+1V0_R"),
            (StageRole.SwitchNode, "Net-(U8-SW)"), (StageRole.Output, "/FPGA/FPGA Voltage Regs/+3V3_R"),
            (StageRole.SwitchNode, "Net-(U21-SW)"), (StageRole.Output, "/FPGA/FPGA Voltage Regs/+1V8_R"),
            (StageRole.SwitchNode, "Net-(U23-SW)"), (StageRole.Output, "/FPGA/FPGA Voltage Regs/+2V5_R"),
            (StageRole.SwitchNode, "Net-(U17-SW)"), (StageRole.Input, "/TS-USB4 Components/+VUSB_R"), (StageRole.Output, "+5V3"),
            (StageRole.Return, "GND"),
        ],
        ["esp32-poe-b2"] =
        [
            (StageRole.Input, "Net-(C6-Pad1)"), (StageRole.SwitchNode, "Net-(L2-Pad1)"), (StageRole.Output, "+3V3"), (StageRole.Return, "GND"),
        ],
        ["picopd-v12"] = [],
        ["eez-aux-ps"] = [],
    };

    /// <summary>Facts proposed with medium or high confidence, proposals of that confidence that are no fact, facts not proposed.</summary>
    [Theory]
    [InlineData("bitaxe-ultra", false, 5, 0, 0)]
    [InlineData("bitaxe-ultra", true, 3, 0, 2)]
    [InlineData("thunderscope-r53", false, 11, 2, 2)]
    [InlineData("esp32-poe-b2", false, 4, 2, 0)]
    [InlineData("picopd-v12", false, 0, 0, 0)]
    [InlineData("eez-aux-ps", false, 0, 0, 0)]
    public void ProposalsAreRightWrongOrUndecidedAsDocumented(string board, bool isStripped, int right, int wrong, int undecided)
    {
        NetList nets = Analysis.Survey(SharedData.Require("boards-open", board)).Board.Nets.ShouldNotBeNull();
        PathProposal path = PowerPathFinder.Propose(isStripped ? WithoutPins(nets) : nets);

        HashSet<(StageRole, string)> said = [.. path.Stages.Where(stage => stage.Confidence >= Confidence.Medium && stage.Role != StageRole.HighSideSupply)
            .Select(stage => (stage.Role, stage.Net.Name))];
        (StageRole, string)[] facts = s_facts[board];
        string[] wrongOnes = [.. said.Where(proposal => !facts.Contains(proposal)).Select(proposal => proposal.ToString()).Order(StringComparer.Ordinal)];
        string[] missing = [.. facts.Where(fact => !said.Contains(fact)).Select(fact => fact.ToString())];

        (facts.Length - missing.Length, wrongOnes.Length, missing.Length).ShouldBe((right, wrong, undecided),
            $"wrong: {string.Join(", ", wrongOnes)}; undecided: {string.Join(", ", missing)}");
    }

    /// <summary>The same copper as files without attributes would give it; net names stay, for the comparison only: no proposal reads them.</summary>
    private static NetList WithoutPins(NetList nets) =>
        nets with { Nets = [.. nets.Nets.Select(net => net with { Pads = [.. net.Pads.Select(pad => pad with { Pin = null })] })] };
}
