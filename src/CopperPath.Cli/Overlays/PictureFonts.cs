using System.Collections.Concurrent;
using System.Text;
using System.Text.RegularExpressions;
using CopperPath.OutsideText;
using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// The one typeface of all pictures, shipped inside the program: a machine without fonts draws the same bytes as any
/// other, and text measured for the layout is the text drawn.
/// </summary>
internal static partial class PictureFonts
{
    private static readonly Lazy<SKTypeface> Regular = new(() => Load("Inter-Regular.otf"));
    private static readonly Lazy<SKTypeface> Strong = new(() => Load("Inter-SemiBold.otf"));
    private static readonly ConcurrentDictionary<(float SizePx, bool IsStrong), SKFont> Fonts = new();

    /// <summary>Font of a size. Fonts are shared and never changed.</summary>
    public static SKFont Of(float sizePx, bool isStrong) => Fonts.GetOrAdd((sizePx, isStrong), Make);

    /// <summary>Draws a line of text; it is made visible first, as it was when it was measured.</summary>
    public static void Draw(SKCanvas canvas, string text, SKPoint baseline, SKTextAlign align, float sizePx, bool isStrong, SKColor colour)
    {
        using SKPaint paint = new() { Color = colour, IsAntialias = true };
        canvas.DrawText(VisibleText.Of(text, VisibleText.MostOfSentence), baseline, align, Of(sizePx, isStrong), paint);
    }

    /// <summary>Advance width of a line of text, pixels.</summary>
    public static float WidthPx(string text, float sizePx, bool isStrong) =>
        Of(sizePx, isStrong).MeasureText(VisibleText.Of(text, VisibleText.MostOfSentence));

    /// <summary>
    /// Breaks text into lines no wider than <paramref name="widthPx"/>: at spaces but not between a number and its unit,
    /// and inside words that are too wide by themselves, such as fingerprints. The lines are visible text.
    /// </summary>
    public static IReadOnlyList<string> Wrap(string text, float sizePx, bool isStrong, float widthPx)
    {
        List<string> lines = [];
        StringBuilder line = new();
        foreach (string word in Words(VisibleText.Of(text, VisibleText.MostOfSentence)))
        {
            string joined = line.Length == 0 ? word : $"{line} {word}";
            if (WidthPx(joined, sizePx, isStrong) <= widthPx)
            {
                line.Clear().Append(joined);
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line.ToString());
            }

            string rest = word;
            while (WidthPx(rest, sizePx, isStrong) > widthPx)
            {
                int fitting = Math.Max(1, Of(sizePx, isStrong).BreakText(rest, widthPx));
                if (fitting >= rest.Length)
                {
                    break;
                }

                lines.Add(rest[..fitting]);
                rest = rest[fitting..];
            }

            line.Clear().Append(rest);
        }

        if (line.Length > 0)
        {
            lines.Add(line.ToString());
        }

        return lines;
    }

    private static List<string> Words(string text)
    {
        List<string> words = [];
        foreach (string word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            if (words.Count > 0 && char.IsAsciiDigit(words[^1][^1]) && Unit().IsMatch(word))
            {
                words[^1] += " " + word;
            }
            else
            {
                words.Add(word);
            }
        }

        return words;
    }

    /// <summary>A unit as the pictures write it, with the marks of a sentence that may follow.</summary>
    [GeneratedRegex("^(%|K|°C|[pnµmkM]?(A|V|W|Ω|F|H|Hz|s|m)|mm²|A/mm²)[.,:;)]*$")]
    private static partial Regex Unit();

    private static SKFont Make((float SizePx, bool IsStrong) key) =>
        new(key.IsStrong ? Strong.Value : Regular.Value, key.SizePx)
        {
            Edging = SKFontEdging.Antialias,
            Hinting = SKFontHinting.None,
            Subpixel = true,
        };

    private static SKTypeface Load(string fileName)
    {
        using Stream stream = typeof(PictureFonts).Assembly.GetManifestResourceStream($"Overlays.Fonts.{fileName}")
            ?? throw new InvalidOperationException($"font {fileName} is missing from the program");
        return SKTypeface.FromStream(stream);
    }
}
