using CopperPath.Reading.BoardFiles;

namespace CopperPath.Core.Tests.CrossCheck;

/// <summary>
/// The mixtures of the small boards on the demo board, both revisions with and without attributes, and on real boards.
/// The whole table is a soak; one row of each kind runs always.
/// </summary>
public sealed class LargeBoardTests(ITestOutputHelper output)
{
    private static readonly string[] Damages =
    [
        "top mirrored", "bottom mirrored", "inner mirrored", "top 50 mm", "inner 0.5 mm", "bottom 0.5 mm", "top x 1.02", "inner x 1.02", "inner x 25.4", "top x 10",
        "drills 0.2 mm", "drills missing", "drills two in three lost", "top over bottom", "bottom over top", "inner over next", "top over inner",
        "last missing", "inner missing", "inner emptied", "bottom emptied", "outline short", "outline open", "outline x 10", "outline absent",
        "mask 0.5 mm", "mask mirrored", "masks exchanged", "faces exchanged",
    ];

    /// <summary>What nothing in the files tells for certain, board and damage; docs/cross-check.md gives the reasons.</summary>
    private static readonly string[] BeyondNoticing = ["picopd-v12, outline absent", "vesc-4, inner over next"];

    [Theory]
    [InlineData("a/x2", "inner mirrored", "SET002|mirrored left to right")]
    [InlineData("b/x2", "drills 0.2 mm", "SET001|0.20 mm right of 1383 of 1383 pads")]
    [InlineData("a/bare", "inner missing", "SET007|vias that lead from copper on one layer to nothing")]
    public void TheDemoBoardSpoiledIsInDoubt(string revision, string damage, string words)
    {
        string doubts = Doubts(SpoiledSet.Read(DemoFolder(revision)), damage);

        foreach (string word in words.Split('|'))
        {
            doubts.ShouldContain(word);
        }
    }

    [Fact]
    [Trait("Category", "Soak")]
    public void EveryDamageToTheDemoBoardIsNoticed()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        string[] folders = ["a/x2", "a/bare", "b/x2", "b/bare"];

        // Its two halves are nearly alike: a mirrored mask still opens over most of its pads.
        Unnoticed(folders, DemoFolder).ShouldBe(folders.Select(folder => $"{folder}, mask mirrored"));
    }

    [Fact]
    [Trait("Category", "Soak")]
    public void DamageToRealBoardsIsNoticedButForWhatNothingTells()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        string open = SharedData.Require("boards-open");
        Unnoticed(["simplefoc-powershield", "picopd-v12", "bitaxe-ultra", "vesc-4", "ulx3s"], name => Path.Combine(open, name)).ShouldBe(BeyondNoticing);
    }

    private List<string> Unnoticed(string[] boards, Func<string, string> folderOf)
    {
        List<string> unnoticed = [];
        foreach (string name in boards)
        {
            SortedDictionary<string, string> files = SpoiledSet.Read(folderOf(name));
            foreach (string damage in Damages)
            {
                string doubts = Doubts(files, damage);
                output.WriteLine($"{name}, {damage}: {doubts}");
                if (doubts.Length == 0)
                {
                    unnoticed.Add($"{name}, {damage}");
                }
            }
        }

        return unnoticed;
    }

    private static string DemoFolder(string revision) =>
        Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", $"revision-{revision[0]}", revision[2..]);

    private static string Doubts(SortedDictionary<string, string> sound, string damage)
    {
        SortedDictionary<string, string> files = new(sound, StringComparer.Ordinal);
        if (!Spoil(files, damage))
        {
            return "not on this board";
        }

        return SpoiledSet.Doubts(SpoiledSet.Rebuilt(files));
    }

    /// <returns>False where the board has nothing to spoil in this way.</returns>
    private static bool Spoil(SortedDictionary<string, string> files, string damage)
    {
        BoardIdentification board = LayerIdentifier.Identify(new BoardSource("board",
            [.. files.Select(file => new BoardFile(file.Key, System.Text.Encoding.UTF8.GetBytes(file.Value)))], []));
        string[] copper = [.. board.Copper.Select(file => file.File.Name)];
        string[] drills = [.. board.OfRole(FileRole.Drill).Select(file => file.File.Name)];
        string? outline = board.OfRole(FileRole.Profile).FirstOrDefault()?.File.Name;
        string? mask = board.OfRole(FileRole.SolderMaskTop).FirstOrDefault()?.File.Name, below = board.OfRole(FileRole.SolderMaskBottom).FirstOrDefault()?.File.Name;
        string[] words = damage.Split(' ', 2);
        string? target = words[0] switch
        {
            "top" => copper[0],
            "bottom" => copper[^1],
            "inner" => copper.Length > 2 ? copper[1] : null,
            "outline" => outline,
            "mask" or "masks" => below is null ? null : mask,
            _ => copper[0],
        };
        if (target is null)
        {
            return false;
        }

        double middle = copper.Length == 0 ? 0 : Middle(files[copper[0]]);
        switch (words[1])
        {
            case "mirrored":
                files[target] = Spoiling.Gerber(files[target], sx: -1, dx: 2 * middle);
                break;
            case "50 mm" or "0.5 mm":
                files[target] = Spoiling.Gerber(files[target], dx: words[1] == "50 mm" ? 50 : 0.5);
                break;
            case "x 1.02" or "x 25.4" or "x 10":
                double scale = double.Parse(words[1][2..], System.Globalization.CultureInfo.InvariantCulture);
                files[target] = Spoiling.Gerber(files[target], scale, scale);
                break;
            case "0.2 mm":
                Array.ForEach(drills, drill => files[drill] = Spoiling.Drill(files[drill], dx: 0.2));
                break;
            case "missing" when words[0] == "drills":
                Array.ForEach(drills, drill => files.Remove(drill));
                break;
            case "two in three lost":
                Array.ForEach(drills, drill => files[drill] = Spoiling.WithoutHolesFrom(files[drill], files[drill].Split('\n').Count(line => line is ['X', ..]) / 3));
                break;
            case "over bottom":
                Copy(copper[0], copper[^1]);
                break;
            case "over top":
                Copy(copper[^1], copper[0]);
                break;
            case "over next":
                Copy(copper[1], copper[2]);
                break;
            case "over inner" when copper.Length > 2:
                Copy(copper[0], copper[1]);
                break;
            case "over inner":
                return false;
            case "missing" when words[0] == "last":
                files.Remove(copper[^1]);
                break;
            case "missing":
                Array.ForEach(copper[1..^1], layer => files.Remove(layer));
                break;
            case "emptied":
                files[target] = Spoiling.Emptied(files[target]);
                break;
            case "short":
                files[target] = Spoiling.Gerber(files[target], sx: 0.6);
                break;
            case "open":
                files[target] = WithoutLastStrokes(files[target]);
                break;
            case "absent":
                files.Remove(target);
                break;
            case "exchanged":
                (string one, string other) = words[0] == "masks" ? (mask!, below!) : (copper[0], copper[^1]);
                (string first, string second) = (files[one], files[other]);
                (files[one], files[other]) = (Declared(second, first), Declared(first, second));
                break;
            default:
                throw new ArgumentException(damage, nameof(damage));
        }

        return true;

        void Copy(string from, string to) => files[to] = Declared(files[from], files[to]);
    }

    /// <summary>One file's drawing under the other's declaration: else two files claim one layer, which is noticed at once.</summary>
    private static string Declared(string drawing, string declaring)
    {
        string? Of(string text) => text.Split('\n').FirstOrDefault(line => line.Contains("TF.FileFunction", StringComparison.Ordinal));
        return Of(drawing) is { } own && Of(declaring) is { } other ? drawing.Replace(own, other, StringComparison.Ordinal) : drawing;
    }

    private static string WithoutLastStrokes(string text)
    {
        string[] lines = text.Split('\n');
        int strokes = 0, half = lines.Count(IsStroke) / 2;
        return string.Join('\n', lines.Where(line => !IsStroke(line) || strokes++ < half));

        static bool IsStroke(string line) => line.TrimEnd().EndsWith("D01*", StringComparison.Ordinal);
    }

    private static double Middle(string text)
    {
        CopperPath.Geometry.BoxNm box = CopperPath.Reading.Gerber.GerberReader.Read("top", System.Text.Encoding.UTF8.GetBytes(text)).Artwork!.Bounds;
        return box.Centre.X / 1e6;
    }
}
