using CopperPath.Artwork;
using CopperPath.Geometry;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>Blocks and apertures under mirror, rotation and scale; sharing of rings.</summary>
public sealed class GerberBlocksTests
{
    /// <summary>An L: right triangle (0,0) (2,0) (0,1), a stroke (0,0) to (0,3) with a 0.2 pen, and an arc.</summary>
    private const string Block = GerberText.Head
        + "%AMT*4,1,3,0,0,2,0,0,1,0,0,0*%%ADD10T*%%ADD11C,0.2*%"
        + "%ABD20*%D10*X10000Y0D03*D11*G01*X0Y0D02*X0Y30000D01*G75*G03*X-10000Y40000I-10000J0D01*"
        + "G01*G36*X50000Y0D02*X60000D01*Y20000D01*X50000Y0D01*G37*%AB*%D20*";

    [Theory]
    [InlineData("", 1, 0, 0, 1)]
    [InlineData("%LMX*%", -1, 0, 0, 1)]
    [InlineData("%LMY*%", 1, 0, 0, -1)]
    [InlineData("%LMXY*%", -1, 0, 0, -1)]
    [InlineData("%LR90*%", 0, -1, 1, 0)]
    [InlineData("%LR-90*%", 0, 1, -1, 0)]
    [InlineData("%LR30*%", 0.86602540378443865, -0.5, 0.5, 0.86602540378443865)]
    [InlineData("%LS2.5*%", 2.5, 0, 0, 2.5)]
    [InlineData("%LMX*%%LR30*%%LS0.5*%", -0.43301270189221933, -0.25, -0.25, 0.43301270189221933)]
    public void ABlockIsTurnedAsAWhole(string commands, double xx, double xy, double yx, double yy)
    {
        NtsGeometry plain = ImageOracle.Compose(GerberText.Read(Block + "X0Y0D03*M02*").Artwork.ShouldNotBeNull());
        NtsGeometry turned = ImageOracle.Compose(
            GerberText.Read(Block + commands + "X70000Y-20000D03*M02*").Artwork.ShouldNotBeNull());

        // The expected image: the plain one under the matrix, mirror first, then rotation, then scale.
        var matrix = new NetTopologySuite.Geometries.Utilities.AffineTransformation(xx, xy, 7e6, yx, yy, -2e6);
        NtsGeometry expected = matrix.Transform(plain);
        double scale = Math.Sqrt(Math.Abs((xx * yy) - (xy * yx)));

        // Vertices keep areas: what is left is a nanometre of rounding along the outline.
        turned.Area.ShouldBe(plain.Area * scale * scale, turned.Length);

        // Both outlines are within the chord tolerance of the true one, the expected one scaled.
        turned.SymmetricDifference(expected).Area.ShouldBeLessThan(turned.Length * 200 * (1 + scale));
    }

    [Fact]
    public void NestedTurnsComposeInOrder()
    {
        // Inner flash turned by 90, outer by 90: together 180.
        LayerArtwork artwork = GerberText.Read(
            GerberText.Head + "%AMT*4,1,3,0,0,2,0,0,1,0,0,0*%%ADD10T*%"
            + "%ABD20*%%LR90*%D10*X10000Y0D03*%AB*%%ABD21*%D20*%LR90*%X0Y10000D03*%AB*%%LR0*%D21*X0Y0D03*M02*")
            .Artwork.ShouldNotBeNull();
        BoxNm bounds = artwork.Bounds;

        // The member sits at (1, 0); turned by 90 it sits at (0, 1), moved to (0, 2); the triangle points to -x, -y.
        bounds.ShouldBe(new BoxNm(-2_000_000, 1_000_000, 0, 2_000_000));
    }

    [Fact]
    public void ClearFlashesOfNestedBlocksToggleEachTime()
    {
        LayerArtwork artwork = GerberText.Read(
            GerberText.Head + "%ADD10C,1*%%ABD20*%D10*X0Y0D03*%LPC*%X0Y0D03*%LPD*%%AB*%"
            + "%ABD21*%D20*%LPC*%X0Y0D03*%LPD*%X0Y0D03*%AB*%D21*%LPC*%X0Y0D03*M02*").Artwork.ShouldNotBeNull();
        artwork.Objects.Select(o => o.Polarity).ShouldBe([Polarity.Dark, Polarity.Clear, Polarity.Clear, Polarity.Dark]);
    }

    [Fact]
    public void FlashesOfOneApertureShareTheirRings()
    {
        LayerArtwork artwork = GerberText.Read(
            GerberText.Head + "%ADD10C,1*%%ABD20*%D10*X10000Y0D03*%AB*%D10*X0Y0D03*X50000Y0D03*%LR45*%X0Y0D03*"
            + "%LR0*%D20*X0Y0D03*%SRX2Y2I1J1*%X0Y0D03*%SR*%M02*").Artwork.ShouldNotBeNull();
        artwork.Objects.Count.ShouldBe(8);
        artwork.Objects[1].Rings.ShouldBeSameAs(artwork.Objects[0].Rings);
        artwork.Objects[1].Offset.ShouldBe(new PointNm(5_000_000, 0));
        artwork.Objects[1].Anchor.ShouldBe(new PointNm(5_000_000, 0));
        artwork.Objects[2].Rings.ShouldNotBeSameAs(artwork.Objects[0].Rings);
        artwork.Objects.Skip(3).ShouldAllBe(o => ReferenceEquals(o.Rings, artwork.Objects[0].Rings));
        artwork.Objects[7].Anchor.ShouldBe(new PointNm(2_000_000, 1_000_000));
    }

    [Fact]
    public void CopiesRunAlongYFirst()
    {
        LayerArtwork artwork = GerberText.Read(
            GerberText.Head + "%ADD10C,1*%D10*%SRX2Y2I1J1*%X0Y0D03*%SR*%M02*").Artwork.ShouldNotBeNull();
        artwork.Objects.Select(o => (o.Anchor.X, o.Anchor.Y)).ShouldBe(
            [(0, 0), (0, 1_000_000), (1_000_000, 0), (1_000_000, 1_000_000)]);
    }

    [Fact]
    public void ABlockMemberWithoutLabelsTakesThoseOfItsFlash()
    {
        LayerArtwork artwork = GerberText.Read(
            GerberText.Head + "%ADD10C,1*%%ABD20*%D10*X0Y0D03*%TO.N,OWN*%X0Y0D03*%TD*%%AB*%"
            + "D20*%TO.N,OUTER*%X0Y0D03*M02*").Artwork.ShouldNotBeNull();
        artwork.Objects[0].Labels.Nets.ShouldBe(["OUTER"]);
        artwork.Objects[1].Labels.Nets.ShouldBe(["OWN"]);
    }
}
