using System.Text;
using CopperPath.OutsideText;

namespace CopperPath.Cli;

/// <summary>
/// A stream that people watch. Whatever is written to it is made visible, line breaks inside a text too: only
/// <c>WriteLine</c> ends a line, so that no name in a file can forge one, colour it or wipe it. In a window, sentences wider than
/// it are broken between words.
/// </summary>
/// <param name="inner">Where to.</param>
/// <param name="width">Characters in a line of the window, or null where nobody watches: lines then stay whole for other programs.</param>
internal sealed class VisibleWriter(TextWriter inner, int? width = null) : TextWriter
{
    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => Write(value.ToString());

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(ReadOnlySpan<char> buffer) => Write(buffer.ToString());

    public override void Write(string? value) => inner.Write(VisibleText.Of(value ?? "", VisibleText.MostOfSentence));

    public override void WriteLine() => inner.WriteLine();

    public override void WriteLine(string? value)
    {
        foreach (string line in BrokenLines.Of(VisibleText.Of(value ?? "", VisibleText.MostOfSentence), width ?? int.MaxValue))
        {
            inner.WriteLine(line);
        }
    }

    public override void Flush() => inner.Flush();
}
