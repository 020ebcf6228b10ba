using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace CopperPath;

/// <summary>A short name for the contents of files: the same for the same contents, and for no others one is likely to meet.</summary>
public static class Fingerprint
{
    /// <summary>Hexadecimal digits shown of the SHA-256: enough to tell revisions apart, short enough to be copied by hand.</summary>
    private const int Digits = 16;

    /// <param name="files">Names and contents, in any order; names are unique.</param>
    public static string Of(IEnumerable<(string Name, ReadOnlyMemory<byte> Bytes)> files)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach ((string name, ReadOnlyMemory<byte> bytes) in files.OrderBy(file => file.Name, StringComparer.Ordinal))
        {
            Append(hash, Encoding.UTF8.GetBytes(name));
            Append(hash, bytes.Span);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset())[..Digits];
    }

    /// <summary>With its length before it, so that no two lists of parts run together to the same bytes.</summary>
    private static void Append(IncrementalHash hash, ReadOnlySpan<byte> part)
    {
        Span<byte> length = stackalloc byte[sizeof(long)];
        BinaryPrimitives.WriteInt64LittleEndian(length, part.Length);
        hash.AppendData(length);
        hash.AppendData(part);
    }
}
