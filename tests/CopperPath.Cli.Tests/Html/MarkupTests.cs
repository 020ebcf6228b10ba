using CopperPath.Cli.Report.Html;

namespace CopperPath.Cli.Tests.Html;

public sealed class MarkupTests
{
    [Fact]
    public void InsertedTextIsEscapedAndInsertedMarkupIsNot()
    {
        Markup inner = $"<b>{"a<b> & \"c\""}</b>";
        Markup outer = $"<p title=\"{"\"x\""}\">{inner}{12}</p>";

        outer.ToString().ShouldBe("<p title=\"&quot;x&quot;\"><b>a&lt;b&gt; &amp; &quot;c&quot;</b>12</p>");
    }

    /// <summary>A single character is a letter of the page, not its number.</summary>
    [Fact]
    public void AnInsertedCharacterIsWrittenAndEscaped()
    {
        Markup word = $"{'B'}eyond {'<'}";

        word.ToString().ShouldBe("Beyond &lt;");
    }

    [Fact]
    public void InsertedTextIsMadeVisibleAndKeepsItsLines()
    {
        Markup page = $"<pre title=\"{"a\u202e"}\">{"one\n\ttwo\0\u001b"}</pre>";

        page.ToString().ShouldBe("<pre title=\"a\\u{202E}\">one\n\ttwo\\u{0}\\u{1B}</pre>");
    }
}
