using System.Diagnostics;
using System.Text;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>A few bytes that ask for very much end in a refusal, soon.</summary>
public sealed class GerberLimitsTests
{
    [Fact]
    public void BlocksThatDoubleThirtyTimesAreRefused()
    {
        var text = new StringBuilder(GerberText.Head + "%ADD10C,1*%\n%ABD20*%D10*X0Y0D03*X1Y0D03*%AB*%\n");
        for (int code = 21; code < 51; code++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture,
                $"%ABD{code}*%D{code - 1}*X0Y0D03*X1Y0D03*%AB*%\n");
        }

        ShouldBeRefusedSoon(text + "D50*X0Y0D03*M02*");
    }

    [Fact]
    public void BlocksNestedThirtyThreeDeepAreRefused()
    {
        string opened = string.Concat(Enumerable.Range(20, 33).Select(code =>
            string.Create(System.Globalization.CultureInfo.InvariantCulture, $"%ABD{code}*%\n")));
        ShouldBeRefusedSoon(GerberText.Head + opened + string.Concat(Enumerable.Repeat("%AB*%", 33)) + "M02*");
    }

    [Fact]
    public void RepeatedBlocksAreRefused() => ShouldBeRefusedSoon(
        GerberText.Head + "%ADD10C,1*%%ABD20*%D10*" + string.Concat(Enumerable.Repeat("X0Y0D03*", 1000))
        + "%AB*%%SRX100000Y1I1J0*%D20*X0Y0D03*%SR*%M02*");

    [Fact]
    public void VerticesAreLimited() => ShouldBeRefusedSoon(
        GerberText.Head + "%ADD10C,1*%D10*" + string.Concat(Enumerable.Repeat("X0Y0D03*", 100)) + "M02*",
        new GerberReadOptions { MaximumVertices = 1000 });

    [Fact]
    public void AnEmptyRepeatOfManyCopiesIsNothing()
    {
        var clock = Stopwatch.StartNew();
        GerberText.Read(GerberText.Head + "%SRX1000000000Y1000000000I0J0*%%SR*%M02*").Artwork.ShouldNotBeNull();
        clock.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(5));
    }

    [Fact]
    public void ParenthesesNestedDeepAreASyntaxFault()
    {
        string deep = new('(', 100_000);
        GerberReading reading = GerberText.Read(GerberText.Head + "%AMM*1,1," + deep + "1,0,0*%M02*");
        reading.Diagnostics[0].Code.ShouldBe(GerberCode.MacroSyntax);
    }

    [Fact]
    public void AMoireOfEndlessRingsIsRefused() => GerberText.Read(
        GerberText.Head + "%AMM*6,0,0,10,0.000001,0,1000000,0,0,0*%%ADD10M*%M02*")
        .Diagnostics[0].Code.ShouldBe(GerberCode.MacroParameter);

    private static void ShouldBeRefusedSoon(string text, GerberReadOptions? options = null)
    {
        var clock = Stopwatch.StartNew();
        GerberReading reading = GerberText.Read(text, options);
        reading.Artwork.ShouldBeNull();
        reading.Diagnostics.ShouldContain(d => d.Code == GerberCode.TooMuch);
        clock.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(5));
    }
}
