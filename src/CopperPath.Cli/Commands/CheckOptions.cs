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

    [Option('p', "pictures", MetaValue = "FORMATS",
        HelpText = "Formats of the review pictures, parted by commas: png (default), svg, pdf.")]
    public string? Pictures { get; set; }

    [Option('w', "picture-width", MetaValue = "PIXELS", HelpText = "Width of the review pictures, 600 to 8000; 1800 unless said.")]
    public string? PictureWidth { get; set; }

    [Option("picture-theme", MetaValue = "THEME", HelpText = "Ground of the review pictures: light (default) or dark.")]
    public string? PictureTheme { get; set; }

    [Option("tables", HelpText = "Also print the tables: stretches, ranges, converters; the files have them in any case.")]
    public bool Tables { get; set; }

    [Option('t', "timings", HelpText = "Say how long each stage took.")]
    public bool Timings { get; set; }

    [Option('q', "quiet", HelpText = "Say the verdict and errors only; the files are written as ever.")]
    public bool Quiet { get; set; }

    [Option('v', "verbose", HelpText = "Also list the assumptions, and notes about the input files.")]
    public bool Verbose { get; set; }

    /// <summary>The formats asked for, each once, or PNG where none was.</summary>
    internal IReadOnlyList<PictureFormat> PictureFormats => OptionValue.Words<PictureFormat>(Pictures ?? nameof(PictureFormat.Png));

    internal int PictureWidthPx => OptionValue.Number(PictureWidth, 1800);

    internal OverlayTheme Theme => OptionValue.Words<OverlayTheme>(PictureTheme) is [var theme, ..] ? theme : OverlayTheme.Light;

    /// <summary>Null, or one line on the first value that can not be used.</summary>
    internal string? Refusal =>
        OptionValue.WordRefusal<PictureFormat>("--pictures", Pictures)
        ?? OptionValue.NumberRefusal("--picture-width", PictureWidth, OverlayScene.MinimumWidthPx, OverlayScene.MaximumWidthPx, "pixels")
        ?? OptionValue.WordRefusal<OverlayTheme>("--picture-theme", PictureTheme);

    [Usage(ApplicationAlias = "copperpath")]
    public static IEnumerable<Example> Examples =>
        [new("Review the demo board, revision A", new CheckOptions { Briefs = ["boards/furrow-compute/revision-a.yaml"] })];
}
