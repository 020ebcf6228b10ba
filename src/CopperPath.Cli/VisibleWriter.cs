using System.Text;
using CopperPath.OutsideText;

namespace CopperPath.Cli;

/// <summary>
/// A stream that people watch. Whatever is written to it is made visible, line breaks inside a text too: only
/// <c>WriteLine</c> ends a line, so that no name in a file can forge one, colour it or wipe it.
/// </summary>
internal sealed class VisibleWriter(TextWriter inner) : TextWriter
{
    public override Encoding Encoding => inner.Encoding;

    public override void Write(char value) => Write(value.ToString());

    public override void Write(char[] buffer, int index, int count) => Write(new string(buffer, index, count));

    public override void Write(ReadOnlySpan<char> buffer) => Write(buffer.ToString());

    public override void Write(string? value) => inner.Write(VisibleText.Of(value ?? "", VisibleText.MostOfSentence));

    public override void WriteLine() => inner.WriteLine();

    public override void WriteLine(string? value) => inner.WriteLine(VisibleText.Of(value ?? "", VisibleText.MostOfSentence));

    public override void Flush() => inner.Flush();
}
