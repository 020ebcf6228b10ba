using System.Buffers.Binary;
using System.IO.Compression;
using CopperPath.Diagnostics;
using CopperPath.Reading.BoardFiles;

namespace CopperPath.Core.Tests.Fuzzing;

/// <summary>Archives that lie about what they hold.</summary>
public sealed class HostileArchiveTests : IDisposable
{
    /// <summary>Offsets of the uncompressed size in the two headers of an entry, from the zip application note.</summary>
    private const int SizeInLocalHeader = 22;
    private const int SizeInDirectory = 24;

    private readonly string _folder = Directory.CreateTempSubdirectory("copperpath-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(10)]
    [InlineData(999_999)]
    [InlineData(1_000_001)]
    [InlineData(16_000_000)]
    public void AnEntryThatHoldsMoreOrLessThanItStatesIsDamaged(int statedBytes)
    {
        BoardSource source = Open(ZerosThatState(statedBytes));

        source.Files.ShouldBeEmpty();
        Diagnostic error = source.Diagnostics.ShouldHaveSingleItem();
        error.Code.ShouldBe(BoardSourceCode.Corrupt);
        error.AffectsCopper.ShouldBeTrue();
    }

    [Fact]
    public void AnEntryThatStatesTooMuchIsRefusedUnopened()
    {
        BoardSource source = Open(ZerosThatState(int.MaxValue));

        source.Files.ShouldBeEmpty();
        source.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "bomb.gbr: error BRD004: found 2147483647 bytes; expected at most 134217728 bytes in one file");
    }

    [Fact]
    public void TheTruthIsRead() => Open(ZerosThatState(1_000_000)).Files.ShouldHaveSingleItem().Bytes.Length.ShouldBe(1_000_000);

    private BoardSource Open(byte[] archive)
    {
        string path = Path.Combine(_folder, "board.zip");
        File.WriteAllBytes(path, archive);
        return BoardSource.Open(path);
    }

    /// <summary>A million zeros in a thousand bytes, both headers stating a size of the caller's choice.</summary>
    private static byte[] ZerosThatState(int bytes)
    {
        using MemoryStream stream = new();
        using (ZipArchive archive = new(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            using Stream content = archive.CreateEntry("bomb.gbr").Open();
            content.Write(new byte[1_000_000]);
        }

        byte[] whole = stream.ToArray();
        int directory = whole.AsSpan().IndexOf("PK\u0001\u0002"u8);
        BinaryPrimitives.WriteInt32LittleEndian(whole.AsSpan(SizeInLocalHeader), bytes);
        BinaryPrimitives.WriteInt32LittleEndian(whole.AsSpan(directory + SizeInDirectory), bytes);
        return whole;
    }
}
