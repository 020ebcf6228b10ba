using System.Globalization;
using System.Text.RegularExpressions;
using CopperPath.Geometry;
using CopperPath.Reading.Drill;

namespace CopperPath.Core.Tests.Reading.Drill;

/// <summary>
/// Formats found from copper. The expected shares (740 of 750, 384 of 388) were counted when the boards were
/// gathered, by another program; flash centres are taken here by a few lines that share no code with the readers.
/// </summary>
public partial class DrillFormatInferenceTests
{
    [Theory]
    [InlineData("eez-dcp405-r4", "EEZ DIB DCP405 r4B2.TXT", "EEZ DIB DCP405 r4B2.GTL", 750, 740)]
    [InlineData("micro-driver-v2", "microDriver_v2.drd", "microDriver_v2.cmp", 388, 384)]
    public void UndeclaredInchFilesAreFoundToBe25WithLeadingZerosOmitted(
        string board, string drill, string copper, int holes, int onPads)
    {
        byte[] bytes = File.ReadAllBytes(SharedData.Require("boards-open", board, drill));
        IReadOnlyList<PointNm> pads = FlashCentres(SharedData.Require("boards-open", board, copper));

        DrillReading undecided = DrillReader.Read(drill, bytes);
        DrillInference inference = DrillFormatInference.Infer(drill, bytes, pads, BoxNm.Of(pads));

        undecided.Artwork.ShouldBeNull();
        undecided.NeedsFormat.ShouldBeTrue();
        inference.Chosen.ShouldBe(new DrillFormat(DrillUnit.Inch, OmittedZeros.Leading, 2, 5));
        inference.Evidence[0].OnPadShare.ShouldBe((double)onPads / holes, tolerance: 0.5 / holes);
        inference.Evidence[1].OnPadShare.ShouldBeLessThan(0.05);
        DrillReader.Read(drill, bytes, inference.Chosen).Artwork.ShouldNotBeNull().Features.Count.ShouldBe(holes);
    }

    [Theory]
    [InlineData("simplefoc-powershield", "SimpleFOCDriver.TXT", "SimpleFOCDriver.GTL")]
    [InlineData("sonata-one-r09", "cheriot-test-RoundHoles.NCDRILL", "cheriot-test.GTL")]
    public void DeclaredFormatIsConfirmedByTheCopper(string board, string drill, string copper)
    {
        byte[] bytes = File.ReadAllBytes(SharedData.Require("boards-open", board, drill));
        IReadOnlyList<PointNm> pads = FlashCentres(SharedData.Require("boards-open", board, copper));

        DrillInference inference = DrillFormatInference.Infer(drill, bytes, pads, BoxNm.Of(pads));

        inference.Evidence.ShouldHaveSingleItem();
        inference.Chosen.ShouldBe(inference.Evidence[0].Format);
        inference.Chosen!.Zeros.ShouldBe(OmittedZeros.Trailing);
    }

    [Fact]
    public void HolesThatHitNoPadsGiveNoFormatButTheEvidence()
    {
        byte[] bytes = "M48\nM72\nT1C0.04\n%\nT1\nX312843Y650300\nX350143Y668250\nM30\n"u8.ToArray();

        DrillInference inference = DrillFormatInference.Infer("f.txt", bytes, [new PointNm(5, 5)], new BoxNm(0, 0, 1_000_000, 1_000_000));

        inference.Chosen.ShouldBeNull();
        inference.Evidence.Count.ShouldBeGreaterThan(3);
        inference.Evidence.ShouldAllBe(e => e.Score < DrillFormatInference.LeastScore);
        inference.Evidence[0].ToString().ShouldContain("on pads");
    }

    [Fact]
    public void DecodingsThatGiveTheSameHolesCountAsOne()
    {
        // Read from the right, 2.4, 3.3 and so on differ only in where the point stands: 2.4 and 4.4 are the same.
        byte[] bytes = "M48\nM72\nT1C0.04\n%\nT1\nX10000Y20000\nM30\n"u8.ToArray();
        PointNm pad = new(25_400_000, 50_800_000);

        DrillInference inference = DrillFormatInference.Infer("f.txt", bytes, [pad], new BoxNm(0, 0, 60_000_000, 60_000_000));

        inference.Chosen.ShouldBe(new DrillFormat(DrillUnit.Inch, OmittedZeros.Leading, 2, 4));
        inference.Evidence[0].SameAs.ShouldContain(new DrillFormat(DrillUnit.Inch, OmittedZeros.Leading, 4, 4));
    }

    [Fact]
    public void AmbiguousHolesAreRefused()
    {
        // One hole on each of two pads that lie ten times as far out: 2.4 and 2.5 explain it equally well.
        byte[] bytes = "M48\nM72\nT1C0.04\n%\nT1\nX10000Y10000\nM30\n"u8.ToArray();
        PointNm[] pads = [new(25_400_000, 25_400_000), new(2_540_000, 2_540_000)];

        DrillFormatInference.Infer("f.txt", bytes, pads, new BoxNm(0, 0, 30_000_000, 30_000_000)).Chosen.ShouldBeNull();
    }

    /// <summary>Flash centres of a plain Gerber file: leading zeros omitted, digits and unit from its FS and MO.</summary>
    private static List<PointNm> FlashCentres(string path)
    {
        string text = File.ReadAllText(path);
        int decimals = FormatStatement().Match(text).Groups[1].Value[0] - '0';
        decimal nmPerCount = (text.Contains("%MOIN*%", StringComparison.Ordinal) ? 25_400_000m : 1_000_000m) / (decimal)Math.Pow(10, decimals);
        List<PointNm> centres = [];
        decimal x = 0;
        decimal y = 0;
        foreach (Match match in Operation().Matches(text))
        {
            x = match.Groups["x"].Success ? decimal.Parse(match.Groups["x"].Value, CultureInfo.InvariantCulture) : x;
            y = match.Groups["y"].Success ? decimal.Parse(match.Groups["y"].Value, CultureInfo.InvariantCulture) : y;
            if (match.Groups["code"].Value == "3")
            {
                centres.Add(new PointNm((long)decimal.Round(x * nmPerCount), (long)decimal.Round(y * nmPerCount)));
            }
        }

        return centres;
    }

    [GeneratedRegex(@"%FSLAX\d(\d)")]
    private static partial Regex FormatStatement();

    [GeneratedRegex(@"(?<=[\n*])(?:G0[123])?(?:X(?<x>[+-]?\d+))?(?:Y(?<y>[+-]?\d+))?(?:I[+-]?\d+)?(?:J[+-]?\d+)?D0?(?<code>[123])\*")]
    private static partial Regex Operation();
}
