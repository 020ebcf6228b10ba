using System.Diagnostics;
using System.Globalization;
using System.Text;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>A few bytes that ask for very much end in a refusal, soon.</summary>
public sealed class GerberLimitsTests
{
    /// <summary>A second or two, however crowded the machine: without its bound each of these would take hours.</summary>
    private static readonly TimeSpan Soon = TimeSpan.FromMinutes(5);

    [Fact]
    public void BlocksThatDoubleThirtyTimesAreRefused()
    {
        var text = new StringBuilder(GerberText.Head + "%ADD10C,1*%\n%ABD20*%D10*X0Y0D03*X1Y0D03*%AB*%\n");
        for (int code = 21; code < 51; code++)
        {
            text.Append(CultureInfo.InvariantCulture,
                $"%ABD{code}*%D{code - 1}*X0Y0D03*X1Y0D03*%AB*%\n");
        }

        ShouldBeRefusedSoon(text + "D50*X0Y0D03*M02*");
    }

    [Fact]
    public void BlocksNestedThirtyThreeDeepAreRefused()
    {
        string opened = string.Concat(Enumerable.Range(20, 33).Select(code =>
            string.Create(CultureInfo.InvariantCulture, $"%ABD{code}*%\n")));
        ShouldBeRefusedSoon(GerberText.Head + opened + string.Concat(Enumerable.Repeat("%AB*%", 33)) + "M02*");
    }

    /// <summary>A chain as long as this would be followed by as many calls within each other.</summary>
    [Fact]
    public void ALongChainOfBlocksIsRefused()
    {
        var text = new StringBuilder(GerberText.Head + "%ADD10C,1*%\n%ABD20*%D10*X0Y0D03*%AB*%\n");
        for (int code = 21; code < 100_000; code++)
        {
            text.Append(CultureInfo.InvariantCulture, $"%ABD{code}*%D{code - 1}*X0Y0D03*%AB*%\n");
        }

        GerberReading reading = ShouldBeRefusedSoon(text + "M02*");
        reading.Diagnostics[0].ToString().ShouldBe(
            "layer.gbr:37:13: error GBR062: found blocks nested more than 32 deep; expected at most 32");
    }

    /// <summary>Each of 31 levels flashes the one below twice, turned: without a bound 2^31 paintings of nothing.</summary>
    [Fact]
    public void TurnedBlocksOfNothingAreSoonDone()
    {
        var text = new StringBuilder(GerberText.Head + "%ABD20*%%AB*%\n");
        for (int code = 21; code < 51; code++)
        {
            text.Append(CultureInfo.InvariantCulture, $"%ABD{code}*%D{code - 1}*%LR{code}*%X0Y0D03*%LR0*%X1Y0D03*%AB*%\n");
        }

        var clock = Stopwatch.StartNew();
        GerberText.Read(text + "D50*X0Y0D03*M02*").Artwork.ShouldNotBeNull().Objects.ShouldBeEmpty();
        clock.Elapsed.ShouldBeLessThan(Soon);
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
        clock.Elapsed.ShouldBeLessThan(Soon);
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

    [Fact]
    public void MacrosOfMegabytesAreRefused()
    {
        string outline = "4,1,200000," + string.Concat(Enumerable.Repeat("0,1,1,0,", 200_000)) + "0,0,0*";
        string macros = string.Concat(Enumerable.Range(0, 4).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $"%AMM{i}*{outline}%\n")));
        GerberReading reading = ShouldBeRefusedSoon(GerberText.Head + macros + "M02*");
        reading.Diagnostics[0].ToString().ShouldBe(
            "layer.gbr:5:2: error GBR062: found more than 4194304 characters of macros; expected at most 4194304");
    }

    [Fact]
    public void AMacroEvaluatedWithoutEndIsRefused()
    {
        string sum = string.Concat(Enumerable.Repeat("+$1", 500_000));
        string apertures = string.Concat(Enumerable.Range(10, 100_000).Select(code =>
            string.Create(CultureInfo.InvariantCulture, $"%ADD{code}M,0*%\n")));
        GerberReading reading = ShouldBeRefusedSoon(GerberText.Head + "%AMM*1,1,1" + sum + ",0,0*%\n" + apertures + "M02*");
        reading.Diagnostics[0].ToString().ShouldBe("layer.gbr:23:2: error GBR062: "
            + "found more than 20000000 numbers and operators to evaluate in macros; expected at most 20000000");
    }

    [Fact]
    public void AnEndlessListOfAperturesIsRefused()
    {
        string apertures = string.Concat(Enumerable.Range(10, 100_001).Select(code =>
            string.Create(CultureInfo.InvariantCulture, $"%ADD{code}C,1*%\n")));
        GerberReading reading = ShouldBeRefusedSoon(GerberText.Head + apertures + "M02*");
        reading.Diagnostics[0].ToString().ShouldBe(
            "layer.gbr:100003:2: error GBR062: found more than 100000 apertures; expected at most 100000");
    }

    /// <summary>Two combs that cross each other everywhere: 700 teeth by 700 teeth make half a million crossings.</summary>
    [Fact]
    public void EntangledExposuresAreRefused()
    {
        GerberReading reading = GerberText.Read(
            GerberText.Head + "%AMM*" + Comb(exposure: 1, upright: false) + Comb(exposure: 0, upright: true)
            + "%\n%ADD10M*%\nD10*\nX0Y0D03*\nM02*");
        reading.Artwork.ShouldBeNull();
        reading.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "layer.gbr:6:1: error GBR037: found a macro with exposure off whose outlines are too entangled; "
            + "expected at most 10000 edges, of which 200000 pairs lie near each other");
    }

    [Theory]
    [InlineData("X100000000Y-100000000D03*", true)]
    [InlineData("X100000001D03*", false)]
    [InlineData("X-100000001D03*", false)]
    public void TenMetresAreTheEdge(string flash, bool fits) => (GerberText.Read(
        GerberText.Head + "%ADD10C,1*%\nD10*\nX0Y0D02*\n" + flash + "M02*").Artwork is not null).ShouldBe(fits);

    [Fact]
    public void CopiesThatLeaveTenMetresAreRefused() => GerberText.Read(
        GerberText.Head + "%ADD10C,1*%\nD10*\n%SRX3Y1I9000J0*%\nX0Y0D03*\n%SR*%\nM02*")
        .Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "layer.gbr:5:2: error GBR015: found an object beyond 10 m; expected objects within 10 m");

    /// <summary>Ten thousand arcs of 5 m radius in one contour: thirty million vertices.</summary>
    [Fact]
    public void AContourOfEndlessArcsIsRefused()
    {
        var text = new StringBuilder(GerberText.Head + "G75*\nG36*\nX50000000Y0D02*\nG03*\n");
        for (int i = 0; i < 5_000; i++)
        {
            text.Append("X-50000000Y0I-50000000J0D01*\nX50000000Y0I50000000J0D01*\n");
        }

        ShouldBeRefusedSoon(text + "G37*\nM02*", new GerberReadOptions { MaximumVertices = 1_000_000 });
    }

    private static string Comb(int exposure, bool upright)
    {
        const int teeth = 700;
        var comb = new StringBuilder();
        comb.Append(CultureInfo.InvariantCulture, $"4,{exposure},{2 * teeth}");
        for (int i = 0; i <= 2 * teeth; i++)
        {
            int along = i % (2 * teeth);
            double across = (along + 1) / 2 % 2 == 0 ? 0 : 1;
            double forward = along / (2.0 * teeth);
            (double x, double y) = upright ? (forward, across) : (across, forward);
            comb.Append(CultureInfo.InvariantCulture, $",{x:0.######},{y:0.######}");
        }

        return comb.Append(",0*").ToString();
    }

    private static GerberReading ShouldBeRefusedSoon(string text, GerberReadOptions? options = null)
    {
        var clock = Stopwatch.StartNew();
        GerberReading reading = GerberText.Read(text, options);
        reading.Artwork.ShouldBeNull();
        reading.Diagnostics.ShouldContain(d => d.Code == GerberCode.TooMuch);
        clock.Elapsed.ShouldBeLessThan(Soon);
        return reading;
    }
}
