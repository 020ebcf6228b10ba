using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Report;

/// <summary>A two-layer board with a neck and a via that are too small, checked once into a folder: the files of a whole report.</summary>
public sealed class ReviewedNeck : IDisposable
{
    private readonly SyntheticBoard _board = new(2);

    public ReviewedNeck()
    {
        _board.Draw(1, "%TO.N,FEED*%").Rectangle(1, 0, 0, 20, 10).Rectangle(1, 20, 4.5, 25, 5.5).Rectangle(1, 25, 0, 40, 10);
        _board.Draw(2, "%TO.N,FEED*%").Rectangle(2, 30, 0, 60, 10).PlatedSlot(35, 5, 35, 5, 0.3);
        Brief = _board.WriteBrief("""
              - name: Feed, "raw"
                net: FEED
                terminals:
                  - { name: connector, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 10 mm] }, enters: 12 A }
                  - { name: load, rectangle: { layer: bottom, from: [58 mm, 0 mm], to: [60 mm, 10 mm] }, leaves: 12 A }
            """);
        File.WriteAllText(Brief, File.ReadAllText(Brief).Replace("rise: 200 K", "rise: 20 K", StringComparison.Ordinal));
        Folder = Path.Combine(_board.Folder, "out");
        ExitCode = CommandRun.Of("check", Brief, "--output", Folder).ExitCode;
    }

    public string Brief { get; }

    public string Folder { get; }

    public int ExitCode { get; }

    public string Text(string file) => File.ReadAllText(Path.Combine(Folder, file));

    public void Dispose() => _board.Dispose();
}
