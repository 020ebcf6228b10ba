using CommandLine;
using CommandLine.Text;

namespace CopperPath.Cli.Commands;

[Verb("curve", HelpText = "Current against width for 10, 20 and 30 K on this board's layers, planes and cooling.")]
public sealed class CurveOptions
{
    [Value(0, MetaName = "BRIEF", Required = true, HelpText = "The review brief (YAML).")]
    public string Brief { get; set; } = "";

    [Value(1, Hidden = true)]
    public IEnumerable<string> Surplus { get; set; } = [];

    [Option('o', "output", MetaValue = "FOLDER",
        HelpText = "Where the plots go. Default: copperpath-report/NAME-curve beside the brief.")]
    public string? Output { get; set; }

    [Option('v', "verbose", HelpText = "Also list notes about the input files.")]
    public bool Verbose { get; set; }

    [Usage(ApplicationAlias = "copperpath")]
    public static IEnumerable<Example> Examples =>
        [new("Capacity curves of the demo board", new CurveOptions { Brief = "boards/furrow-compute/revision-b.yaml" })];
}
