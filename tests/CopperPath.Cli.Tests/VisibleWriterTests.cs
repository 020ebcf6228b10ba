using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests;

/// <summary>The streams of the program show whatever is written to them.</summary>
public sealed class VisibleWriterTests
{
    [Fact]
    public void OneWriteLineIsOneLineWhateverItHolds()
    {
        string[] names = [.. HostileText.Names(seed: 6, count: 1_000, withHalfPairs: true)];
        using StringWriter caught = new() { NewLine = "\n" };
        Terminal terminal = new(caught, TextWriter.Null, IsErrorRedirected: true);
        foreach (string name in names)
        {
            terminal.Out.Write(name);
            terminal.Out.Write(name.ToCharArray());
            terminal.Out.Write("{0}", name);
            terminal.Out.WriteLine(name);
        }

        string text = caught.ToString();
        HostileText.ActingIn(text, allowed: "\n").ShouldBeEmpty();
        text.Count(c => c == '\n').ShouldBe(names.Length);
    }

    [Fact]
    public void ProgressWipesItsOwnLineAndNothingElse()
    {
        using StringWriter caught = new();
        Terminal terminal = new(TextWriter.Null, caught, IsErrorRedirected: false);

        terminal.Progress!("Reading \u001b[2J");
        terminal.EndProgress();

        caught.ToString().ShouldBe("\r\u001b[KReading \\u{1B}[2J ...\r\u001b[K");
    }

    [Fact]
    public void NoLineIsEndless()
    {
        using StringWriter caught = new();
        new Terminal(caught, TextWriter.Null, IsErrorRedirected: true).Out.WriteLine(new string('x', 4_000_000));

        caught.ToString().Length.ShouldBeLessThan(10_000);
    }
}
