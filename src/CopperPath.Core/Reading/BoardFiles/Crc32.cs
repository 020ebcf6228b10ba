namespace CopperPath.Reading.BoardFiles;

/// <summary>The checksum of zip archives: CRC-32 with the reflected polynomial 0xEDB88320 (ISO 3309).</summary>
internal static class Crc32
{
    private const uint Polynomial = 0xEDB88320;

    private static readonly uint[] _table = [.. Enumerable.Range(0, 256).Select(i => Entry((uint)i))];

    public static uint Of(ReadOnlySpan<byte> bytes)
    {
        uint crc = uint.MaxValue;
        foreach (byte b in bytes)
        {
            crc = _table[(crc ^ b) & 0xFF] ^ (crc >> 8);
        }

        return ~crc;
    }

    private static uint Entry(uint value)
    {
        for (int bit = 0; bit < 8; bit++)
        {
            value = (value & 1) != 0 ? (value >> 1) ^ Polynomial : value >> 1;
        }

        return value;
    }
}
