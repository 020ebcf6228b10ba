using CommandLine;
using CommandLine.Text;
using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Commands;

[Verb("survey", HelpText = "Say what a folder of fabrication files holds, and write a brief to start from.")]
public sealed class SurveyOptions
{
    [Value(0, MetaName = "FOLDER", Required = true, HelpText = "Folders or zip archives with Gerber and drill files, told one after the other.")]
    public IEnumerable<string> Folders { get; set; } = [];

    [Option('b', "brief", MetaValue = "FILE", HelpText = "Write a starter brief to this file; it is never overwritten.")]
    public string? Brief { get; set; }

    [Option('p', "picture", MetaValue = "FILE", HelpText = "Draw the proposed power path on the board into this file, .png, .svg or .pdf by its ending; it is never overwritten.")]
    public string? Picture { get; set; }

    [Option('n', "nets", MetaValue = "COUNT", HelpText = "How many of the largest nets to list; 12 unless said.")]
    public string? Nets { get; set; }

    [Option('t', "timings", HelpText = "Say how long each stage took.")]
    public bool Timings { get; set; }

    [Option('v', "verbose", HelpText = "Also list notes about the input files.")]
    public bool Verbose { get; set; }

    internal int NetCount => OptionValue.Number(Nets, 12);

    /// <summary>Null, or one line on the first value that can not be used.</summary>
    internal string? Refusal => Brief is not null && Folders.Skip(1).Any()
        ? FormattableString.Invariant($"--brief: error CMD001: found {Folders.Count()} folders; expected one: a brief is of one board")
        : Picture is not null && Folders.Skip(1).Any()
            ? FormattableString.Invariant($"--picture: error CMD001: found {Folders.Count()} folders; expected one: a picture is of one board")
        : Picture is not null && FormatOf(Picture) is null ? $"--picture: error CMD004: found '{Path.GetFileName(Picture)}'; expected a name that ends in .png, .svg or .pdf"
        : OptionValue.NumberRefusal("--nets", Nets, 1, 1_000_000, "nets");

    /// <summary>The format a file name asks for by its ending; null where it asks for none of ours.</summary>
    internal static PictureFormat? FormatOf(string file) => OptionValue.Words<PictureFormat>(Path.GetExtension(file).TrimStart('.')) is [var format] ? format : null;

    [Usage(ApplicationAlias = "copperpath")]
    public static IEnumerable<Example> Examples =>
        [new("Survey the demo board and start a brief", new SurveyOptions { Folders = ["boards/furrow-compute/revision-a/x2"], Brief = "my-review.yaml" })];
}
