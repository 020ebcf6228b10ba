using CommandLine;
using CommandLine.Text;
using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Commands;

[Verb("check", HelpText = "Review a board against a brief: currents, drop, capacity, findings, pictures.")]
public sealed class CheckOptions
{
    [Value(0, MetaName = "BRIEF", Required = true, HelpText = "Review briefs (YAML), judged one after the other; the exit code is that of the gravest verdict.")]
    public IEnumerable<string> Briefs { get; set; } = [];

    [Option('o', "output", MetaValue = "FOLDER",
        HelpText = "Folder of the report; an earlier report in it is replaced whole. Default: copperpath-report/NAME beside the brief. With several briefs, each gets a folder of its name inside.")]
    public string? Output { get; set; }

    [Option('p', "pictures", MetaValue = "FORMATS", Separator = ',',
        HelpText = "Formats of the review pictures, parted by commas: png (default), svg, pdf.")]
    public IEnumerable<PictureFormat> Pictures { get; set; } = [];

    /// <summary>The formats asked for, each once, or PNG where none was.</summary>
    internal IReadOnlyList<PictureFormat> PictureFormats => Pictures.Any() ? [.. Pictures.Distinct()] : [PictureFormat.Png];

    [Option('w', "picture-width", MetaValue = "PIXELS", Default = 1800, HelpText = "Width of the review pictures, 600 to 8000.")]
    public int PictureWidthPx { get; set; } = 1800;

    [Option("picture-theme", MetaValue = "THEME", Default = OverlayTheme.Light, HelpText = "Ground of the review pictures: light (default) or dark.")]
    public OverlayTheme PictureTheme { get; set; }

    [Option('t', "timings", HelpText = "Say how long each stage took.")]
    public bool Timings { get; set; }

    [Option('q', "quiet", HelpText = "Say the verdict and errors only; the files are written as ever.")]
    public bool Quiet { get; set; }

    [Option('v', "verbose", HelpText = "Also list notes about the input files.")]
    public bool Verbose { get; set; }

    [Usage(ApplicationAlias = "copperpath")]
    public static IEnumerable<Example> Examples =>
        [new("Review the demo board, revision A", new CheckOptions { Briefs = ["boards/furrow-compute/revision-a.yaml"] })];
}
