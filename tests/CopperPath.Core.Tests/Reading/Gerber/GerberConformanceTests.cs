using System.Text;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.Gerber;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;

namespace CopperPath.Core.Tests.Reading.Gerber;

public sealed class GerberConformanceTests
{
    /// <summary>
    /// Chord tolerance 0.5 um along the whole outline bounds the area error; vertices placed for equal areas make it
    /// far smaller: 1 nm of rounding along the perimeter, plus the overlap places where curves cross.
    /// </summary>
    private const double AreaToleranceMm = 0.05e-3;

    /// <summary>Vertices stand out from the curve by at most the chord tolerance; 1 nm for rounding.</summary>
    private const double BoundsToleranceMm = 0.000501;

    public static TheoryData<string> Names => [.. ConformanceCases.All.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void HasTheExactAreaAndBounds(string name)
    {
        ConformanceCase wanted = ConformanceCases.All.Single(c => c.Name == name);
        LayerArtwork artwork = Read(wanted);
        NtsGeometry image = ImageOracle.Compose(artwork);
        (image.Area / 1e12).ShouldBe(wanted.AreaMm2, 1e-6 + (image.Length / 1e6 * AreaToleranceMm), wanted.Tests);
        if (wanted.BoundsMm is { } bounds)
        {
            var box = image.EnvelopeInternal;
            double[] found = [box.MinX / 1e6, box.MinY / 1e6, box.MaxX / 1e6, box.MaxY / 1e6];
            for (int i = 0; i < 4; i++)
            {
                found[i].ShouldBe(bounds[i], BoundsToleranceMm, $"{wanted.Tests}: bound {i}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void KeepsThePromisesOfPaintedObjects(string name)
    {
        foreach (PaintedObject painted in Read(ConformanceCases.All.Single(c => c.Name == name)).Objects)
        {
            foreach (PointNm[] ring in painted.Rings)
            {
                ring.Length.ShouldBeGreaterThan(2);
                ring[^1].ShouldNotBe(ring[0]);
                ring.Zip(ring.Skip(1)).ShouldAllBe(pair => pair.First != pair.Second);
                Ring.SignedAreaNm2(ring).ShouldNotBe(0);
            }
        }
    }

    private static LayerArtwork Read(ConformanceCase wanted)
    {
        GerberReading reading = GerberReader.Read(wanted.Name + ".gbr", Encoding.UTF8.GetBytes(wanted.Text));
        reading.Diagnostics.ShouldAllBe(d => d.Severity != Severity.Error);
        return reading.Artwork.ShouldNotBeNull();
    }
}
