using CopperPath.Core.Tests.Gallery;
using CopperPath.Diagnostics;
using CopperPath.OutsideText;

namespace CopperPath.Core.Tests.OutsideText;

/// <summary>What comes from outside is seen by people and acts on nothing.</summary>
public sealed class VisibleTextTests
{
    [Theory]
    [InlineData("VOUT_1V0")]
    [InlineData("+12V, 20 µm, 1.28 mΩ, −3 °C, 5 ²")]
    [InlineData("漢字 שלום naïve é 😀\u00a0…")]
    [InlineData("")]
    public void WhatIsSeenStaysAsItIs(string text) => VisibleText.Of(text).ShouldBe(text);

    [Theory]
    [InlineData("\u001b[2J", "\\u{1B}[2J")]
    [InlineData("a\nVerdict", "a\\u{A}Verdict")]
    [InlineData("a\u202eb", "a\\u{202E}b")]
    [InlineData("\0", "\\u{0}")]
    [InlineData("\u009b", "\\u{9B}")]
    [InlineData("\u2028", "\\u{2028}")]
    [InlineData("\u200b", "\\u{200B}")]
    [InlineData("\ufeff", "\\u{FEFF}")]
    [InlineData("\ufffe", "\\u{FFFE}")]
    [InlineData("\u3164", "\\u{3164}")]
    [InlineData("\U000E0041", "\\u{E0041}")]
    public void WhatActsIsWrittenOut(string text, string seen) => VisibleText.Of(text).ShouldBe(seen);

    [Fact]
    public void HalfASurrogatePairIsWrittenOut()
    {
        VisibleText.Of("a" + (char)0xD83D + "b").ShouldBe("a\\u{D83D}b");
        VisibleText.Of("" + (char)0xDE00 + (char)0xD83D).ShouldBe("\\u{DE00}\\u{D83D}");
    }

    [Fact]
    public void NothingThatActsIsLeftOfAnyText()
    {
        foreach (string name in HostileText.Names(seed: 1, count: 2_000, withHalfPairs: true))
        {
            string seen = VisibleText.Of(name);
            HostileText.ActingIn(seen).ShouldBeEmpty();
            VisibleText.Of(seen).ShouldBe(seen);
            HostileText.ActingIn(VisibleText.OfLines(name).ReplaceLineEndings("\n"), allowed: "\n\t").ShouldBeEmpty();
        }
    }

    [Fact]
    public void TheOracleKnowsWhatActs()
    {
        foreach (char direction in HostileText.Directions)
        {
            HostileText.ActingIn($"a{direction}b").ShouldHaveSingleItem();
        }

        HostileText.ActingIn("a\u001bb\0\n" + (char)0xD800).Count.ShouldBe(4);
    }

    [Fact]
    public void ALongTextIsCutWithAMarkAndNeverInsideAPair()
    {
        VisibleText.Of(new string('x', 12), 10).ShouldBe("xxxxxxxxxx… (2 more characters)");
        VisibleText.Of("xxxxxxxxx😀", 10).ShouldBe("xxxxxxxxx… (2 more characters)");
        VisibleText.Of(new string('x', 4_000_000)).Length.ShouldBeLessThan(1_100);
    }

    [Fact]
    public void ARemarkShowsWhatItQuotes()
    {
        Diagnostic diagnostic = new("GBR001", Severity.Error, new SourcePosition("a\u001b[2J.gbr", 2, 3), "the net 'x\nVerdict: y'", "a name\u202e");

        diagnostic.ToString().ShouldBe("a\\u{1B}[2J.gbr:2:3: error GBR001: found the net 'x\\u{A}Verdict: y'; expected a name\\u{202E}");
    }
}
