using System.Text;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>The quick way through plain operations gives what the general way gives.</summary>
public sealed class PlainOperationTests
{
    public static TheoryData<string> Names => [.. ConformanceCases.All.Select(c => c.Name)];

    /// <summary>A blank before every <c>*</c> that ends a word keeps the quick way out and means nothing.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void BlanksThatForceTheGeneralWayChangeNothing(string name)
    {
        string text = ConformanceCases.All.Single(c => c.Name == name).Text;
        ShouldReadAlike(text, WithBlanks(text));
    }

    [Theory]
    [InlineData("X0Y0D04*")]
    [InlineData("X0Y0D*")]
    [InlineData("X1234567890123456789Y0D03*")]
    [InlineData("X0Y0D003*X1D3*X2D0003*")]
    [InlineData("XD03*")]
    [InlineData("X+10Y-10D03*X--1D03*")]
    [InlineData("X99999999Y99999999D03*X100000001D03*")]
    [InlineData("X0Y0D03")]
    [InlineData("X0Y0D03%LPC*%")]
    [InlineData("D03*D03*X5D03D03*")]
    [InlineData("X1X2Y3Y4D03*I5J6X1D01*")]
    public void OddOperationsReadAlike(string words)
    {
        string text = GerberText.Head + "%ADD10C,1*%D10*G01*" + words + "M02*";
        ShouldReadAlike(text, WithBlanks(text));
    }

    private static string WithBlanks(string text)
    {
        var spaced = new StringBuilder();
        bool inPercent = false;
        foreach (char c in text)
        {
            inPercent ^= c == '%';
            spaced.Append(c == '*' && !inPercent ? " *" : c.ToString());
        }

        return spaced.ToString();
    }

    private static void ShouldReadAlike(string text, string spaced)
    {
        GerberReading quick = GerberText.Read(text);
        GerberReading general = GerberText.Read(spaced);

        quick.Diagnostics.Select(d => (d.Code, d.Severity)).ShouldBe(general.Diagnostics.Select(d => (d.Code, d.Severity)));
        (quick.Artwork is null).ShouldBe(general.Artwork is null);
        quick.Artwork?.Bounds.ShouldBe(general.Artwork!.Bounds);
        quick.Artwork?.Objects.Select(o => (o.Kind, o.Polarity, o.Anchor))
            .ShouldBe(general.Artwork!.Objects.Select(o => (o.Kind, o.Polarity, o.Anchor)));
        quick.Artwork?.Objects.SelectMany(o => o.Rings).SelectMany(ring => ring)
            .ShouldBe(general.Artwork!.Objects.SelectMany(o => o.Rings).SelectMany(ring => ring));
    }
}
