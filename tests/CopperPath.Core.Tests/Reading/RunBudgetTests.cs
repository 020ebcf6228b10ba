using System.Globalization;
using System.IO.Compression;
using System.Text;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Diagnostics;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading;

/// <summary>Bounds over a whole run: said once when spent, with what to do, and independent of what was read first.</summary>
public sealed class RunBudgetTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("copperpath-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void AnArchiveThatUnpacksToAThousandTimesItsSizeIsRefusedBeforeItIsUnpacked()
    {
        // Deflate packs no more than about 1032 times (zlib's technical notes): what comes near that holds one byte again and again.
        string archive = Archive(files: 4, megabytesEach: 16);
        long packed = new FileInfo(archive).Length;
        long before = GC.GetTotalAllocatedBytes(precise: true);

        BoardSource source = BoardSource.Open(archive);

        (GC.GetTotalAllocatedBytes(precise: true) - before).ShouldBeLessThan(4 << 20);
        source.Files.ShouldBeEmpty();
        source.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(string.Create(CultureInfo.InvariantCulture,
            $"{archive}: error BRD004: found {64 << 20} bytes in all files; expected at most {Math.Max(16 << 20, 100 * packed)} bytes; unpack it, look at it and give the folder"));
    }

    [Fact]
    public void AFolderThatHoldsMoreThanARunMayReadIsRefusedUnread()
    {
        for (int i = 0; i < 3; i++)
        {
            using FileStream sparse = File.Create(Path.Combine(_folder, $"{i}.gbr"));
            sparse.SetLength(100 << 20);
        }

        BoardSource source = BoardSource.Open(_folder);

        source.Files.ShouldBeEmpty();
        source.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            $"{_folder}: error BRD004: found 314572800 bytes in all files; expected at most 268435456 bytes; give the folder that holds the board's fabrication files alone");
    }

    [Fact]
    public void AnImageOfMoreVerticesThanFourTimesTheLargestRealOneIsRefused()
    {
        GerberReading reading = GerberReader.Read("layer.gbr", Encoding.ASCII.GetBytes(Image(flashes: 1_001)));

        reading.Artwork.ShouldBeNull();
        reading.Diagnostics.ShouldContain(remark => remark.Code == GerberCode.TooMuch);
        GerberReader.Read("layer.gbr", Encoding.ASCII.GetBytes(Image(flashes: 900))).Artwork.ShouldNotBeNull();
    }

    [Fact]
    public void ImagesThatAreTooMuchTogetherAreRefusedTogether()
    {
        using SyntheticBoard board = new(8);
        for (int layer = 1; layer <= 8; layer++)
        {
            board.Draw(layer, Image(flashes: 900, isWhole: false));
        }

        File.Delete(board.WriteBrief(""));

        Board rebuilt = Analysis.Survey(board.Folder).Board;

        rebuilt.Nets.ShouldBeNull();
        Diagnostic refusal = rebuilt.Diagnostics.Single(remark => remark.Severity == Severity.Error);
        refusal.ToString().ShouldBe(
            $"{board.Folder}: error GBR063: found more than 4000000 objects or 20000000 vertices in all images; "
            + "expected a board within these bounds; take one board out of its panel, or draw planes as regions instead of strokes");
        refusal.AffectsCopper.ShouldBeTrue();
    }

    [Fact]
    public void ABudgetIsSpentWhateverTheOrder()
    {
        byte[] small = Encoding.ASCII.GetBytes(Image(flashes: 1)), large = Encoding.ASCII.GetBytes(Image(flashes: 3));
        foreach (byte[][] order in new[] { new[] { small, large }, [large, small] })
        {
            GerberReadOptions options = GerberReadOptions.Default with { Budget = new ImageBudget { MaximumVertices = 15_000 } };

            GerberReading[] readings = [.. order.Select(bytes => GerberReader.Read("layer.gbr", bytes, options))];

            options.Budget.IsSpent.ShouldBeTrue();
            readings.ShouldAllBe(reading => reading.Diagnostics.All(remark => remark.Severity != Severity.Error));
        }
    }

    [Fact]
    public void DrillFilesThatHoldTooManyHolesTogetherAreRefusedTogether()
    {
        using SyntheticBoard board = new(1);
        File.Delete(board.Rectangle(1, 0, 0, 50, 10).WriteBrief(""));
        for (int file = 0; file < 3; file++)
        {
            // A row of holes repeated: R of the drill format.
            File.WriteAllText(Path.Combine(board.Folder, $"drill{file}.drl"), "M48\nMETRIC\nT1C0.3\n%\nT1\nX1.0Y1.0\nR400000X0.00001\nM30\n");
        }

        Board rebuilt = Analysis.Survey(board.Folder).Board;

        rebuilt.Nets.ShouldBeNull();
        rebuilt.Diagnostics.Single(remark => remark.Severity == Severity.Error).Found.ShouldBe("more than 1000000 holes and cuts in all drill files");
    }

    /// <summary>One outline of 4,000 corners flashed again and again: vertices without memory, its rings are shared.</summary>
    private static string Image(int flashes, bool isWhole = true)
    {
        const int Corners = 4_000;
        StringBuilder text = new(isWhole ? "%FSLAX46Y46*%\n%MOMM*%\n" : "");
        text.Append(CultureInfo.InvariantCulture, $"%AMWHEEL*4,1,{Corners}");
        for (int i = 0; i <= Corners; i++)
        {
            double angle = 2 * Math.PI * i / Corners;
            text.Append(CultureInfo.InvariantCulture, $",{10 * Math.Cos(angle):0.000000},{10 * Math.Sin(angle):0.000000}");
        }

        text.Append(",0*%\n%ADD10WHEEL*%\nD10*\n");
        for (int i = 0; i < flashes; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"X{i}000Y0D03*\n");
        }

        return text.Append(isWhole ? "M02*\n" : "").ToString();
    }

    private string Archive(int files, int megabytesEach)
    {
        string path = Path.Combine(_folder, "board.zip");
        using ZipArchive archive = ZipFile.Open(path, ZipArchiveMode.Create);
        byte[] blanks = new byte[1 << 20];
        Array.Fill(blanks, (byte)'\n');
        for (int i = 0; i < files; i++)
        {
            using Stream entry = archive.CreateEntry($"{i}.gbr").Open();
            for (int j = 0; j < megabytesEach; j++)
            {
                entry.Write(blanks);
            }
        }

        return path;
    }
}
