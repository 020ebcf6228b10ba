using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Quantities;

/// <summary>English: one takes the singular, none and several the plural.</summary>
public class CountedTests
{
    [Theory]
    [InlineData(0, "0 holes")]
    [InlineData(1, "1 hole")]
    [InlineData(1234, "1234 holes")]
    public void OneIsSingular(int count, string expected) => Counted.Of(count, "hole").ShouldBe(expected);

    [Fact]
    public void APhraseBringsItsOwnPlural()
    {
        Counted.Of(1, "part has", "parts have").ShouldBe("1 part has");
        Counted.Of(2, "part has", "parts have").ShouldBe("2 parts have");
    }
}
