using System.IO.Compression;
using System.Runtime.InteropServices;

namespace CopperPath.Cli.Report.Html;

/// <summary>The report's numbers as one run of bytes; whoever adds something remembers where it starts.</summary>
internal sealed class PackedBytes
{
    private readonly List<byte> _bytes = [];

    /// <summary>Where the next byte goes.</summary>
    public int Length => _bytes.Count;

    /// <returns>Where they start.</returns>
    public int Add(ReadOnlySpan<byte> values)
    {
        int start = _bytes.Count;
        _bytes.AddRange(values);
        return start;
    }

    /// <summary>A whole number in groups of seven bits, small magnitudes of either sign short.</summary>
    public void AddNumber(long value)
    {
        ulong rest = (ulong)((value << 1) ^ (value >> 63));
        for (; rest >= 0x80; rest >>= 7)
        {
            _bytes.Add((byte)(rest | 0x80));
        }

        _bytes.Add((byte)rest);
    }

    /// <summary>Base64 of the bytes, deflated; the browser inflates them itself.</summary>
    public string Deflated()
    {
        using MemoryStream packed = new();
        using (ZLibStream deflate = new(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            deflate.Write(CollectionsMarshal.AsSpan(_bytes));
        }

        return Convert.ToBase64String(packed.GetBuffer(), 0, (int)packed.Length);
    }
}
