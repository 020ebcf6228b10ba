using System.IO.Compression;
using System.Text;
using CopperPath.Brief;
using CopperPath.Core.Tests.Brief;
using CopperPath.Core.Tests.Reading.Gerber;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Drill;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Fuzzing;

/// <summary>The readers that strangers' files reach first.</summary>
internal static class FuzzTargets
{
    internal const string DrillSample = """
        M48
        ;FILE_FORMAT=4:4
        ; #@! TF.FileFunction,Plated,1,4,PTH
        METRIC,TZ,0000.0000
        FMAT,2
        ; #@! TA.AperFunction,Plated,PTH,ViaDrill
        T1C0.3F200S65
        ;TYPE=NON_PLATED
        T2C1.0
        %
        G90
        G05
        T1
        X15000Y20000
        X1.5Y2.25
        R3X2.0
        M25
        X1.0Y1.0G85X3.0
        M01
        R2M02X5.0Y0.0
        M08
        T2
        G00X5.0Y0.0
        M15
        G03X0.0Y5.0A5.0
        G01X-5.0
        G02X5.0Y5.0I5.0J0.0
        M16
        G05
        G91
        X1.0
        G93X0Y0
        M30
        """;

    private static readonly string[] GerberExtras =
    [
        "%TF.FileFunction,Copper,L1,Top*%%TF.FilePolarity,Negative*%G04 #@! TO.N,A\\u002CB*X0Y0D03*%TO.P,U1,7,VIN*%%TO.C,U1*%%TD.N*%%TD*%",
        "%ADD10C,1*%%ABD20*%%ABD21*%D10*X0Y0D03*%AB*%D21*%LR30*%%LS0.5*%%LMXY*%X1Y1D03*%AB*%D20*%LPC*%X0Y0D03*%SRX2Y3I1.5J2*%X0Y0D03*%SR*%",
        "%AMM*0 note*$4=$1x2+($2-$3)/2*1,1,$4,0,0,$3*20,1,.1,0,0,1,1,0*6,0,0,4,.2,.2,3,.1,5,0*7,0,0,4,2,.3,45*2,0,1,0,0,1,1,0*%%ADD10M,1X2X3*%D10*X0Y0D03*",
    ];

    public static FuzzTarget Gerber(int seed)
    {
        string head = "%FSLAX34Y34*%%MOMM*%\n";
        return new FuzzTarget(
            "Gerber",
            new Mutator(
                seed,
                [.. ConformanceCases.All.Select(c => c.Text).Concat(GerberExtras.Select(e => head + e + "M02*")).Select(Ascii)],
                [.. "%*,$XYIJDGMABFSLTO0123456789.+-()/=x\r\n \0\u007F"u8],
                Fragments(
                    "%SRX1000000000Y1000000000I1J1*%", "%SRX100Y90I.1J.1*%", "%ABD20*%", "%AB*%", "%LPC*%", "%LR45*%", "%LS999999999*%",
                    "D20*X0Y0D03*", "G36*", "G37*", "G74*", "G75*G02*", "%AMM*", "1,1,((((((((((1))))))))))", "%MOIN*%", "%FSTIX77Y77*%",
                    "4,1,9999999,", "6,0,0,9,.00001,0,99999,0,0,0*", "X99999999Y-99999999D01*", "%TO.N,", "G04 #@! TA.AperFunction,")),
            IsGerberRefused);
    }

    public static FuzzTarget Drill(int seed) => new(
        "drill",
        new Mutator(
            seed,
            [Ascii(DrillSample), Ascii("M48\nINCH,LZ\nT01C0.0400\n%\nT01\nX015Y01\nX02G85Y03\nM30\n"), Ascii("%\nT1C.02\nT1\nX1Y1\nX2\nR9Y.1\nM30\n")],
            [.. "\n\r ;,%XYIJRTCGMAFS0123456789.+-#@!\0\u007F"u8],
            Fragments(
                "\nR1000000000X1\n", "\nR999M02X1Y1\n", "\nM25\n", "\nM01\n", "\nM08\n", "\nM71\n", "\nM72\n", "\nG91\n", "\nICI,ON\n",
                "\nT1C1e9\n", "\nX99999999Y99999999\n", "G85", "\nG02X0Y0A", "\nM15\n", "\nM16\n", "\nINCH,LZ\n", ";FILE_FORMAT=9:9\n")),
        bytes =>
        {
            DrillReading reading = DrillReader.Read("mutant.drl", bytes);
            bool refused = reading.Diagnostics.Any(d => d.Severity == Severity.Error);
            (refused || reading.Artwork is not null).ShouldBeTrue("no holes, and no reason");
            (reading.Artwork?.Features ?? []).All(feature => feature.ToolDiameterNm > 0 && feature.Path.Length > 0)
                .ShouldBeTrue("a hole without size or place");

            return refused;
        });

    public static FuzzTarget Brief(int seed) => new(
        "brief",
        new Mutator(
            seed,
            [Encoding.UTF8.GetBytes(ExampleBrief.Full)],
            [.. "abz019 \t\n:-,.{}[]&*!|>'\"%@`#?~\\\uFEFF\0\u00B5"u8],
            Fragments("&a [*a,*a]", "{{{{{{{{{{", "[[[[[[[[[[", "- - - - - -", "!!x ", "%YAML 1.2\n", "--- ", "? ", "|\n", "1e999 A", "0x10", "<<: ")),
        bytes =>
        {
            // Damaged UTF-8 also stands for what no file can hold but a caller can pass: half a surrogate pair.
            string text = Encoding.UTF8.GetString(bytes).Replace('\uFFFD', '\uD800');
            BriefReading reading = BriefReader.Read("mutant.yaml", text);
            bool refused = reading.Diagnostics.Any(d => d.Severity == Severity.Error);
            refused.ShouldBe(reading.Brief is null);
            int lines = text.Count(c => c is '\n' or '\r') + 1;
            reading.Diagnostics.All(d => d.Found.Length > 0 && d.Expected.Length > 0 && d.Position.Line <= lines + 1)
                .ShouldBeTrue("a remark without words or beyond the text");
            (reading.Brief?.Nets ?? []).All(net => Math.Abs(net.Terminals.Sum(t => t.CurrentA)) <= 1e-6)
                .ShouldBeTrue("currents that do not balance");

            return refused;
        });

    /// <summary>Archives whose own bytes are damaged: nearly all are to be refused.</summary>
    /// <param name="seed">Seed of the mutator.</param>
    /// <param name="folder">Where each input is written for the reader to open.</param>
    public static FuzzTarget Zip(int seed, string folder)
    {
        string path = Path.Combine(folder, "mutant.zip");
        return new FuzzTarget(
            "archive, damaged",
            new Mutator(
                seed,
                [
                    Archive(CompressionLevel.Optimal, ("top.gbr", "%TF.FileFunction,Copper,L1,Top*%%FSLAX34Y34*%%MOMM*%M02*"), ("a.drl", DrillSample)),
                    Archive(CompressionLevel.NoCompression, ("b/outline.gko", "%FSLAX34Y34*%%MOMM*%M02*"), ("b/t.gtl", "G04 x*"), ("b/", "")),
                    Archive(CompressionLevel.Optimal, ("zeros.gbr", new string('0', 20_000)), ("../out.gbr", "x"), ("c/d/e.txt", "y")),
                ],
                [.. "PK\u0001\u0002\u0003\u0004\u0005\u0006\0\b/\\.:"u8, 0xFF, 0x7F, 0x80],
                [[0x50, 0x4B, 1, 2], [0x50, 0x4B, 3, 4], [0x50, 0x4B, 5, 6], [0xFF, 0xFF, 0xFF, 0xFF], [0, 0, 0, 0], [0xFF, 0xFF, 0xFF, 0x0F], .. Fragments("../", "C:", "/")]),
            bytes => IsArchiveRefused(path, bytes));
    }

    /// <summary>Whole archives of files with damaged names and contents.</summary>
    /// <param name="seed">Seed of the mutator.</param>
    /// <param name="folder">Where each input is written for the reader to open.</param>
    public static FuzzTarget ZipOfDamagedFiles(int seed, string folder)
    {
        string path = Path.Combine(folder, "mutant.zip");
        string board = "top.gtl\0%TF.FileFunction,Copper,L1,Top*%%FSLAX34Y34*%%MOMM*%M02*\0board/in1.g2\0%FSLAX34Y34*%%MOMM*%%ADD10C,1*%D10*X0Y0D03*M02*\0"
            + "outline.gko\0G04 x*%FSLAX34Y34*%M02*\0pth.drl\0" + DrillSample + "\0job.gbrjob\0{\"FilesAttributes\":[{\"Path\":\"top.gtl\"}]}\0n.ipc\0317A";
        return new FuzzTarget(
            "archive of damaged files",
            new Mutator(
                seed,
                [Ascii(board), Ascii("a-F_Cu.gbr\0%TF.FilePolarity,Negative*%\0a-B_Cu.gbr\0x\0a-NPTH.drl\0M48\nMETRIC\nT1C1\n%\nM30")],
                [.. "\0\0./\\:*%,MTFGX0123456789-_ \n"u8],
                Fragments("../", "\0/", "\0C:\\", "con", ".gbr\0", ".drl\0", ".gbrjob\0{", "M48\n", "%TF.FileFunction,Copper,L999999999999,Bot*%", "%TF.FileFunction,")),
            bytes => IsArchiveRefused(path, Packed(bytes)));
    }

    /// <summary>An archive of entries written as name, zero, content, zero, and so on.</summary>
    private static byte[] Packed(byte[] bytes)
    {
        string[] parts = Encoding.Latin1.GetString(bytes).Split('\0');
        return Archive(
            CompressionLevel.Fastest,
            [.. Enumerable.Range(0, parts.Length / 2).Select(i => (parts[2 * i], parts[(2 * i) + 1])).Where(entry => entry.Item1.Length > 0)]);
    }

    private static bool IsArchiveRefused(string path, byte[] bytes)
    {
        File.WriteAllBytes(path, bytes);
        BoardSource source = BoardSource.Open(path);
        BoardIdentification identified = LayerIdentifier.Identify(source, []);
        bool refused = source.Diagnostics.Any(d => d.Severity == Severity.Error);
        (refused || source.Files.Count > 0).ShouldBeTrue("no files, and no reason");
        source.Files.All(f => f.Name.AsSpan().IndexOfAny('/', '\\') < 0).ShouldBeTrue("a name that is a path");
        identified.Files.Count.ShouldBe(source.Files.Count);
        return refused;
    }

    private static bool IsGerberRefused(byte[] bytes)
    {
        GerberReading reading = GerberReader.Read("mutant.gbr", bytes);
        bool refused = reading.Diagnostics.Any(d => d.Severity == Severity.Error);
        refused.ShouldBe(reading.Artwork is null);
        if (reading.Artwork is { } artwork)
        {
            BoxNm limit = BoxNm.Of([new(-3 * PointNm.LimitNm, -3 * PointNm.LimitNm), new(3 * PointNm.LimitNm, 3 * PointNm.LimitNm)]);
            limit.Including(artwork.Bounds).ShouldBe(limit);
            artwork.Contours.All(line => line.Length > 0).ShouldBeTrue("a centre line without points");
        }

        return refused;
    }

    private static byte[] Archive(CompressionLevel level, params (string Name, string Text)[] entries)
    {
        using MemoryStream stream = new();
        using (ZipArchive archive = new(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach ((string name, string text) in entries)
            {
                using Stream content = archive.CreateEntry(name, level).Open();
                content.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        return stream.ToArray();
    }

    private static byte[] Ascii(string text) => Encoding.ASCII.GetBytes(text);

    private static byte[][] Fragments(params string[] texts) => [.. texts.Select(Encoding.UTF8.GetBytes)];
}
