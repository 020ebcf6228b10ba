using System.Runtime.CompilerServices;
using System.Text;
using CopperPath.OutsideText;

namespace CopperPath.Cli.Report.Html;

/// <summary>
/// HTML written as an interpolated string: the literal parts are markup, every inserted text is made visible and escaped,
/// and markup inserted into markup stays what it is.
/// </summary>
[InterpolatedStringHandler]
internal sealed class Markup(int literalLength, int formattedCount)
{
    private readonly StringBuilder _text = new(literalLength + (16 * formattedCount));

    public static Markup Nothing { get; } = new(0, 0);

    /// <summary>Content of a script or style element, which HTML takes as it stands.</summary>
    public static Markup Raw(string text)
    {
        Markup markup = new(text.Length, 0);
        markup._text.Append(text);
        return markup;
    }

    public void AppendLiteral(string markup) => _text.Append(markup);

    public void AppendFormatted(string? text)
    {
        foreach (char c in VisibleText.OfLines(text ?? ""))
        {
            _ = c switch
            {
                '&' => _text.Append("&amp;"),
                '<' => _text.Append("&lt;"),
                '>' => _text.Append("&gt;"),
                '"' => _text.Append("&quot;"),
                _ => _text.Append(c),
            };
        }
    }

    public void AppendFormatted(char character) => AppendFormatted(character.ToString());

    public void AppendFormatted(int number) => _text.Append(FormattableString.Invariant($"{number}"));

    public void AppendFormatted(Markup markup) => _text.Append(markup._text);

    public void AppendFormatted(IEnumerable<Markup> parts)
    {
        foreach (Markup part in parts)
        {
            _text.Append(part._text);
        }
    }

    public override string ToString() => _text.ToString();
}
