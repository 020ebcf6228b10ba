using System.Text;

namespace CopperPath.Reading.Placement;

/// <summary>
/// Reads tables of part placements, one part to a line, columns named by a heading line:
/// <code>
/// Designator,Mid X (mm),Mid Y (mm),Rotation,Layer,Package
/// C10,63.881,-66.421,270,top,"C0402, low"
/// </code>
/// Columns are kept apart by commas, semicolons, tabs or blanks. The unit stands in the headings, in a line such as
/// <c>## Unit = mm</c>, or behind the numbers. No standard; the headings known are common practice. A damaged row is
/// dropped with a warning: a name is lost with it, never copper.
/// </summary>
public static class PlacementReader
{
    private const int MaxBytes = 16 * 1024 * 1024;

    /// <summary>Reads one file. Never throws.</summary>
    public static PlacementReading Read(string file, ReadOnlyMemory<byte> bytes)
    {
        PlacementParser parser = new(file);
        if (bytes.Length is 0 or > MaxBytes || bytes.Span.Contains((byte)0))
        {
            parser.Refuse(PlacementCode.NotText,
                bytes.Length == 0 ? "an empty file" : bytes.Length > MaxBytes ? "a file above 16 MB" : "bytes that are not text",
                "a table of placements in plain text");
        }
        else
        {
            parser.Run(Encoding.UTF8.GetString(bytes.Span));
        }

        return parser.ToReading();
    }
}
