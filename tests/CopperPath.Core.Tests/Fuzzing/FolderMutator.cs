using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace CopperPath.Core.Tests.Fuzzing;

/// <summary>What tells of a change, if the copper is another one for it.</summary>
internal enum TellTale
{
    /// <summary>Nothing: the changed folder is as good a board as any.</summary>
    None,

    /// <summary>The other files of the folder, which contradict the changed one.</summary>
    OtherFiles,

    /// <summary>The changed file itself: its missing end, or nothing in it.</summary>
    FileItself,
}

/// <summary>A board's folder after one or two changes.</summary>
/// <param name="Kind">What was changed, in which kind of file: the same words for every case of a kind.</param>
/// <param name="TellTale">What tells of it.</param>
/// <param name="Files">The files by name.</param>
internal sealed record FolderMutation(string Kind, TellTale TellTale, SortedDictionary<string, byte[]> Files);

/// <summary>Damages, exchanges and transforms the files of a folder; each case by its number, whatever ran before.</summary>
internal sealed partial class FolderMutator(int seed)
{
    private static readonly SmallBoard[] Boards = [new(2, true), new(2, false), new(4, true), new(4, false)];

    private static readonly SortedDictionary<string, byte[]>[] Originals = [.. Boards.Select(board => board.Files())];

    /// <summary>Number of the board a case starts from, of those <see cref="BoardOf"/> knows.</summary>
    public static int BoardNumber(int number) => number % Boards.Length;

    public static SmallBoard BoardOf(int number) => Boards[BoardNumber(number)];

    public FolderMutation Make(int number)
    {
        Random random = new(unchecked((seed * 1_000_003) + number));
        SortedDictionary<string, byte[]> files = new(Originals[BoardNumber(number)], StringComparer.Ordinal);
        (string kind, TellTale tellTale) = Change(files, random);
        if (random.Next(4) == 0)
        {
            (string second, TellTale ofSecond) = Change(files, random);
            kind = string.CompareOrdinal(kind, second) <= 0 ? $"{kind}; {second}" : $"{second}; {kind}";

            // The second may overwrite what the first left in the file.
            tellTale = tellTale == TellTale.None && ofSecond == TellTale.None ? TellTale.None : TellTale.OtherFiles;
        }

        return new FolderMutation(kind, tellTale, files);
    }

    private static (string Kind, TellTale TellTale) Change(SortedDictionary<string, byte[]> files, Random random)
    {
        // Half of all changes go to the copper and its holes.
        string[] names = [.. files.Keys.Where(name => random.Next(2) == 0 || RoleOf(name) is "copper" or "plated holes")];
        string name = names.Length > 0 ? names[random.Next(names.Length)] : files.Keys.First();
        string role = RoleOf(name);
        (string change, TellTale tellTale) = random.Next(10) switch
        {
            < 3 => Damage(files, name, random),
            < 6 => Exchange(files, name, random),
            _ => Transform(files, name, random),
        };
        return ($"{role}: {change}", tellTale);
    }

    private static (string, TellTale) Damage(SortedDictionary<string, byte[]> files, string name, Random random)
    {
        byte[] bytes = files[name];
        if (bytes.Length == 0)
        {
            return ("nothing to damage", TellTale.None);
        }

        List<string> lines = [.. Encoding.Latin1.GetString(bytes).Split('\n')];
        int at = random.Next(bytes.Length);
        int line = random.Next(lines.Count);
        switch (random.Next(8))
        {
            case 0:
                files[name] = [.. bytes];
                files[name][at] = (byte)random.Next(256);
                return ("a byte changed", TellTale.None);
            case 1:
                files[name] = [.. bytes];
                for (int i = 0; i < 8; i++)
                {
                    files[name][random.Next(bytes.Length)] = (byte)"0123456789XYDGMT*%.-\n"[random.Next(21)];
                }

                return ("8 bytes changed", TellTale.None);
            case 2:
                files[name] = [.. bytes[..at], .. bytes[(at + 1)..]];
                return ("a byte lost", TellTale.None);
            case 3:
                files[name] = bytes[..at];
                return ("cut off", IfCopper(name, TellTale.FileItself));
            case 4:
                files[name] = Joined(lines[..Math.Min(line, Math.Max(0, lines.Count - 2))]);
                return ("cut off between lines", IfCopper(name, TellTale.FileItself));
            case 5:
                lines.RemoveAt(line);
                files[name] = Joined(lines);
                return ("a line lost", TellTale.None);
            case 6:
                lines.RemoveRange(line, Math.Min(lines.Count - line, 1 + random.Next(lines.Count / 2)));
                files[name] = Joined(lines);
                return ("lines lost", TellTale.None);
            default:
                lines.InsertRange(line, lines.GetRange(random.Next(lines.Count), 1));
                files[name] = Joined(lines);
                return ("a line repeated elsewhere", TellTale.None);
        }
    }

    private static (string, TellTale) Exchange(SortedDictionary<string, byte[]> files, string name, Random random)
    {
        string other = files.Keys.ElementAt(random.Next(files.Count));
        switch (random.Next(7))
        {
            case 0:
                files.Remove(name);
                return ("removed", IfCopper(name, TellTale.OtherFiles));
            case 1:
                files[name] = [];
                return ("emptied", IfCopper(name, TellTale.FileItself));
            case 2:
                files[name] = HeadOnly(files[name]);
                return ("nothing but its head", IfCopper(name, TellTale.OtherFiles));
            case 3:
                (files[name], string of) = (files[other], RoleOf(other));
                return ($"content of {(other == name ? "itself" : of)}", other == name ? TellTale.None : IfCopper(name, TellTale.OtherFiles));
            case 4:
                (files[name], files[other]) = (files[other], files[name]);
                return ($"exchanged with {(other == name ? "itself" : RoleOf(other))}", TellTale.None);
            case 5:
                Move(files, name, "part7.dat");
                return ("renamed to nothing known", TellTale.None);
            default:
                Move(files, name, Path.ChangeExtension(name, random.Next(2) == 0 ? ".txt" : ".gbr"));
                return ("renamed to .txt or .gbr", TellTale.None);
        }
    }

    private static (string, TellTale) Transform(SortedDictionary<string, byte[]> files, string name, Random random)
    {
        const double width = SmallBoard.WidthMm;
        const double height = SmallBoard.HeightMm;
        (string what, Func<double, double, (double, double)> map) = random.Next(13) switch
        {
            0 => ("mirrored about the board's middle", (x, y) => (width - x, y)),
            1 => ("mirrored about the origin", (x, y) => (-x, y)),
            2 => ("mirrored upside down", (x, y) => (x, height - y)),
            3 => ("shifted by 50 mm", (x, y) => (x + 50, y)),
            4 => ("shifted by 5 mm", (x, y) => (x, y - 5)),
            5 => ("shifted by 0.5 mm", (x, y) => (x + 0.5, y)),
            6 => ("shifted by 0.2 mm", (x, y) => (x, y + 0.2)),
            7 => ("scaled by 1.02", (x, y) => (x * 1.02, y * 1.02)),
            8 => ("scaled by 10", (x, y) => (x * 10, y * 10)),
            9 => ("scaled by 25.4", (x, y) => (x * 25.4, y * 25.4)),
            10 => ("turned by 180 degrees", (x, y) => (width - x, height - y)),
            11 => ("turned by 90 degrees", (x, y) => (height - y, x)),
            _ => ("in another unit", (Func<double, double, (double, double)>?)null!),
        };
        string text = Encoding.Latin1.GetString(files[name]);
        string changed = map is null
            ? text.Replace("%MOMM*%", "%MOIN*%", StringComparison.Ordinal).Replace("\nMETRIC\n", "\nINCH\n", StringComparison.Ordinal)
            : Mapped(text, map);
        files[name] = Encoding.Latin1.GetBytes(changed);
        return (what, IfCopper(name, TellTale.OtherFiles));
    }

    private static string Mapped(string text, Func<double, double, (double X, double Y)> map) => Place().Replace(text, place =>
    {
        bool hasPoint = place.Value.Contains('.', StringComparison.Ordinal);
        double unit = hasPoint ? 1 : 1e-6;
        if (!double.TryParse(place.Groups["x"].Value, CultureInfo.InvariantCulture, out double x)
            || !double.TryParse(place.Groups["y"].Value, CultureInfo.InvariantCulture, out double y))
        {
            return place.Value;
        }

        (x, y) = map(x * unit, y * unit);
        return hasPoint
            ? string.Create(CultureInfo.InvariantCulture, $"X{x:0.000}Y{y:0.000}")
            : string.Create(CultureInfo.InvariantCulture, $"X{Math.Round(x * 1e6):0}Y{Math.Round(y * 1e6):0}");
    });

    /// <summary>The lines before the first coordinates, tool selection or draw, and the end.</summary>
    private static byte[] HeadOnly(byte[] bytes)
    {
        string[] lines = Encoding.Latin1.GetString(bytes).Split('\n');
        int first = Array.FindIndex(lines, line => Place().IsMatch(line));
        return first < 0 ? bytes : Joined([.. lines[..first].Where(line => line is not (['T', _] or ['D', ..] or "G36*")), .. lines[^2..]]);
    }

    private static void Move(SortedDictionary<string, byte[]> files, string name, string to)
    {
        byte[] bytes = files[name];
        files.Remove(name);
        files[to] = bytes;
    }

    private static byte[] Joined(IReadOnlyList<string> lines) => Encoding.Latin1.GetBytes(string.Join('\n', lines));

    private static TellTale IfCopper(string name, TellTale tellTale) =>
        RoleOf(name) is "copper" or "plated holes" or "outline" ? tellTale : TellTale.None;

    private static string RoleOf(string name) => name switch
    {
        "board-pth.drl" => "plated holes",
        "board-npth.drl" => "unplated holes",
        "board.gko" => "outline",
        "board.gts" or "board.gbs" => "mask",
        "board.gbrjob" => "job file",
        "board.gtl" or "board.gbl" or "board.g1" or "board.g2" => "copper",
        _ => "text",
    };

    [GeneratedRegex(@"X(?<x>-?[0-9.]+)Y(?<y>-?[0-9.]+)")]
    private static partial Regex Place();
}
