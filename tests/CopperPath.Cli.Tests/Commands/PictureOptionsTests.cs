using System.Buffers.Binary;
using System.Text;
using System.Xml.Linq;
using CopperPath.Cli.Tests.Report;

namespace CopperPath.Cli.Tests.Commands;

public sealed class PictureOptionsTests(ReviewedNeck review) : IClassFixture<ReviewedNeck>
{
    private static readonly string[] s_names = ["layer-1", "layer-2", "rise-layer-1", "rise-layer-2"];

    [Fact]
    public void PicturesAreRasterUnlessAskedOtherwise() =>
        Pictures(review.Folder).ShouldBe(s_names.Select(name => name + ".png"));

    /// <summary>
    /// Beginnings of the formats: PDF from ISO 32000-1, section 7.5.2; PNG with its width at byte 16 from ISO/IEC 15948,
    /// section 11.2.2; the SVG is read by the framework's XML reader.
    /// </summary>
    [Fact]
    public void EachFormatAskedForIsWrittenAsWideAsAskedFor()
    {
        string folder = Path.Combine(review.Folder, "formats");

        CommandRun run = CommandRun.Of("check", review.Brief, "--output", folder, "--pictures", "svg,pdf,png", "--picture-width", "900");

        run.ExitCode.ShouldBe(1);
        Pictures(folder).ShouldBe(s_names.SelectMany(name => new[] { name + ".pdf", name + ".png", name + ".svg" }));
        foreach (string name in s_names)
        {
            byte[] png = File.ReadAllBytes(Path.Combine(folder, name + ".png"));
            BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)).ShouldBe(900);
            Encoding.ASCII.GetString(File.ReadAllBytes(Path.Combine(folder, name + ".pdf")), 0, 5).ShouldBe("%PDF-");
            XElement svg = XDocument.Load(Path.Combine(folder, name + ".svg")).Root!;
            svg.Attribute("viewBox")!.Value.ShouldStartWith("0 0 900 ");
            svg.Descendants().Where(element => element.Name.LocalName == "text").Select(element => element.Value)
                .ShouldContain(text => text.Contains("Current density", StringComparison.Ordinal) || text.Contains("Temperature rise", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("599")]
    [InlineData("8001")]
    [InlineData("-1800")]
    public void AWidthThatCanNotBeDrawnIsRefusedBeforeAnyWork(string width)
    {
        string folder = Path.Combine(review.Folder, "none");

        CommandRun run = CommandRun.Of("check", review.Brief, "--output", folder, $"--picture-width={width}");

        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldHaveSingleItem().Trim().ShouldBe($"--picture-width: error CMD004: found {width}; expected 600 to 8000 pixels");
        Directory.Exists(folder).ShouldBeFalse();
    }

    [Fact]
    public void TimingsNameTheStagesOfTheReportAndTheWhole()
    {
        CommandRun run = CommandRun.Of("check", review.Brief, "--output", Path.Combine(review.Folder, "timed"), "--timings");

        string[] stages = [.. run.Output.Split('\n').SkipWhile(line => !line.StartsWith("Stage ", StringComparison.Ordinal)).Skip(2)
            .Select(line => line.Split("  ")[0].Trim()).Where(stage => stage.Length > 0)];
        stages.TakeLast(4).ShouldBe(["Judging", "Drawing and reporting", "Writing files", "Whole command"]);
    }

    private static string[] Pictures(string folder) => [.. Directory.EnumerateFiles(folder)
        .Select(file => Path.GetFileName(file)).Where(name => name.Contains("layer-", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
}
