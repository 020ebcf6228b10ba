using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Reading.Drill;

namespace CopperPath.Core.Tests.Reading.Drill;

/// <summary>
/// Drill files of real boards. Hole and slot counts were taken from the files with line-counting shell commands
/// (coordinate lines, G85 lines and M15 lines), not with the reader.
/// </summary>
public class SharedDrillTests
{
    [Theory]
    [InlineData("bitaxe-ultra/bitaxeUltra-NPTH.drl", 10, 0, "inch, decimal points", 1, 4)]
    [InlineData("bitaxe-ultra/bitaxeUltra-PTH.drl", 258, 4, "inch, decimal points", 1, 4)]
    [InlineData("eez-aux-ps/EEZ DIB AUX-PS-NPTH.drl", 6, 0, "millimetre, decimal points", 1, 2)]
    [InlineData("eez-aux-ps/EEZ DIB AUX-PS-PTH.drl", 249, 0, "millimetre, decimal points", 1, 2)]
    [InlineData("opsis/HDMI2USB.drl", 1717, 34, "inch, decimal points", 0, 0)]
    [InlineData("opsis/HDMI2USB-NPTH.drl", 10, 0, "inch, decimal points", 0, 0)]
    [InlineData("esp32-poe-b2/ESP32-PoE_Rev_B-PTH.drl", 237, 4, "inch, decimal points", 0, 0)]
    [InlineData("picopd-v12/PicoPD-PTH.drl", 139, 4, "inch, decimal points", 0, 0)]
    [InlineData("vesc-4/BLDC_4-NPTH.drl", 2, 0, "inch, decimal points", 0, 0)]
    [InlineData("esp32-poe-b2/ESP32-PoE_Rev_B-NPTH.drl", 10, 0, "inch, decimal points", 0, 0)]
    [InlineData("picopd-v12/PicoPD-NPTH.drl", 4, 0, "inch, decimal points", 0, 0)]
    [InlineData("simplefoc-powershield/SimpleFOCDriver.TXT", 99, 0, "inch, 2.5, trailing zeros omitted (declared)", 0, 0)]
    [InlineData("sonata-one-r09/cheriot-test-RoundHoles.NCDRILL", 1591, 0, "millimetre, 4.4, trailing zeros omitted (declared)", 0, 0)]
    [InlineData("sonata-one-r09/cheriot-test-SlotHoles.NCDRILL", 0, 8, "millimetre, 4.4, trailing zeros omitted (declared)", 0, 0)]
    [InlineData("thunderscope-r53/Thunderscope_Rev5.3.drl", 3866, 11, "inch, decimal points", 1, 6)]
    [InlineData("vesc-4/BLDC_4.drl", 217, 0, "inch, decimal points", 0, 0)]
    public void DeclaredFilesAreReadWhole(string path, int holes, int slots, string format, int firstLayer, int lastLayer)
    {
        DrillReading reading = Read(path);

        reading.Diagnostics.Where(d => d.Severity == Severity.Error).ShouldBeEmpty();
        DrillArtwork artwork = reading.Artwork.ShouldNotBeNull();
        artwork.Features.Count(f => f.IsRoundHole).ShouldBe(holes);
        artwork.Features.Count(f => !f.IsRoundHole).ShouldBe(slots);
        reading.Format.ShouldBe(format);
        (artwork.FirstLayer, artwork.LastLayer).ShouldBe((firstLayer, lastLayer));
    }

    private static DrillReading Read(string path)
    {
        string full = SharedData.Require(["boards-open", .. path.Split('/')]);
        return DrillReader.Read(Path.GetFileName(full), File.ReadAllBytes(full));
    }
}
