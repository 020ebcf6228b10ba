using System.Globalization;
using System.Text.RegularExpressions;

namespace CopperPath.Core.Tests.CrossCheck;

/// <summary>
/// Damage to fabrication files as text: the coordinates of one Gerber or drill file scaled, mirrored and moved, and
/// nothing else. Widths and diameters stay, as when the wrong number format is declared.
/// </summary>
public static partial class Spoiling
{
    /// <summary>Coordinates of a Gerber file through x' = sx x + dx, y' = sy y + dy; dx and dy in millimetres.</summary>
    public static string Gerber(string text, double sx = 1, double sy = 1, double dx = 0, double dy = 0)
    {
        int decimals = int.Parse(Format().Match(text).Groups[1].Value, CultureInfo.InvariantCulture);
        double unit = Math.Pow(10, decimals) / (text.Contains("%MOIN", StringComparison.Ordinal) ? 25.4 : 1);
        bool isMirrored = sx * sy < 0;
        return string.Concat(Blocks().Split(text).Select(block => block is ['%', ..] || block.StartsWith("G04", StringComparison.Ordinal) ? block
            : Word().Replace(block, word =>
            {
                char letter = word.Groups[1].Value[0];
                double value = double.Parse(word.Groups[2].Value, CultureInfo.InvariantCulture);
                if (letter == 'G')
                {
                    return isMirrored && value is 2 or 3 ? $"G0{5 - (int)value}" : word.Value;
                }

                double spoilt = letter switch
                {
                    'X' => (sx * value) + (dx * unit),
                    'Y' => (sy * value) + (dy * unit),
                    'I' => sx * value,
                    _ => sy * value,
                };
                return string.Create(CultureInfo.InvariantCulture, $"{letter}{Math.Round(spoilt):0}");
            })));
    }

    /// <summary>The same for a drill file, with or without decimal points.</summary>
    public static string Drill(string text, double sx = 1, double sy = 1, double dx = 0, double dy = 0)
    {
        double unit = text.Contains("INCH", StringComparison.Ordinal) || text.Contains("M72", StringComparison.Ordinal) ? 1 / 25.4 : 1;
        (int integers, int decimals) = FileFormat().Match(text) is { Success: true } format
            ? (int.Parse(format.Groups[1].Value, CultureInfo.InvariantCulture), int.Parse(format.Groups[2].Value, CultureInfo.InvariantCulture)) : (0, 4);
        bool omitsTrailingZeros = text.Contains(",LZ", StringComparison.Ordinal);
        int body = text.IndexOf("\n%", StringComparison.Ordinal);
        return text[..body] + DrillWord().Replace(text[body..], word =>
        {
            string digits = word.Groups[2].Value;
            bool isX = word.Groups[1].Value == "X", hasPoint = digits.Contains('.', StringComparison.Ordinal);
            int width = omitsTrailingZeros ? integers + decimals : 0;
            double value = double.Parse(hasPoint ? digits : digits.PadRight(width, '0'), CultureInfo.InvariantCulture);
            double spoilt = ((isX ? sx : sy) * value) + ((isX ? dx : dy) * (hasPoint ? unit : unit * Math.Pow(10, decimals)));
            return word.Groups[1].Value + (hasPoint ? spoilt.ToString("0.000000", CultureInfo.InvariantCulture)
                : Math.Round(spoilt).ToString("0", CultureInfo.InvariantCulture).PadLeft(width, '0'));
        });
    }

    /// <summary>A drill file without the holes from one on, counted in file order.</summary>
    public static string WithoutHolesFrom(string text, int first)
    {
        int hole = 0;
        return string.Join('\n', text.Split('\n').Where(line => line is not ['X' or 'Y', ..] || hole++ < first));
    }

    /// <summary>A Gerber file without anything drawn.</summary>
    public static string Emptied(string text) =>
        string.Join('\n', text.Split('\n').Where(line => !Operation().IsMatch(line) && line.TrimEnd() is not ("G36*" or "G37*")));

    [GeneratedRegex(@"%FSLAX\d(\d)")]
    private static partial Regex Format();

    [GeneratedRegex(@"(%[^%]*%|G04[^*]*\*)")]
    private static partial Regex Blocks();

    [GeneratedRegex(@"([XYIJG])([-+]?\d+)")]
    private static partial Regex Word();

    [GeneratedRegex(@"([XY])([-+]?[\d.]+)")]
    private static partial Regex DrillWord();

    [GeneratedRegex(@"FILE_FORMAT=(\d):(\d)")]
    private static partial Regex FileFormat();

    [GeneratedRegex(@"D0?[123]\*")]
    private static partial Regex Operation();
}
