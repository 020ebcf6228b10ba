using CopperPath.Artwork;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>
/// X2 attributes; rules from memory of the published layer format: TF for the file, TA bound at AD and at region
/// creation, TO bound at object creation, TD deletes.
/// </summary>
public sealed class GerberAttributesTests
{
    public static TheoryData<string, string> Forms => new()
    {
        { "%", "*%" },
        { "G04 #@! ", "*" },
        { "G04 @! ", "*" },
        { "G04#@!", "*" },
        { "G4 #@! ", "*" },
    };

    [Theory]
    [MemberData(nameof(Forms))]
    public void BothFormsMeanTheSame(string open, string close)
    {
        string At(string attribute) => open + attribute + close + "\n";
        LayerArtwork artwork = GerberText.Read(
            At("TF.FileFunction,Copper,L2,Inr,Plane")
            + GerberText.Head
            + At("TA.AperFunction,SMDPad,CuDef") + "%ADD10C,1*%\n" + At("TD")
            + "%ADD11C,2*%\n"
            + At("TO.N,VOUT") + At("TO.P,U1,7,SW") + At("TO.C,U1")
            + "D10*\nX0Y0D03*\n"
            + At("TD.P")
            + "X0Y0D03*\n"
            + At("TD")
            + "D11*\nX0Y0D03*\nM02*").Artwork.ShouldNotBeNull();
        artwork.FileAttributes[".FileFunction"].ShouldBe(["Copper", "L2", "Inr", "Plane"]);
        artwork.Objects[0].Labels.Nets.ShouldBe(["VOUT"]);
        artwork.Objects[0].Labels.Pin.ShouldBe(new PinName("U1", "7", "SW"));
        artwork.Objects[0].Labels.Component.ShouldBe("U1");
        artwork.Objects[0].Labels.ApertureFunction.ShouldBe("SMDPad,CuDef");
        artwork.Objects[1].Labels.Nets.ShouldBe(["VOUT"]);
        artwork.Objects[1].Labels.Pin.ShouldBeNull();
        artwork.Objects[1].Labels.ApertureFunction.ShouldBe("SMDPad,CuDef");
        artwork.Objects[2].Labels.ShouldBeSameAs(ObjectLabels.None);
    }

    [Fact]
    public void OtherCommentsAreNoAttributes()
    {
        var reading = GerberText.Read("G04 TF.Part,Single*\nG04 #@ TF.Part,Single*\nG04 50% of ! TO.N,X*\n" + GerberText.Head + "M02*");
        reading.Artwork.ShouldNotBeNull().FileAttributes.ShouldBeEmpty();
        reading.Diagnostics.ShouldBeEmpty();
    }

    [Theory]
    [InlineData(@"A\u002CB", "A,B")]
    [InlineData(@"\u0025\u002A\u005C", @"%*\")]
    [InlineData(@"\uD83D\uDE00", "\U0001F600")]
    [InlineData(@"C:\u", @"C:\u")]
    [InlineData(@"\u12", @"\u12")]
    [InlineData(@"\uZZZZ", @"\uZZZZ")]
    [InlineData("Netz Ω+ µ", "Netz Ω+ µ")]
    public void EscapesAndUtf8BecomeText(string written, string net)
    {
        LayerArtwork artwork = GerberText.Read(
            GerberText.Head + "%ADD10C,1*%D10*%TO.N," + written + "*%X0Y0D03*M02*").Artwork.ShouldNotBeNull();
        artwork.Objects[0].Labels.Nets.ShouldBe([net]);
    }

    [Theory]
    [InlineData("TO.N,A,B", new[] { "A", "B" })]
    [InlineData("TO.N,", new string[0])]
    [InlineData("TO.N,N/C", new[] { "N/C" })]
    [InlineData("TO.n,A", new[] { "A" })]
    public void NetsAreClaimedAsWritten(string attribute, string[] nets)
    {
        LayerArtwork artwork = GerberText.Read(
            GerberText.Head + "%ADD10C,1*%D10*%" + attribute + "*%X0Y0D03*M02*").Artwork.ShouldNotBeNull();
        artwork.Objects[0].Labels.Nets.ShouldBe(nets);
    }

    [Fact]
    public void RegionsTakeTheFunctionInForceNotTheAperturesOwn()
    {
        LayerArtwork artwork = GerberText.Read(
            GerberText.Head
            + "%TA.AperFunction,ViaPad*%%ADD10C,1*%D10*%TA.AperFunction,Conductor*%%TO.N,GND*%"
            + "G36*X0Y0D02*G01*X10000D01*Y10000D01*X0Y0D01*G37*X0Y0D03*M02*").Artwork.ShouldNotBeNull();
        artwork.Objects[0].Labels.ApertureFunction.ShouldBe("Conductor");
        artwork.Objects[0].Labels.Nets.ShouldBe(["GND"]);
        artwork.Objects[1].Labels.ApertureFunction.ShouldBe("ViaPad");
    }

    [Fact]
    public void EqualLabelsAreOneRecord()
    {
        LayerArtwork artwork = GerberText.Read(
            GerberText.Head + "%ADD10C,1*%D10*%TO.N,A*%X0Y0D03*X1Y0D03*M02*").Artwork.ShouldNotBeNull();
        artwork.Objects[0].Labels.ShouldBeSameAs(artwork.Objects[1].Labels);
    }

    [Fact]
    public void LineBreaksInAttributesAreDropped()
    {
        LayerArtwork artwork = GerberText.Read(
            GerberText.Head + "%TF.ProjectId,one \r\ntwo,x*%M02*").Artwork.ShouldNotBeNull();
        artwork.FileAttributes[".ProjectId"].ShouldBe(["one two", "x"]);
    }

    [Theory]
    [InlineData("A\\u000AB", "A\nB")]
    [InlineData("\\uD83D\\uDE00", "\U0001F600")]
    [InlineData("A\\uD800", "A\\uD800")]
    [InlineData("\\uDE00\\uD83DX", "\\uDE00\\uD83DX")]
    [InlineData("\\uD83D\\u0041", "\\uD83DA")]
    public void AnEscapeOfHalfASurrogatePairIsNone(string written, string name) =>
        GerberText.Read(GerberText.Head + "%ADD10C,1*%\n%TO.N," + written + "*%\nD10*\nX0Y0D03*\nM02*")
            .Artwork.ShouldNotBeNull().Objects[0].Labels.Nets.ShouldBe([name]);
}
