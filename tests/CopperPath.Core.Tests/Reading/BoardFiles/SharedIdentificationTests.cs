using CopperPath.Diagnostics;
using CopperPath.Reading.BoardFiles;

namespace CopperPath.Core.Tests.Reading.BoardFiles;

/// <summary>
/// Roles of all files of eleven real boards, written down by hand from the boards' own notes, their file lists and
/// the attributes in the files. Files not named must come out as having no bearing on the copper.
/// </summary>
public class SharedIdentificationTests
{
    public static TheoryData<string, int, string> Boards => new()
    {
        {
            "bitaxe-ultra", 4,
            """
            bitaxeUltra-F_Cu.gbr = Copper 1 Declared
            bitaxeUltra-In1_Cu.gbr = Copper 2 Declared
            bitaxeUltra-In2_Cu.gbr = Copper 3 Declared
            bitaxeUltra-B_Cu.gbr = Copper 4 Declared
            bitaxeUltra-F_Mask.gbr = SolderMaskTop Declared
            bitaxeUltra-B_Mask.gbr = SolderMaskBottom Declared
            bitaxeUltra-F_Paste.gbr = PasteTop Declared
            bitaxeUltra-B_Paste.gbr = PasteBottom Declared
            bitaxeUltra-F_Silkscreen.gbr = LegendTop Declared
            bitaxeUltra-B_Silkscreen.gbr = LegendBottom Declared
            bitaxeUltra-Edge_Cuts.gbr = Profile Declared
            bitaxeUltra-PTH.drl = Drill Plated 1-4 Declared
            bitaxeUltra-NPTH.drl = Drill NonPlated 1-4 Declared
            """
        },
        {
            "eez-aux-ps", 2,
            """
            EEZ DIB AUX-PS-F_Cu.gbr = Copper 1 Declared
            EEZ DIB AUX-PS-B_Cu.gbr = Copper 2 Declared
            EEZ DIB AUX-PS-F_Mask.gbr = SolderMaskTop Declared
            EEZ DIB AUX-PS-B_Mask.gbr = SolderMaskBottom Declared
            EEZ DIB AUX-PS-F_Paste.gbr = PasteTop Declared
            EEZ DIB AUX-PS-B_Paste.gbr = PasteBottom Declared
            EEZ DIB AUX-PS-F_Silkscreen.gbr = LegendTop Declared
            EEZ DIB AUX-PS-B_Silkscreen.gbr = LegendBottom Declared
            EEZ DIB AUX-PS-Edge_Cuts.gbr = Profile Declared
            EEZ DIB AUX-PS-PTH.drl = Drill Plated 1-2 Declared
            EEZ DIB AUX-PS-NPTH.drl = Drill NonPlated 1-2 Declared
            EEZ DIB AUX-PS-PTH-drl_map.gbr = Drawing Declared
            EEZ DIB AUX-PS-NPTH-drl_map.gbr = Drawing Declared
            EEZ DIB AUX-PS-job.gbrjob = JobFile Content
            """
        },
        {
            "eez-dcp405-r4", 4,
            """
            EEZ DIB DCP405 r4B2.GTL = Copper 1 Name
            EEZ DIB DCP405 r4B2.G2L = Copper 2 Name
            EEZ DIB DCP405 r4B2.G3L = Copper 3 Name
            EEZ DIB DCP405 r4B2.GBL = Copper 4 Name
            EEZ DIB DCP405 r4B2.GTS = SolderMaskTop Name
            EEZ DIB DCP405 r4B2.GBS = SolderMaskBottom Name
            EEZ DIB DCP405 r4B2.GTO = LegendTop Name
            EEZ DIB DCP405 r4B2.GBO = LegendBottom Name
            EEZ DIB DCP405 r4B2.GKO = Profile Name
            EEZ DIB DCP405 r4B2.TXT = Drill Unknown Content
            """
        },
        {
            "esp32-poe-b2", 2,
            """
            ESP32-PoE_Rev_B-F.Cu.gbr = Copper 1 Declared
            ESP32-PoE_Rev_B-B.Cu.gbr = Copper 2 Declared
            ESP32-PoE_Rev_B-F.Mask.gbr = SolderMaskTop Declared
            ESP32-PoE_Rev_B-B.Mask.gbr = SolderMaskBottom Declared
            ESP32-PoE_Rev_B-F.Paste.gbr = PasteTop Declared
            ESP32-PoE_Rev_B-B.Paste.gbr = PasteBottom Declared
            ESP32-PoE_Rev_B-F.SilkS.gbr = LegendTop Declared
            ESP32-PoE_Rev_B-B.SilkS.gbr = LegendBottom Declared
            ESP32-PoE_Rev_B-Edge.Cuts.gbr = Profile Declared
            ESP32-PoE_Rev_B-PTH.drl = Drill Plated Content
            ESP32-PoE_Rev_B-NPTH.drl = Drill NonPlated Content
            """
        },
        {
            "micro-driver-v2", 6,
            """
            microDriver_v2.cmp = Copper 1 Name
            microDriver_v2.l2 = Copper 2 Name
            microDriver_v2.l3 = Copper 3 Name
            microDriver_v2.l4 = Copper 4 Name
            microDriver_v2.l5 = Copper 5 Name
            microDriver_v2.sol = Copper 6 Name
            microDriver_v2.stc = SolderMaskTop Name
            microDriver_v2.sts = SolderMaskBottom Name
            microDriver_v2.plc = LegendTop Name
            microDriver_v2.pls = LegendBottom Name
            microDriver_v2.drd = Drill Unknown Content
            pick_and_place.txt = Placement Content
            """
        },
        {
            "opsis", 10,
            """
            HDMI2USB-TOP.gtl = Copper 1 Name
            HDMI2USB-GND1.gbr = Copper 2 Name
            HDMI2USB-SIGNAL1-X.gbr = Copper 3 Name
            HDMI2USB-SIGNAL2-Y.gbr = Copper 4 Name
            HDMI2USB-GND2.gbr = Copper 5 Name
            HDMI2USB-PWR.gbr = Copper 6 Name
            HDMI2USB-SIGNAL3-X.gbr = Copper 7 Name
            HDMI2USB-SIGNAL4-Y.gbr = Copper 8 Name
            HDMI2USB-GND3.gbr = Copper 9 Name
            HDMI2USB-BOTTOM.gbl = Copper 10 Name
            HDMI2USB-F_Mask.gts = SolderMaskTop Name
            HDMI2USB-B_Mask.gbs = SolderMaskBottom Name
            HDMI2USB-F_SilkS.gto = LegendTop Name
            HDMI2USB-B_SilkS.gbo = LegendBottom Name
            HDMI2USB-Edge_Cuts.gbr = Profile Name
            HDMI2USB.drl = Drill Plated Content
            HDMI2USB-NPTH.drl = Drill NonPlated Content
            """
        },
        {
            "picopd-v12", 4,
            """
            PicoPD-F_Cu.gbr = Copper 1 Declared
            PicoPD-In1_Cu.gbr = Copper 2 Declared
            PicoPD-In2_Cu.gbr = Copper 3 Declared
            PicoPD-B_Cu.gbr = Copper 4 Declared
            PicoPD-F_Mask.gbr = SolderMaskTop Declared
            PicoPD-B_Mask.gbr = SolderMaskBottom Declared
            PicoPD-F_Paste.gbr = PasteTop Declared
            PicoPD-B_Paste.gbr = PasteBottom Declared
            PicoPD-F_SilkS.gbr = LegendTop Declared
            PicoPD-B_SilkS.gbr = LegendBottom Declared
            PicoPD-Edge_Cuts.gbr = Profile Declared
            PicoPD-User_Comments.gbr = Drawing Declared
            PicoPD-PTH.drl = Drill Plated Content
            PicoPD-NPTH.drl = Drill NonPlated Content
            positions.csv = Placement Content
            """
        },
        {
            "simplefoc-powershield", 2,
            """
            SimpleFOCDriver.GTL = Copper 1 Name
            SimpleFOCDriver.GBL = Copper 2 Name
            SimpleFOCDriver.GTS = SolderMaskTop Name
            SimpleFOCDriver.GBS = SolderMaskBottom Name
            SimpleFOCDriver.GTP = PasteTop Name
            SimpleFOCDriver.GBP = PasteBottom Name
            SimpleFOCDriver.GTO = LegendTop Name
            SimpleFOCDriver.GBO = LegendBottom Name
            SimpleFOCDriver.GM1 = Profile Name
            SimpleFOCDriver.TXT = Drill Plated Content
            """
        },
        {
            "sonata-one-r09", 8,
            """
            cheriot-test.GTL = Copper 1 Name
            cheriot-test.G1 = Copper 2 Name
            cheriot-test.G2 = Copper 3 Name
            cheriot-test.G3 = Copper 4 Name
            cheriot-test.G4 = Copper 5 Name
            cheriot-test.G5 = Copper 6 Name
            cheriot-test.G6 = Copper 7 Name
            cheriot-test.GBL = Copper 8 Name
            cheriot-test.GTS = SolderMaskTop Name
            cheriot-test.GBS = SolderMaskBottom Name
            cheriot-test.GTP = PasteTop Name
            cheriot-test.GBP = PasteBottom Name
            cheriot-test.GTO = LegendTop Name
            cheriot-test.GBO = LegendBottom Name
            cheriot-test.GM1 = Profile Name
            cheriot-test-RoundHoles.NCDRILL = Drill Unknown Content
            cheriot-test-SlotHoles.NCDRILL = Drill Plated Content
            """
        },
        {
            "thunderscope-r53", 6,
            """
            Thunderscope_Rev5.3-Top Layer.gtl = Copper 1 Declared
            Thunderscope_Rev5.3-Int1 (GND).g1 = Copper 2 Declared
            Thunderscope_Rev5.3-Int2 (Sign).g2 = Copper 3 Declared
            Thunderscope_Rev5.3-Int3 (Sign).g3 = Copper 4 Declared
            Thunderscope_Rev5.3-Int4 (GND).g4 = Copper 5 Declared
            Thunderscope_Rev5.3-Bottom Layer.gbl = Copper 6 Declared
            Thunderscope_Rev5.3-Top Solder.gts = SolderMaskTop Declared
            Thunderscope_Rev5.3-Bottom Solder.gbs = SolderMaskBottom Declared
            Thunderscope_Rev5.3-Top Paste.gtp = PasteTop Declared
            Thunderscope_Rev5.3-Bottom Paste.gbp = PasteBottom Declared
            Thunderscope_Rev5.3-Top Overlay.gto = LegendTop Declared
            Thunderscope_Rev5.3-Bottom Overlay.gbo = LegendBottom Declared
            Thunderscope_Rev5.3-Board Outline.gm1 = Profile Declared
            Thunderscope_Rev5.3-Fab Notes.gbr = Drawing Declared
            Thunderscope_Rev5.3.drl = Drill Unknown 1-6 Declared
            """
        },
        {
            "vesc-4", 4,
            """
            BLDC_4-F_Cu.gtl = Copper 1 Declared
            BLDC_4-In1_Cu.g2 = Copper 2 Declared
            BLDC_4-In2_Cu.g3 = Copper 3 Declared
            BLDC_4-B_Cu.gbl = Copper 4 Declared
            BLDC_4-F_Mask.gts = SolderMaskTop Declared
            BLDC_4-B_Mask.gbs = SolderMaskBottom Declared
            BLDC_4-F_Paste.gtp = PasteTop Declared
            BLDC_4-B_Paste.gbp = PasteBottom Declared
            BLDC_4-F_SilkS.gto = LegendTop Declared
            BLDC_4-B_SilkS.gbo = LegendBottom Declared
            BLDC_4-Edge_Cuts.gm1 = Profile Declared
            BLDC_4.drl = Drill Plated Content
            BLDC_4-NPTH.drl = Drill NonPlated Content
            BLDC_4-all.pos = Placement Content
            """
        },
    };

    [Theory]
    [MemberData(nameof(Boards))]
    public void EveryFileOfARealBoardGetsItsRole(string board, int copperLayers, string expected)
    {
        BoardIdentification identification = Identify(board);

        string[] found = [.. identification.Files.Where(f => f.Role != FileRole.Other).Select(Describe).Order(StringComparer.Ordinal)];
        found.ShouldBe(expected.Split('\n').Order(StringComparer.Ordinal));
        identification.CopperLayerCount.ShouldBe(copperLayers);
        identification.Diagnostics.Where(d => d.Severity == Severity.Error).ShouldBeEmpty();
        identification.Files.ShouldAllBe(f => f.Reason.Length > 0);
    }

    [Fact]
    public void UnstatedStackOrderIsReportedAsAGuessThatCanNotPass()
    {
        BoardIdentification identification = Identify("opsis");

        Diagnostic guess = identification.Diagnostics.Single(d => d.Code == BoardSourceCode.InnerOrderGuessed);
        guess.Severity.ShouldBe(Severity.Warning);
        guess.AffectsCopper.ShouldBeTrue();
        guess.Expected.ShouldContain("2 HDMI2USB-GND1.gbr, 3 HDMI2USB-SIGNAL1-X.gbr");

        // GND1 and GND2 of this board are byte-identical.
        identification.Diagnostics.Single(d => d.Code == BoardSourceCode.IdenticalLayers)
            .Found.ShouldBe("the same bytes as HDMI2USB-GND1.gbr");
    }

    private static BoardIdentification Identify(string board)
    {
        BoardSource source = BoardSource.Open(SharedData.Require("boards-open", board));
        source.Diagnostics.ShouldBeEmpty();
        return LayerIdentifier.Identify(source);
    }

    private static string Describe(IdentifiedFile file)
    {
        string layer = file.CopperLayer > 0 ? $" {file.CopperLayer}" : "";
        string plating = file.Role == FileRole.Drill ? $" {file.Plating}" : "";
        string span = file.Span is null ? "" : $" {file.Span.FirstLayer}-{file.Span.LastLayer}";
        return $"{file.File.Name} = {file.Role}{layer}{plating}{span} {file.Evidence}";
    }
}
