using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Output;

/// <summary>A bar of copper that passes its review, with a folder for the report.</summary>
internal sealed class SmallReview : IDisposable
{
    private readonly SyntheticBoard _board = new(1);

    public SmallReview()
    {
        Brief = _board.Draw(1, "%TO.N,BAR*%").Rectangle(1, 0, 0, 50, 10).WriteBrief("""
              - name: Bar
                net: BAR
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [5 mm, 10 mm] }, enters: 1 A }
                  - { name: right, rectangle: { layer: top, from: [45 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 1 A }
            """);
        Home = Path.Combine(_board.Folder, "copperpath-report");
        Report = Path.Combine(Home, "brief");
    }

    public string Folder => _board.Folder;

    public string Brief { get; }

    /// <summary>The folder of reports beside the brief.</summary>
    public string Home { get; }

    /// <summary>Where the report goes unless told otherwise.</summary>
    public string Report { get; }

    public CommandRun Check(params string[] more) => CommandRun.Of(["check", Brief, "--quiet", .. more]);

    /// <summary>Leaves out a bracket of the brief, so that it is no YAML.</summary>
    public void BreakBrief() => File.AppendAllText(Brief, "\n}\n");

    public void Dispose() => _board.Dispose();

    /// <summary>Names and contents of all that a folder holds, one string.</summary>
    public static string Content(string folder) => string.Join('\n', Directory.EnumerateFileSystemEntries(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 })
        .Order(StringComparer.Ordinal)
        .Select(path => File.Exists(path) ? $"{Path.GetRelativePath(folder, path)} {Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(path)))}" : Path.GetRelativePath(folder, path)));

    /// <summary>Names in a folder.</summary>
    public static string[] Names(string folder) => [.. Directory.EnumerateFileSystemEntries(folder, "*", new EnumerationOptions { AttributesToSkip = 0 })
        .Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];
}
