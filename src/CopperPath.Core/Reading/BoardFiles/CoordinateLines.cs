using System.Buffers;

namespace CopperPath.Reading.BoardFiles;

/// <summary>
/// Lines that are nothing but coordinates and codes, such as <c>X100Y-20</c>, <c>G01X1.5Y2D01*</c> or <c>T1C0.8</c>: what is
/// left of plot and drill data when the head that names the format is lost. Sentences, lists and tables have none.
/// </summary>
internal static class CoordinateLines
{
    /// <summary>So many are no coincidence.</summary>
    public const int Telling = 3;

    /// <summary>Bytes looked at.</summary>
    private const int MostBytes = 1 << 20;

    private static readonly SearchValues<byte> _ofNumbers = SearchValues.Create("0123456789.+-"u8);

    public static int CountIn(ReadOnlySpan<byte> bytes)
    {
        int count = 0;
        ReadOnlySpan<byte> rest = bytes[..Math.Min(bytes.Length, MostBytes)];
        while (!rest.IsEmpty)
        {
            int end = rest.IndexOfAny((byte)'\n', (byte)'\r');
            ReadOnlySpan<byte> line = (end < 0 ? rest : rest[..end]).Trim(" \t*"u8);
            count += IsCoordinates(line) ? 1 : 0;
            rest = end < 0 ? [] : rest[(end + 1)..];
        }

        return count;
    }

    /// <summary>Two words or more, each a letter of the formats and a number: one alone may be a name, such as X1 of a part.</summary>
    private static bool IsCoordinates(ReadOnlySpan<byte> line)
    {
        int words = 0;
        while (!line.IsEmpty)
        {
            int length = 1 + NumberLength(line[1..]);
            if (!"XYIJGDTCFS"u8.Contains(line[0]) || length < 2)
            {
                return false;
            }

            words++;
            line = line[length..];
        }

        return words >= 2;
    }

    private static int NumberLength(ReadOnlySpan<byte> text)
    {
        int end = text.IndexOfAnyExcept(_ofNumbers);
        return end < 0 ? text.Length : end;
    }
}
