using System.Text;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.Netlist;

namespace CopperPath.Core.Tests.Reading.Netlist;

/// <summary>Records written by hand to the column table of the project's format digest, section 3 (IPC-D-356A).</summary>
public class NetlistReaderTests
{
    private const string ThroughHole = "317VBUS             U1    -1   MD0300PA00X+012000Y-005500X0600Y0600R000 S0";
    private const string SurfacePad = "327NNAME1           U12   -A14        A02X+000100Y+000200X0600Y0200R090 S3";

    [Fact]
    public void ThroughHoleRecordIsCutAtItsColumns()
    {
        NetlistPoint point = Read("P  UNITS CUST 0", ThroughHole, "999").Points.ShouldHaveSingleItem();

        point.Kind.ShouldBe(NetlistPointKind.ThroughHole);
        (point.Net, point.Component, point.Pin).ShouldBe(("VBUS", "U1", "1"));
        point.IsMidNet.ShouldBeTrue();
        point.HoleDiameterNm.ShouldBe(762_000); // 0.0300 in = 0.762 mm
        point.IsPlated.ShouldBe(true);
        point.AccessLayer.ShouldBe(0);
        point.Location.ShouldBe(new PointNm(30_480_000, -13_970_000)); // 1.2 in, -0.55 in
        point.Position.ShouldBe(new SourcePosition("board.ipc", 2, 1));
    }

    [Fact]
    public void AliasStandsForTheLongNetName()
    {
        NetlistPoint point = Read("P  UNITS CUST 1", "P  NNAME1  /Power stage/PHASE_A", SurfacePad, "999").Points.ShouldHaveSingleItem();

        point.Net.ShouldBe("/Power stage/PHASE_A");
        (point.Component, point.Pin, point.AccessLayer).ShouldBe(("U12", "A14", 2));
        point.Location.ShouldBe(new PointNm(100_000, 200_000)); // 0.1 mm, 0.2 mm
        point.HoleDiameterNm.ShouldBeNull();
        point.IsPlated.ShouldBeNull();
    }

    [Theory]
    [InlineData("CUST 0", 2_540)]
    [InlineData("CUST 1", 1_000)]
    [InlineData("CUST 2", 2_540)]
    [InlineData("SI", 1_000)]
    public void UnitCodesScaleTheCounts(string unit, long countNm) =>
        Read($"P  UNITS {unit}", ThroughHole, "999").Points[0].Location.X.ShouldBe(12_000 * countNm);

    [Fact]
    public void UnknownUnitRejectsTheNetlist()
    {
        NetlistReading reading = Reading("P  UNITS CUST 7", ThroughHole, "999");

        reading.Netlist.ShouldBeNull();
        reading.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "board.ipc:1:1: error NTL002: found units 'CUST 7'; expected one of CUST 0, CUST 1, CUST 2 or SI, once, before the first point");
    }

    [Fact]
    public void UnconnectedPointHasNoNet() =>
        Read("P  UNITS SI", "327N/C              U2    -3          A01X+000100Y+000200X0600Y0200R000 S0", "999").Points[0].Net.ShouldBeNull();

    [Fact]
    public void RecordOffItsColumnsIsReadByLettersAndSaidSo()
    {
        NetlistReading reading = Reading("P  UNITS SI", "317GND         U3-7   D0300PA00X+001000Y-002000X0600Y0600R000 S0", "999");

        reading.Netlist.ShouldNotBeNull().Points.ShouldHaveSingleItem().Location.ShouldBe(new PointNm(1_000_000, -2_000_000));
        reading.Netlist.Points[0].Net.ShouldBe("GND");
        reading.Netlist.Points[0].IsPlated.ShouldBe(true);
        reading.Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(NetlistCode.Unaligned);
    }

    [Fact]
    public void DamagedRecordIsDroppedAndCounted()
    {
        NetlistReading reading = Reading("P  UNITS SI", ThroughHole, "317GND             U1    -2    D0300PA00X+01", "junk", "378NET L01 0010 X1Y1", "999");

        reading.Netlist.ShouldNotBeNull().Points.Count.ShouldBe(1);
        reading.Diagnostics.Select(d => $"{d.Position.Line} {d.Code}").ShouldBe(["3 NTL003", "4 NTL003", "0 NTL005", "0 NTL009"]);
        reading.Diagnostics[^1].Found.ShouldBe("2 records that could not be read");
    }

    [Theory]
    [InlineData("", "board.ipc: error NTL001: found an empty file; expected a netlist in plain text")]
    [InlineData("P  UNITS SI\0", "board.ipc: error NTL001: found bytes that are not text; expected a netlist in plain text")]
    [InlineData("P  UNITS SI\nP  UNITS CUST 0\n999", "board.ipc:2:1: error NTL002: found units 'CUST 0'; expected one of CUST 0, CUST 1, CUST 2 or SI, once, before the first point")]
    [InlineData("P  UNITS SI\njunk\n999", "board.ipc:2:1: warning NTL003: found 'junk'; expected a record number, P or C in column 1")]
    [InlineData("P  UNITS SI\n317GND X1\n999", "board.ipc:2:1: warning NTL003: found '317GND X1'; expected X and Y with their digits in columns 42 to 57")]
    [InlineData("P  UNITS SI\n317GND U3-7 D0300PA00X+001000Y-002000\n999", "board.ipc:2:1: warning NTL004: found a record off its columns; expected the columns of the format; read by its letters")]
    [InlineData("P  UNITS SI\n378NET L01 0010 X1Y1\n999", "board.ipc: note NTL005: found 1 records 378; expected records 307, 317, 327 and 367, which name points")]
    [InlineData("P  UNITS SI\n379NET L01\n999", "board.ipc: note NTL005: found 1 records 379; expected records 307, 317, 327 and 367, which name points")]
    [InlineData("P  UNITS SI\n389BOARD_EDGE X1Y1\n999", "board.ipc: note NTL005: found 1 records 389; expected records 307, 317, 327 and 367, which name points")]
    [InlineData("P  UNITS SI", "board.ipc:1:1: warning NTL006: found end of file without record 999; expected 999 at the end; the file may be cut short")]
    [InlineData("P  UNITS SI\nP  IMAGE PANEL\n999", "board.ipc:2:1: warning NTL007: found image 'PANEL'; expected the primary image; others are not read")]
    [InlineData(ThroughHole + "\n999", "board.ipc:1:1: note NTL008: found points before any unit; expected P  UNITS; read as CUST 0, the default of the format")]
    public void EachFaultIsToldToTheWord(string text, string expected) =>
        NetlistReader.Read("board.ipc", Encoding.ASCII.GetBytes(text)).Diagnostics[0].ToString().ShouldBe(expected);

    [Fact]
    public void FileWithoutEndRecordIsSuspect() =>
        Reading("P  UNITS SI", ThroughHole).Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(NetlistCode.NoEnd);

    private static BoardNetlist Read(params string[] lines)
    {
        NetlistReading reading = Reading(lines);
        reading.Diagnostics.ShouldBeEmpty();
        return reading.Netlist.ShouldNotBeNull();
    }

    private static NetlistReading Reading(params string[] lines) =>
        NetlistReader.Read("board.ipc", Encoding.ASCII.GetBytes(string.Join('\n', lines)));
}
