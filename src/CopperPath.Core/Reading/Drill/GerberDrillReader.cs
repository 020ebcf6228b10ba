using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Reading.Gerber;

namespace CopperPath.Reading.Drill;

/// <summary>
/// Reads drill data written as Gerber X2: every flash of a circle is a round hole, every line drawn with one a slot.
/// Plating and layers come from the file function, the use of a hole from the function of its aperture. Whatever is
/// drawn otherwise rejects the file: a hole left out would leave layers apart, or copper uncut.
/// </summary>
public static class GerberDrillReader
{
    private const int MaxErrors = 20;

    /// <summary>Reads one file. Never throws on account of its content.</summary>
    /// <param name="file">Name for remarks and positions.</param>
    /// <param name="bytes">The whole file.</param>
    /// <param name="options">Null for <see cref="GerberReadOptions.Default"/>.</param>
    public static DrillReading Read(string file, ReadOnlyMemory<byte> bytes, GerberReadOptions? options = null)
    {
        GerberReading gerber = GerberReader.Read(file, bytes, options);
        if (gerber.Artwork is not { } artwork)
        {
            return new DrillReading(null, Format, gerber.Diagnostics);
        }

        DrillFileFunction? function = artwork.FileAttributes.TryGetValue(".FileFunction", out IReadOnlyList<string>? fields)
            ? DrillFileFunction.Parse([.. fields])
            : null;
        List<DrilledFeature> features = [];
        List<Diagnostic> remarks = [.. gerber.Diagnostics];
        int errors = 0;
        foreach (PaintedObject painted in artwork.Objects)
        {
            if (RoundTool.Of(painted) is { } tool && painted.Polarity == Polarity.Dark && tool.DiameterNm <= DrillTool.LargestNm)
            {
                features.Add(new DrilledFeature(
                    tool.Path, tool.DiameterNm, function?.Plating ?? Plating.Unknown, painted.Labels.ApertureFunction, painted.Position));
            }
            else if (errors++ < MaxErrors)
            {
                remarks.Add(new Diagnostic(DrillCode.NotADrill, Severity.Error, painted.Position, Shown(painted),
                    "a flash or a straight line of a solid circle up to 100 mm, which is a hole or a slot", AffectsCopper: true));
            }
        }

        if (errors == 0 && features.Count == 0)
        {
            remarks.Add(new Diagnostic(DrillCode.NoHoles, Severity.Warning, SourcePosition.WholeFile(file),
                "no hole", "at least one hole in a drill file"));
        }

        return new DrillReading(
            errors > 0 ? null : new DrillArtwork(file, features, function?.FirstLayer ?? 0, function?.LastLayer ?? 0), Format, remarks);
    }

    private const string Format = "drill data in Gerber form, numbers by its own format statement";

    private static string Shown(PaintedObject painted) => painted switch
    {
        { Polarity: Polarity.Clear } => "an object of clear polarity",
        { Kind: PaintKind.Region } => "a region",
        { Kind: PaintKind.Flash } => "a flash of a shape that is not a solid circle",
        _ => "an arc, or a line drawn with a shape that is not a solid circle",
    };
}
