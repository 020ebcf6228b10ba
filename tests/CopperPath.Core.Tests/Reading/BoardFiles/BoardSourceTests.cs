using System.IO.Compression;
using System.Text;
using CopperPath.Diagnostics;
using CopperPath.Reading.BoardFiles;

namespace CopperPath.Core.Tests.Reading.BoardFiles;

public sealed class BoardSourceTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("copperpath-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void FolderGivesItsFilesInOrdinalOrderWithoutDesktopLitter()
    {
        Write("b.gbr", "B");
        Write("A.gbr", "A");
        Write(".DS_Store", "x");
        Write("Thumbs.db", "x");
        Write("below/report.html", "C");

        BoardSource source = BoardSource.Open(_folder);

        source.Files.Select(f => f.Name).ShouldBe(["A.gbr", "b.gbr"]);
        Encoding.UTF8.GetString(source.Files[0].Bytes.Span).ShouldBe("A");
        source.Diagnostics.ShouldBeEmpty();
    }

    [Fact]
    public void FabricationFilesBelowTheOthersAreLeftOutAndSaid()
    {
        Write("a.gbr", "A");
        Write("drills/b.drl", "B");
        Write("drills/b.drr", "B");
        string archive = Archive(("a.gbr", "A"), ("drills/b.drl", "B"), ("drills/b.drr", "B"));

        foreach (BoardSource source in new[] { BoardSource.Open(archive), BoardSource.Open(_folder) })
        {
            source.Diagnostics.ShouldHaveSingleItem().ToString().ShouldEndWith(
                "warning BRD011: found 1 file named as fabrication data in the folder drills below, such as b.drl; "
                + "expected all files of the board in one folder; those are not read");
        }
    }

    [Fact]
    public void SoleSubfolderIsTakenAndSaidSo()
    {
        Write("gerbers/a.gbr", "A");

        BoardSource source = BoardSource.Open(_folder);

        source.Files.Select(f => f.Name).ShouldBe(["a.gbr"]);
        source.Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(BoardSourceCode.OneLevelDown);
    }

    [Fact]
    public void SeveralSubfoldersAreNotMixed()
    {
        Write("revision-a/a.gbr", "A");
        Write("revision-b/a.gbr", "B");

        Diagnostic error = Refused(BoardSource.Open(_folder));

        error.Code.ShouldBe(BoardSourceCode.SeveralFolders);
        error.Found.ShouldBe("no files but the folders revision-a, revision-b");
    }

    [Fact]
    public void MissingAndEmptyPathsAreTold()
    {
        Refused(BoardSource.Open(Path.Combine(_folder, "nowhere"))).Code.ShouldBe(BoardSourceCode.Missing);
        Refused(BoardSource.Open(_folder)).Code.ShouldBe(BoardSourceCode.Empty);
    }

    [Fact]
    public void ArchiveIsReadInPlace()
    {
        string path = Archive(("board/a.gbr", "A"), ("board/", ""), ("__MACOSX/board/._a.gbr", "x"));

        BoardSource source = BoardSource.Open(path);

        source.Files.ShouldHaveSingleItem().Name.ShouldBe("a.gbr");
        source.Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(BoardSourceCode.OneLevelDown);
        Directory.GetFileSystemEntries(_folder).ShouldBe([path]);
    }

    [Fact]
    public void ArchiveAndFolderGiveTheSameFiles()
    {
        string archive = Archive(("b.gbr", "B"), ("a.gbr", "A"));
        Write("same/a.gbr", "A");
        Write("same/b.gbr", "B");

        string[] fromArchive = [.. BoardSource.Open(archive).Files.Select(f => f.Name + Encoding.UTF8.GetString(f.Bytes.Span))];
        string[] fromFolder = [.. BoardSource.Open(Path.Combine(_folder, "same")).Files.Select(f => f.Name + Encoding.UTF8.GetString(f.Bytes.Span))];

        fromArchive.ShouldBe(fromFolder);
    }

    [Theory]
    [InlineData("../evil.gbr")]
    [InlineData("/etc/evil.gbr")]
    [InlineData("a/../../evil.gbr")]
    [InlineData("C:\\evil.gbr")]
    [InlineData("..\\evil.gbr")]
    [InlineData("a//evil.gbr")]
    public void EntryThatLeadsOutsideIsRefused(string entry)
    {
        BoardSource source = BoardSource.Open(Archive((entry, "evil"), ("good.gbr", "G")));

        source.Files.ShouldHaveSingleItem().Name.ShouldBe("good.gbr");
        source.Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(BoardSourceCode.UnsafePath);
    }

    [Fact]
    public void LimitsOnCountSizeAndTotalHold()
    {
        string many = Archive([.. Enumerable.Range(0, 12).Select(i => ($"{i}.gbr", "0123456789"))]);

        Refused(BoardSource.Open(many, new BoardSourceLimits(11, 1_000, 1_000))).Found.ShouldBe("more than 11 files");
        BoardSource total = BoardSource.Open(many, new BoardSourceLimits(12, 1_000, 55));
        total.Files.ShouldBeEmpty();
        total.Diagnostics.ShouldHaveSingleItem().Found.ShouldBe("120 bytes in all files");
        BoardSource.Open(many, new BoardSourceLimits(12, 9, 1_000)).Files.ShouldBeEmpty();
    }

    [Fact]
    public void BombIsRefusedByItsStatedSizeBeforeItIsUnpacked()
    {
        string path = Archive(("bomb.gbr", new string('0', 4_000_000)));
        new FileInfo(path).Length.ShouldBeLessThan(40_000);

        Refused(BoardSource.Open(path, new BoardSourceLimits(10, 1_000_000, 10_000_000))).Code.ShouldBe(BoardSourceCode.TooLarge);
    }

    [Fact]
    public void SameNameTwiceIsRefused() =>
        BoardSource.Open(Archive(("a.gbr", "1"), ("a.gbr", "2"))).Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(BoardSourceCode.DuplicateName);

    [Fact]
    public void DamagedArchivesNeverThrowAndNeverGiveWrongBytes()
    {
        string path = Archive(("a.gbr", "The quick brown fox jumps over the lazy dog, twice over the lazy dog."));
        byte[] whole = File.ReadAllBytes(path);
        string content = Convert.ToHexString(BoardSource.Open(path).Files[0].Bytes.Span);
        for (int i = 0; i < whole.Length; i++)
        {
            byte[] damaged = [.. whole];
            damaged[i] ^= 0x55;
            string damagedPath = Path.Combine(_folder, "damaged.zip");
            File.WriteAllBytes(damagedPath, damaged);

            BoardSource source = BoardSource.Open(damagedPath);

            // Damage to a name or date may pass; damage to the content may not.
            source.Files.Select(f => Convert.ToHexString(f.Bytes.Span)).ShouldAllBe(hex => hex == content);
            (source.Files.Count > 0 || source.Diagnostics.Any(d => d.Severity == Severity.Error)).ShouldBeTrue();
        }
    }

    [Fact]
    public void TruncatedArchiveAndOtherFilesAreToldAsCorrupt()
    {
        byte[] whole = File.ReadAllBytes(Archive(("a.gbr", "A")));
        string half = Path.Combine(_folder, "half.zip");
        File.WriteAllBytes(half, whole[..(whole.Length / 2)]);
        string text = Write("notes.txt", "not an archive");

        Refused(BoardSource.Open(half)).Code.ShouldBe(BoardSourceCode.Corrupt);
        Refused(BoardSource.Open(text)).Code.ShouldBe(BoardSourceCode.Corrupt);
    }

    [Fact]
    public void EachFaultOfAnArchiveIsToldToTheWord()
    {
        const string Open = "a folder or a zip archive of fabrication files";
        Said(Archive(("../evil.gbr", "x"), ("a.gbr", "A"))).ShouldBe("board.zip: error BRD005: found the entry path '../evil.gbr'; expected a path that stays inside the archive");
        Said(Archive(("a.gbr", "1"), ("a.gbr", "2"))).ShouldBe("a.gbr: error BRD006: found a second file of this name; expected one file of each name");
        Said(Archive(("x/a.gbr", "1"), ("y/a.gbr", "2"))).ShouldBe("board.zip: error BRD008: found files in the folders x, y; expected the files of one board in one folder");
        Said(Archive()).ShouldBe("board.zip: error BRD002: found no files; expected the fabrication files of a board");
        Said(Write("notes.txt", "text")).ShouldBe($"notes.txt: error BRD003: found a file that is not a whole zip archive; expected {Open}");
        Said(Path.Combine(_folder, "nowhere")).ShouldBe($"nowhere: error BRD001: found nothing at this path; expected {Open}");

        string three = Archive(("a.gbr", "0123456789"), ("b.gbr", "0123456789"), ("c.gbr", "0123456789"));
        Said(three, new BoardSourceLimits(2, 100, 100)).ShouldBe("board.zip: error BRD004: found more than 2 files; expected at most 2 files for a board; give the folder that holds its fabrication files alone");
        Said(three, new BoardSourceLimits(3, 9, 100)).ShouldBe("a.gbr: error BRD004: found 10 bytes; expected at most 9 bytes in one file");
        Said(three, new BoardSourceLimits(3, 100, 25)).ShouldBe("board.zip: error BRD004: found 30 bytes in all files; expected at most 25 bytes; unpack it, look at it and give the folder");

        string Said(string path, BoardSourceLimits? limits = null) =>
            BoardSource.Open(path, limits).Diagnostics[0].ToString().Replace(_folder + Path.DirectorySeparatorChar, "", StringComparison.Ordinal);
    }

    [Fact]
    public void ChecksumMatchesTheStandardCheckValue() =>
        // Published check value of CRC-32/ISO-HDLC for the nine digits.
        Crc32.Of("123456789"u8).ShouldBe(0xCBF43926u);

    private static Diagnostic Refused(BoardSource source)
    {
        source.Files.ShouldBeEmpty();
        Diagnostic error = source.Diagnostics.ShouldHaveSingleItem();
        error.Severity.ShouldBe(Severity.Error);
        error.AffectsCopper.ShouldBeTrue();
        return error;
    }

    private string Write(string name, string text)
    {
        string path = Path.Combine(_folder, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return path;
    }

    private string Archive(params (string Name, string Text)[] entries)
    {
        string path = Path.Combine(_folder, "board.zip");
        using ZipArchive archive = new(File.Create(path), ZipArchiveMode.Create);
        foreach ((string name, string text) in entries)
        {
            using Stream stream = archive.CreateEntry(name).Open();
            stream.Write(Encoding.UTF8.GetBytes(text));
        }

        return path;
    }
}
