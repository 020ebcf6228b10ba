namespace CopperPath.Core.Tests.Fuzzing;

/// <summary>Damages good inputs at random, the same way for the same seed.</summary>
/// <param name="seed">Seed of the one source of chance.</param>
/// <param name="originals">Good inputs, none empty.</param>
/// <param name="telling">Bytes that matter to the grammar: changes made of them go deeper than random ones.</param>
/// <param name="fragments">Pieces of text that ask for something large, deep or out of place.</param>
internal sealed class Mutator(int seed, IReadOnlyList<byte[]> originals, byte[] telling, IReadOnlyList<byte[]> fragments)
{
    /// <summary>Longest input made: damage that doubles and doubles again would only slow the run down.</summary>
    private const int Longest = 8_192;

    private static readonly byte[][] Numbers =
    [
        .. new[] { "0", "-1", "00", "1e9", "2147483648", "-99999999", "9999999999", "18446744073709551616", "0.0000001", "." }
            .Select(System.Text.Encoding.ASCII.GetBytes),
    ];

    private readonly Random _random = new(seed);

    public byte[] Next()
    {
        List<byte> bytes = [.. Pick(originals)];
        do
        {
            Edit(bytes);
        }
        while (bytes.Count > 0 && _random.Next(2) == 0);

        return bytes.Count > Longest ? [.. bytes[..Longest]] : [.. bytes];
    }

    private void Edit(List<byte> bytes)
    {
        int at = _random.Next(bytes.Count);
        switch (_random.Next(9))
        {
            case 0:
                bytes.RemoveAt(at);
                break;
            case 1:
                bytes.Insert(at, SomeByte());
                break;
            case 2 or 3:
                bytes[at] = SomeByte();
                break;
            case 4:
                bytes.RemoveRange(at, Math.Min(_random.Next(1, 30), bytes.Count - at));
                break;
            case 5:
                bytes.InsertRange(_random.Next(bytes.Count), bytes.GetRange(at, Math.Min(_random.Next(1, 60), bytes.Count - at)));
                break;
            case 6:
                byte[] other = Pick(originals);
                int from = _random.Next(other.Length);
                bytes.InsertRange(at, other.AsSpan(from, Math.Min(_random.Next(1, 60), other.Length - from)).ToArray());
                break;
            case 7:
                bytes.InsertRange(at, Pick(fragments));
                break;
            default:
                ReplaceNumber(bytes, at);
                break;
        }
    }

    /// <summary>Puts an extreme number in place of the first one at or after an index.</summary>
    private void ReplaceNumber(List<byte> bytes, int at)
    {
        int first = bytes.FindIndex(at, b => char.IsAsciiDigit((char)b));
        if (first >= 0)
        {
            int end = bytes.FindIndex(first, b => !char.IsAsciiDigit((char)b));
            bytes.RemoveRange(first, (end < 0 ? bytes.Count : end) - first);
            bytes.InsertRange(first, Pick(Numbers));
        }
    }

    private byte SomeByte() => _random.Next(4) == 0 ? (byte)_random.Next(256) : telling[_random.Next(telling.Length)];

    private byte[] Pick(IReadOnlyList<byte[]> choices) => choices[_random.Next(choices.Count)];
}
