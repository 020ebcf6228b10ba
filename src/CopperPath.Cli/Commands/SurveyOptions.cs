using CommandLine;
using CommandLine.Text;

namespace CopperPath.Cli.Commands;

[Verb("survey", HelpText = "Say what a folder of fabrication files holds, and write a brief to start from.")]
public sealed class SurveyOptions
{
    [Value(0, MetaName = "FOLDER", Required = true, HelpText = "Folder or zip archive with Gerber and drill files.")]
    public string Folder { get; set; } = "";

    [Value(1, Hidden = true)]
    public IEnumerable<string> Surplus { get; set; } = [];

    [Option('b', "brief", MetaValue = "FILE", HelpText = "Write a starter brief to this file; it is never overwritten.")]
    public string? Brief { get; set; }

    [Option('n', "nets", MetaValue = "COUNT", Default = 12, HelpText = "How many of the largest nets to list.")]
    public int Nets { get; set; } = 12;

    [Option('t', "timings", HelpText = "Say how long each stage took.")]
    public bool Timings { get; set; }

    [Option('v', "verbose", HelpText = "Also list notes about the input files.")]
    public bool Verbose { get; set; }

    [Usage(ApplicationAlias = "copperpath")]
    public static IEnumerable<Example> Examples =>
        [new("Survey the demo board and start a brief", new SurveyOptions { Folder = "boards/furrow-compute/revision-a/x2", Brief = "my-review.yaml" })];
}
