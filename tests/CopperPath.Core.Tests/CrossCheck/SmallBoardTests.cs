namespace CopperPath.Core.Tests.CrossCheck;

/// <summary>
/// Small boards of two and four layers, with and without attributes, each spoiled in one way that every single file
/// survives: the set tells, in its words, and such a board never passes.
/// </summary>
public sealed class SmallBoardTests
{
    public static TheoryData<int, bool> Boards => new() { { 2, true }, { 2, false }, { 4, true }, { 4, false } };

    public static TheoryData<int, bool, string, string> Mixtures()
    {
        (string Spoiled, string Words)[] common =
        [
            ("top mirrored", "SET002|mirrored left to right"),
            ("bottom mirrored", "SET002|mirrored left to right"),
            ("top by 50 mm", "SET002|50.00 mm right"),
            ("bottom by 0.5 mm", "SET002|0.50 mm right"),
            ("bottom by 1.02", "SET002|scaled by 1.02"),
            ("bottom by 25.4", "SET002|scaled by 25.4"),
            ("bottom by 10", "SET002|scaled by 10"),
            ("drills by 0.2 mm", "SET001|0.20 mm right of 28 of 28 pads"),
            ("top copied over bottom", "SET0"),
            ("outline short", "SET022|outside the board outline"),
            ("outline open", "SET021|does not close"),
            ("outline by 10", "SET023|around copper of"),
            ("outline absent", "SET020|no board outline"),
            ("bottom missing", ""),
            ("drills missing", "SET006|lands made for holes"),
            ("bottom emptied", "SET011|no copper at all on layer"),
            ("two in three holes lost", "SET006|lands made for holes without one"),
            ("drills unknown", "SET006|lands made for holes"),
            ("mask of top by 0.5 mm", "SET030|0.50 mm left"),
            ("mask of top mirrored", "SET030|mirrored left to right"),
        ];
        (string Spoiled, string Words)[] four =
        [
            ("layer 2 mirrored", "SET002|mirrored left to right"),
            ("layer 3 by 0.5 mm", "SET002|0.50 mm right"),
            ("layer 2 by 1.02", "SET002|scaled by 1.02"),
            ("layer 2 copied over 3", "SET010|vias lead nowhere"),
            ("top copied over 3", "SET010|16 pads without hole on both"),
            ("layer 3 emptied", "SET011|no copper at all on layer 3"),
            ("inner layers missing", ""),
        ];
        TheoryData<int, bool, string, string> data = [];
        foreach ((int layers, bool isDeclared) in new[] { (2, true), (2, false), (4, true), (4, false) })
        {
            foreach ((string spoiled, string words) in layers == 4 ? [.. common, .. four] : common)
            {
                data.Add(layers, isDeclared, spoiled, words);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Boards))]
    public void ASoundBoardIsInNoDoubt(int layers, bool isDeclared)
    {
        Board board = SpoiledSet.Rebuilt(new SmallBoard(layers, isDeclared).Files);

        board.CopperIsUncertain.ShouldBeFalse(SpoiledSet.Doubts(board));
        SpoiledSet.Remarks(board).ShouldBeEmpty();
    }

    [Theory]
    [MemberData(nameof(Mixtures))]
    public void ASpoiledBoardNeverPassesAndTheRemarkSaysWhy(int layers, bool isDeclared, string spoiled, string words)
    {
        SmallBoard board = new(layers, isDeclared);
        Spoil(board, spoiled, layers, isDeclared);
        string doubts = SpoiledSet.Doubts(SpoiledSet.Rebuilt(board.Files));

        doubts.ShouldNotBeEmpty();
        foreach (string word in words.Split('|'))
        {
            doubts.ShouldContain(word);
        }
    }

    private static void Spoil(SmallBoard board, string how, int layers, bool isDeclared)
    {
        string bottom = board.CopperName(layers), top = board.CopperName(1);
        string target = how.StartsWith("top", StringComparison.Ordinal) ? top : how.StartsWith("bottom", StringComparison.Ordinal) ? bottom
            : how.StartsWith("layer 2", StringComparison.Ordinal) ? board.CopperName(2) : how.StartsWith("layer 3", StringComparison.Ordinal) ? board.CopperName(3)
            : how.StartsWith("mask", StringComparison.Ordinal) ? board.MaskTopName : how.StartsWith("outline", StringComparison.Ordinal) ? board.ProfileName : board.DrillName;
        string text = board.Files.GetValueOrDefault(target, "");
        switch (how[how.IndexOf(' ', StringComparison.Ordinal)..].Replace(" 2 ", " ", StringComparison.Ordinal).Replace(" 3 ", " ", StringComparison.Ordinal).Replace(" of top", "", StringComparison.Ordinal).Trim())
        {
            case "mirrored":
                board.Files[target] = Spoiling.Gerber(text, sx: -1, dx: 60);
                break;
            case "by 50 mm":
                board.Files[target] = Spoiling.Gerber(text, dx: 50);
                break;
            case "by 0.5 mm":
                board.Files[target] = Spoiling.Gerber(text, dx: 0.5);
                break;
            case "by 1.02" or "by 25.4" or "by 10":
                double scale = double.Parse(how[(how.LastIndexOf(' ') + 1)..], System.Globalization.CultureInfo.InvariantCulture);
                board.Files[target] = Spoiling.Gerber(text, scale, scale);
                break;
            case "by 0.2 mm":
                board.Files[target] = Spoiling.Drill(text, dx: 0.2);
                break;
            case "copied over bottom":
                Copy(top, bottom);
                break;
            case "copied over":
            case "copied over 3":
                Copy(target, board.CopperName(3));
                break;
            case "short":
                board.Files[target] = text.Replace("X60000000", "X40000000", StringComparison.Ordinal);
                break;
            case "open":
                board.Files[target] = text.Replace("X0Y0D01*\n", "", StringComparison.Ordinal);
                break;
            case "layers missing":
                board.Files.Remove(board.CopperName(2));
                board.Files.Remove(board.CopperName(3));
                break;
            case "absent" or "missing":
                board.Files.Remove(target);
                break;
            case "emptied":
                board.Files[target] = Spoiling.Emptied(text);
                break;
            case "in three holes lost":
                board.Files[target] = Spoiling.WithoutHolesFrom(text, 9);
                break;
            case "unknown":
                board.Files[target] = text.Replace("M48\n", "", StringComparison.Ordinal).Replace("T", "tool ", StringComparison.Ordinal);
                break;
            default:
                throw new ArgumentException(how, nameof(how));
        }

        void Copy(string from, string to)
        {
            // The copy keeps the declaration of the file it took the place of: else two files claim one layer.
            string[] copied = board.Files[from].Split('\n');
            if (isDeclared)
            {
                copied[0] = board.Files[to].Split('\n')[0];
            }

            board.Files[to] = string.Join('\n', copied);
        }
    }
}
