using CopperPath.Brief;
using CopperPath.Files;
using CopperPath.Reading.BoardFiles;

namespace CopperPath.Core.Tests.Files;

/// <summary>
/// Inputs are regular files. The kinds of file are those of POSIX (IEEE Std 1003.1, sys/stat.h); what waits or never ends is
/// refused in one line before it is opened.
/// </summary>
public sealed class RegularFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("copperpath-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData(SpecialFile.Pipe, "a named pipe")]
    [InlineData(SpecialFile.Socket, "a socket")]
    [InlineData(SpecialFile.LinkToDevice, "a device")]
    [InlineData(SpecialFile.LinkToPipe, "a named pipe")]
    public void OfABoardsFilesEachOtherKindIsRefusedInOneLine(string kind, string found)
    {
        string path = Path.Combine(_folder, "top.gbr");
        SpecialFile.Make(kind, path);

        BoardSource inFolder = SpecialFile.Promptly(() => BoardSource.Open(_folder));
        BoardSource asArchive = SpecialFile.Promptly(() => BoardSource.Open(path));

        inFolder.Files.ShouldBeEmpty();
        inFolder.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            $"top.gbr: error BRD010: found {found}; expected a regular file, or a link to one");
        inFolder.Diagnostics[0].AffectsCopper.ShouldBeTrue();
        asArchive.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            $"{path}: error BRD010: found {found}; expected a folder or a zip archive of fabrication files");
    }

    [Theory]
    [InlineData(SpecialFile.Pipe, "a named pipe")]
    [InlineData(SpecialFile.LinkToDevice, "a device")]
    [InlineData(SpecialFile.LinkToNothing, "no such file")]
    public void OfABriefToo(string kind, string found)
    {
        string path = Path.Combine(_folder, "brief.yaml");
        SpecialFile.Make(kind, path);

        SpecialFile.Promptly(() => BriefFile.Read(path)).Diagnostics.ShouldHaveSingleItem().ToString().ShouldStartWith(
            $"{path}: error BRF000: found {found}; expected a review brief");
    }

    [Fact]
    public void ALinkToAFileIsRead()
    {
        string target = Path.Combine(_folder, "target");
        File.WriteAllText(target, "G04 here*");
        string board = Directory.CreateDirectory(Path.Combine(_folder, "board")).FullName;
        File.CreateSymbolicLink(Path.Combine(board, "top.gbr"), target);
        File.CreateSymbolicLink(Path.Combine(_folder, "link"), board);

        BoardSource.Open(Path.Combine(_folder, "link")).Files.ShouldHaveSingleItem().Bytes.Length.ShouldBe(9);
    }

    [Fact]
    public void ALinkThatLeadsNowhereIsTold()
    {
        SpecialFile.Make(SpecialFile.LinkToNothing, Path.Combine(_folder, "top.gbr"));

        BoardSource.Open(_folder).Diagnostics.ShouldHaveSingleItem().Found.ShouldBe("a link that leads nowhere");
    }

    [Fact]
    public void AFileAboveItsBoundIsRefusedUnread()
    {
        // A sparse file of a terabyte takes no space; reading it would take an hour.
        string path = Path.Combine(_folder, "brief.yaml");
        using (FileStream stream = File.Create(path))
        {
            stream.SetLength(1L << 40);
        }

        BriefFile.Read(path).Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            $"{path}: error BRF000: found 1099511627776 bytes; expected a review brief of at most 16000000 bytes");
        BoardSource.Open(path).Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(BoardSourceCode.TooLarge);
        RegularFile.Read(path, 10, out FileRefusal? refusal).ShouldBeNull();
        refusal!.Fault.ShouldBe(FileFault.TooLarge);
    }

    [Fact]
    public void AFileAtItsBoundIsRead()
    {
        string path = Path.Combine(_folder, "ten");
        File.WriteAllText(path, "0123456789");

        RegularFile.Read(path, 10, out _)!.Length.ShouldBe(10);
        RegularFile.Read(path, 9, out _).ShouldBeNull();
    }

    [Fact]
    public void AFileWhoseLengthIsNotItsOwnIsRefused()
    {
        // Files of the process table state no length and hold text all the same (proc(5)).
        Assert.SkipUnless(File.Exists("/proc/self/status"), "no process table as files on this system");

        RegularFile.Read("/proc/self/status", 1_000_000, out FileRefusal? refusal).ShouldBeNull();
        refusal!.Found.ShouldContain("its length changed");
    }

    [Fact]
    public void ABriefKeepsItsBytesAsTheyStood()
    {
        string path = Path.Combine(_folder, "brief.yaml");
        File.WriteAllBytes(path, [0xEF, 0xBB, 0xBF, (byte)'a', (byte)':', (byte)'1']);

        BriefFile.Read(path).Bytes.ToArray().ShouldBe(File.ReadAllBytes(path));
    }
}
