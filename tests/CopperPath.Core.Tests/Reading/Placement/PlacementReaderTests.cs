using System.Text;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.Placement;

namespace CopperPath.Core.Tests.Reading.Placement;

/// <summary>Tables of placements. No standard binds them; the headings are common practice, no source.</summary>
public class PlacementReaderTests
{
    [Fact]
    public void RowIsReadByItsHeadings()
    {
        PlacedPart part = Table("Designator,Mid X,Mid Y,Rotation,Layer,Comment,Footprint", "C10,63.881,-66.421,270.0,top,\"10u, 50V \"\"low\"\"\",C0402")
            .Parts.ShouldHaveSingleItem();

        (part.Designator, part.At, part.RotationDeg, part.Side).ShouldBe(("C10", new PointNm(63_881_000, -66_421_000), 270.0, BoardSide.Top));
        (part.Value, part.Package).ShouldBe(("10u, 50V \"low\"", "C0402"));
        part.Position.ShouldBe(new SourcePosition("p.csv", 2, 1));
    }

    [Theory]
    [InlineData("Ref;PosX;PosY;Rot;Side", "U1;1.5;2;90;bottom")]
    [InlineData("name\tX-axis\tY-axis\tangle\t\tside", "U1  \t1.5 \t 2.0 \t90\t\tB")]
    [InlineData("# Ref    Val   PosX   PosY   Rot  Side", "U1   100n    1.5000    2.0    90.0   bottom")]
    [InlineData("RefDes,Layer,Center-X(mm),Center-Y(mm),Rotation", "U1,BottomLayer,1.5,2,90")]
    [InlineData("Designator,Ref X,Ref Y,Mid X,Mid Y,Rotation,TB", "U1,9,9,1.5,2,90,B")]
    public void DelimitersAndHeadingsOfManyHands(string heading, string row)
    {
        PlacedPart part = Table(heading, row).Parts.ShouldHaveSingleItem();

        (part.Designator, part.At, part.RotationDeg, part.Side).ShouldBe(("U1", new PointNm(1_500_000, 2_000_000), 90.0, BoardSide.Bottom));
    }

    [Theory]
    [InlineData("Designator,X (mm),Y (mm)", "U1,1,2", 1_000_000, true)]
    [InlineData("Designator,X(mil),Y(mil)", "U1,1,2", 25_400, true)]
    [InlineData("Designator,X_inch,Y_inch", "U1,1,2", 25_400_000, true)]
    [InlineData("## Unit = inches, Angle = deg.\nDesignator,X,Y", "U1,1,2", 25_400_000, true)]
    [InlineData("Designator,X,Y", "U1,1mil,2mil", 25_400, true)]
    [InlineData("Designator,X,Y", "U1,1 mm,2 mm", 1_000_000, true)]
    [InlineData("Designator,X,Y", "U1,1,2", 1_000_000, false)]
    public void UnitComesFromHeadingsCommentsOrNumbers(string head, string row, long countNm, bool isStated)
    {
        PlacementTable table = Table(head, row);

        table.Parts[0].At.ShouldBe(new PointNm(countNm, 2 * countNm));
        table.IsUnitStated.ShouldBe(isStated);
    }

    [Theory]
    [InlineData("Designator,X,Y\nU1,1,2\nU2,1,zwei", "p.csv:3:6: warning PLC003: found 'zwei'; expected a length up to 10 m with a decimal point, such as 12.5 or 12.5mm; the row is dropped")]
    [InlineData("Designator;X;Y\nU1;1;2\nU2;1,5;2", "p.csv:3:4: warning PLC003: found '1,5'; expected a length up to 10 m with a decimal point, such as 12.5 or 12.5mm; the row is dropped")]
    [InlineData("Designator,X,Y\nU1,1,2\nU2,99999,2", "p.csv:3:4: warning PLC003: found '99999'; expected a length up to 10 m with a decimal point, such as 12.5 or 12.5mm; the row is dropped")]
    [InlineData("Designator,X,Y\nU1,1,2\nU2,1 ft,2", "p.csv:3:4: warning PLC003: found '1 ft'; expected a length up to 10 m with a decimal point, such as 12.5 or 12.5mm; the row is dropped")]
    [InlineData("Designator,X,Y,Rot\nU1,1,2,0\nU2,1,2,north", "p.csv:3:8: warning PLC003: found the rotation 'north'; expected an angle in degrees, such as 90; the row is dropped")]
    [InlineData("Designator,X,Y\nU1,1,2\nU2,1", "p.csv:3:1: warning PLC004: found 2 fields; expected at least 3; the row is dropped")]
    [InlineData("Designator,X,Y,Value\nU1,1,2,a\nU2,1,2,\"10k", "p.csv:3:8: warning PLC005: found a quote that never ends; expected a quote at the end of the field; the row is dropped")]
    [InlineData("Designator,X,Y,Side\nU1,1,2,top\nU2,1,2,left", "p.csv:3:8: warning PLC006: found the side 'left'; expected top or bottom; the row is dropped")]
    [InlineData("Designator,X,Y\nU1,1,2\nU2,1,2\nU2,3,4", "p.csv:4:1: warning PLC007: found the designator U2 in 2 rows; expected each part once; none of them is used")]
    [InlineData("Unit: mil\nDesignator,X(mm),Y(mm)\nU1,1,2", "p.csv:2:1: warning PLC010: found the unit of the headings after another; expected one unit; the later one holds")]
    public void DamagedRowsAreDroppedWithTheirPlace(string text, string expected)
    {
        PlacementReading reading = Read(text);

        reading.Table.ShouldNotBeNull().Parts.ShouldHaveSingleItem().Designator.ShouldBe("U1");
        reading.Diagnostics.First(d => d.Severity == Severity.Warning).ToString().ShouldBe(expected);
        reading.Diagnostics.ShouldAllBe(d => !d.AffectsCopper);
    }

    [Theory]
    [InlineData("", "p.csv: warning PLC001: found an empty file; expected a table of placements in plain text")]
    [InlineData("a\0b", "p.csv: warning PLC001: found bytes that are not text; expected a table of placements in plain text")]
    [InlineData("Part,Width\nU1,3", "p.csv: warning PLC002: found no line that names the columns; expected headings for designator, x and y, such as Designator,Mid X,Mid Y")]
    public void FileThatIsNoTableIsSetAside(string text, string expected)
    {
        PlacementReading reading = Read(text);

        reading.Table.ShouldBeNull();
        reading.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(expected);
    }

    [Fact]
    public void ManyRemarksAreCountedNotListed()
    {
        PlacementReading reading = Read("Designator,X (mm),Y (mm)\n" + string.Concat(Enumerable.Range(0, 500).Select(i => $"U{i},x,y\n")));

        reading.Diagnostics.Count.ShouldBe(11);
        reading.Diagnostics[^1].Found.ShouldBe("490 more remarks PLC003");
    }

    [Fact]
    public void SeededDamageNeverThrows()
    {
        byte[] whole = Encoding.UTF8.GetBytes("## Unit = mm\nRef,Val,PosX,PosY,Rot,Side\nC2,\"100n, X7R\",83.6930,-127.7620,270.0,bottom\nC3,,1.5mm,2mm,,top\n\n");
        Random random = new(20260913);
        for (int round = 0; round < 5_000; round++)
        {
            byte[] damaged = [.. whole];
            for (int change = random.Next(1, 5); change > 0; change--)
            {
                damaged[random.Next(damaged.Length)] = (byte)random.Next(256);
            }

            PlacementReading reading = PlacementReader.Read("p.csv", damaged);
            (reading.Table is not null || reading.Diagnostics.Count > 0).ShouldBeTrue();
        }
    }

    [Fact]
    public void ValuesWithBlanksMoveTheColumnsBehindThem()
    {
        PlacedPart part = Table("# Ref  Val  Package  PosX  PosY  Rot  Side", "C1 100 n, 50 V C_0603 1.5 2.0 90.0 top").Parts.ShouldHaveSingleItem();

        (part.At, part.RotationDeg, part.Side, part.Value).ShouldBe((new PointNm(1_500_000, 2_000_000), 90.0, BoardSide.Top, null));
    }

    /// <summary>
    /// Counts of rows, and in the last table of rows where a blank stands for the tab before the angle, were taken from
    /// the files with line-counting shell commands.
    /// </summary>
    [Theory]
    [InlineData("picopd-v12/positions.csv", 50, 0, false)]
    [InlineData("vesc-4/BLDC_4-all.pos", 112, 0, true)]
    [InlineData("micro-driver-v2/pick_and_place.txt", 149, 29, false)]
    public void TablesOfRealBoardsAreReadWhole(string path, int rows, int damagedRows, bool isUnitStated)
    {
        string full = SharedData.Require(["boards-open", .. path.Split('/')]);

        PlacementReading reading = PlacementReader.Read(Path.GetFileName(full), File.ReadAllBytes(full));

        reading.Diagnostics.Where(d => d.Severity == Severity.Warning).ShouldAllBe(d => d.Code == PlacementCode.BadNumber);
        reading.Table.ShouldNotBeNull().Parts.Count.ShouldBe(rows - damagedRows);
        reading.Table.IsUnitStated.ShouldBe(isUnitStated);
    }

    private static PlacementTable Table(params string[] lines)
    {
        PlacementReading reading = Read(string.Join('\n', lines));
        reading.Diagnostics.ShouldAllBe(d => d.Code == PlacementCode.NoUnit);
        return reading.Table.ShouldNotBeNull();
    }

    private static PlacementReading Read(string text) => PlacementReader.Read("p.csv", Encoding.UTF8.GetBytes(text));
}
