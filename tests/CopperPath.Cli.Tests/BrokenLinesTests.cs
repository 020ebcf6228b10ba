namespace CopperPath.Cli.Tests;

public sealed class BrokenLinesTests
{
    private const string Sentence = "     one two three four five six seven eight nine ten eleven twelve thirteen";

    [Fact]
    public void LinesKeepTheIndentAndEveryWord()
    {
        string[] lines = [.. BrokenLines.Of(Sentence, 40)];

        lines.ShouldBe(["     one two three four five six seven", "     eight nine ten eleven twelve", "     thirteen"]);
        lines.ShouldAllBe(line => line.Length <= 40);
    }

    [Theory]
    [InlineData("")]
    [InlineData("short")]
    [InlineData("          ")]
    public void WhatFitsStaysAsItIs(string text) => BrokenLines.Of(text, 40).ShouldBe([text]);

    [Fact]
    public void AWordWiderThanTheWindowStandsAlone()
    {
        string word = new('x', 60);

        BrokenLines.Of($"  a {word} b", 40).ShouldBe(["  a", $"  {word}", "  b"]);
        BrokenLines.Of(word, 40).ShouldBe([word]);
    }

    /// <summary>Whatever the text and the window, the words come out in order and none is lost.</summary>
    [Fact]
    public void NoWordIsLostForAnyWidth()
    {
        Random random = new(7);
        for (int k = 0; k < 2000; k++)
        {
            string text = string.Join(' ', Enumerable.Range(0, random.Next(1, 40)).Select(_ => new string('w', random.Next(1, 60))));
            string indent = new(' ', random.Next(0, 8));

            string[] lines = [.. BrokenLines.Of(indent + text, random.Next(1, 120))];

            string.Join(' ', lines.Select(line => line.Trim())).ShouldBe(text);
        }
    }

    [Fact]
    public void OnlyAWindowBreaksLines()
    {
        StringWriter whole = new(), broken = new();
        new Terminal(whole, whole, true).Out.WriteLine(Sentence);
        new Terminal(broken, broken, true, 40).Out.WriteLine(Sentence);

        whole.ToString().Trim().ShouldBe(Sentence.Trim());
        broken.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries).Length.ShouldBe(3);
    }
}
