using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Brief;

public class BriefReaderTests
{
    [Fact]
    public void EveryKeyOfTheFormatReachesTheRecords()
    {
        BriefReading reading = BriefReader.Read("b.yaml", ExampleBrief.Full);

        reading.Diagnostics.ShouldBeEmpty();
        ReviewBrief brief = reading.Brief.ShouldNotBeNull();
        brief.StatedDefaults.ShouldBeEmpty();
        brief.Board.Name.ShouldBe("Furrow compute card");
        brief.Board.Revision.ShouldBe("A");
        brief.Board.Files.ShouldBe("revision-a/x2");
        brief.Board.Layers.Select(l => (l.File, l.Role, l.Number)).ShouldBe(
            [("foo.gbr", FileRole.Copper, 2), ("outline.gbr", FileRole.Profile, null)]);
        DrillFormatAnswer drill = brief.Board.DrillFormats.ShouldHaveSingleItem();
        (drill.File, drill.Unit, drill.IntegerDigits, drill.DecimalDigits, drill.Zeros).ShouldBe(
            ("foo.txt", DrillUnit.Inch, 2, 5, OmittedZeros.Leading));
        StackupSection stackup = brief.Stackup.ShouldNotBeNull();
        stackup.CopperM.ShouldBe([69.6e-6, 35e-6, 35e-6, 70e-6], 1e-18);
        stackup.DielectricM.ShouldBe([0.2e-3, 1e-3, 0.2e-3]);
        stackup.PlatingM.ShouldBe(25e-6);
        stackup.HoleDiameters.ShouldBe(HoleDiameters.Drilled);
        stackup.SolderM.ShouldNotBeNull().ShouldBe(50e-6, 1e-15);
        stackup.SolderAlloy.ShouldBe(SolderAlloy.TinLead);
        brief.AmbientK.ShouldBe(318.15, 1e-12);
        brief.ConductorK.ShouldBe(338.15, 1e-12);
        brief.Accuracy.ShouldBe(0.005, 1e-15);
        brief.Limits.ShouldBe(new ReviewLimits(30, 50e-3, JudgingRule.Ipc2221, 1.5, 6e-3)
        {
            TemperatureK = 398.15,
            Practice = new(new(3, true), new(5, true), new(3e-3, true), new(4, true), new(6, true), new(20e-3, true), new(1.5, true)),
        });
        ThermalSection thermal = brief.Thermal;
        (thermal.Posture, thermal.Top, thermal.Bottom, thermal.Laminate, thermal.CellM).ShouldBe((BoardPosture.Vertical,
            new FaceSection(12, 0.8), new FaceSection(8, 0.1), new LaminateSection(0.35, 0.9, 0.1e-3) { IsThroughStated = true, IsInPlaneStated = true }, 0.4e-3));
        thermal.Losses.Select(loss => (loss.Name, loss.Place.GetType(), loss.PowerW)).ShouldBe(
            [("Q1", typeof(ComponentContact), 1.2), ("coil", typeof(RectangleContact), 0.3)]);
        SinkPlace sink = thermal.Sinks.ShouldHaveSingleItem();
        (sink.Name, sink.Place.GetType(), sink.TemperatureK, sink.ResistanceKPerW).ShouldBe(("bolt", typeof(CircleContact), 323.15, 5));

        // Inrush of 1000 uF, 12 V in 5 ms: C dV/dt = 2.4 A.
        brief.Faults.Select(fault => (fault.Name, fault.Stretch, fault.TimeS, fault.LimitK)).ShouldBe(
            [("short", "By point", 0.01, 423.15), ("inrush", "By point", 0.005, 403.15)]);
        brief.Faults.Select(fault => fault.CurrentA).ShouldBe([200, 2.4], 1e-12);

        brief.Nets.Count.ShouldBe(2);
        NetReview feed = brief.Nets[0];
        feed.Name.ShouldBe("Feed, connector to fuse");
        feed.Selector.ShouldBe(new NetByName("12V_RAW"));
        feed.Role.ShouldBe(NetRole.Feed);
        feed.Siblings.ShouldBe("core phases");
        feed.Limits.ShouldBe(new NetLimits(10, 20e-3));
        feed.Terminals[0].Contacts.Cast<PinContact>().Select(p => (p.Component, p.Pin))
            .ShouldBe([("J1", "1"), ("J1", "2"), ("J1", "A4.x")]);
        feed.Terminals[0].CurrentA.ShouldBe(9);
        feed.Terminals[0].Mode.ShouldBe(ContactMode.Joined);
        feed.Terminals[1].Contacts.ShouldHaveSingleItem().ShouldBeOfType<ComponentContact>().Component.ShouldBe("U1");
        feed.Terminals[1].CurrentA.ShouldBe(-9);
        feed.Terminals[1].TakesRest.ShouldBeTrue();
        feed.Terminals[1].Mode.ShouldBe(ContactMode.Spread);

        NetReview byPoint = brief.Nets[1];
        byPoint.Selector.ShouldBe(new NetAtPoint(LayerReference.Top, new PointNm(12_400_000, -33_100_000)));
        byPoint.Limits.ShouldBe(new NetLimits(30, 50e-3));
        BoxNm box = new(1_000_000, 2_000_000, 3_000_000, 4_000_000);
        Contact[] contacts = [.. byPoint.Terminals.SelectMany(t => t.Contacts)];
        contacts.Select(contact => contact with { Position = default }).ShouldBe(
        [
            new PadContact(LayerReference.Top, new PointNm(1_000_000, 2_000_000), default),
            new PadsInContact(LayerReference.Top, box, default),
            new HoleContact(new PointNm(1_000_000, 2_000_000), default),
            new HoleContact(new PointNm(2_540_000, 25_400_000), default),
            new RectangleContact(LayerReference.Bottom, box, default),
            new CircleContact(LayerReference.Number(2), new PointNm(1_000_000, 2_000_000), 3_000_000, default),
        ]);
        byPoint.Terminals.Select(t => t.CurrentA).ShouldBe([4, -1, -1, -1, -1]);
    }

    [Fact]
    public void PlacesAreCountedFromOne()
    {
        ReviewBrief brief = BriefReader.Read("b.yaml", ExampleBrief.Full).Brief.ShouldNotBeNull();

        brief.Nets[0].Position.ShouldBe(new SourcePosition("b.yaml", 47, 5));
        brief.Nets[0].Terminals[0].Position.ShouldBe(new SourcePosition("b.yaml", 53, 9));
        brief.Nets[0].Terminals[0].Contacts[1].Position.ShouldBe(new SourcePosition("b.yaml", 54, 22));
    }

    [Fact]
    public void EveryDefaultIsStated()
    {
        BriefReading reading = BriefReader.Read("b.yaml", ExampleBrief.Head + ExampleBrief.Net);

        reading.Diagnostics.ShouldBeEmpty();
        ReviewBrief brief = reading.Brief.ShouldNotBeNull();
        brief.StatedDefaults.ShouldBe(
        [
            "limits: temperature: 130.0 °C, the operating temperature of many FR-4 laminates (from memory)",
            "limits: judge by: board, its own temperatures",
            "limits: switch node area ratio: 2.00",
            "limits: plane slot length: none, slots in planes are not judged",
            "limits: sharing ratio: 2.00, least area ratio: 4.00, sensitive distance: 2.00 mm, capacitor vias: 2, capacitor distance ratio: 4.00, "
                + "bank drop: 10.0 mV, hot loop ratio: 2.00 (common practice, no source; remarks only)",
            "conductor temperature: 45.0 °C, ambient plus the allowed temperature rise (worst case)",
            "accuracy: 1 %, the distance of the bounds of each loss and drop",
            "thermal: board horizontal in still air, emissivity 0.9, FR-4 of 0.3 W/(m·K) through and 0.8 W/(m·K) in plane; losses of parts as the converters' efficiencies say",
            "net 'n': role: other",
            "net 'n': voltage drop: no limit, the drop is reported and not judged",
            "net 'n': contact: joined, at a, b",
        ]);
        brief.ConductorK.ShouldBe(Units.ZeroCelsiusK + 45, 1e-12);
        brief.Limits.ShouldBe(new ReviewLimits(20, null, JudgingRule.Board, 2, null));
        brief.Stackup.ShouldBeNull();
    }

    /// <summary>Each case adds one fault to a good brief; the diagnostic names the place and what to write.</summary>
    [Theory]
    [InlineData("ambient: 25 degC", "ambience: 25 degC", "BRF010", "3:1", "`ambient`")]
    [InlineData("ambient: 25 degC", "Ambient: 25 degC", "BRF010", "3:1", "`ambient`")]
    [InlineData("temperature rise: 20 K", "temperature_rise: 20 K", "BRF010", "4:11", "`temperature rise`")]
    [InlineData("ambient: 25 degC", "ambient: 25 degC\nambient: 30 degC", "BRF011", "4:1", "line 3")]
    [InlineData("ambient: 25 degC", "", "BRF012", "1:1", "how warm is the air")]
    [InlineData("temperature rise: 20 K", "voltage drop: 1 V", "BRF012", "4:9", "how much may")]
    [InlineData("board: { name: b, files: f }", "board: here", "BRF013", "2:8", "`name`")]
    [InlineData("board: { name: b, files: f }", "board: [ b ]", "BRF013", "2:8", "`name`")]
    [InlineData("ambient: 25 degC", "ambient:", "BRF014", "3:1", "a value")]
    [InlineData("name: b, files: f", "name: \"\", files: f", "BRF014", "2:16", "the board's name")]
    [InlineData("ambient: 25 degC", "ambient: 25", "BRF020", "3:10", "60 degC")]
    [InlineData("ambient: 25 degC", "ambient: 25 K", "BRF021", "3:10", "−60.0 °C to 200.0 °C")]
    [InlineData("20 K", "20 degC", "BRF020", "4:29", "30 K")]
    [InlineData("20 K", "500 K", "BRF021", "4:29", "200.0 K")]
    [InlineData("20 K", "20 K, judge by: ipc-2125", "BRF022", "4:45", "`ipc-2152`")]
    [InlineData("20 K", "20 K, temperature: 30 degC", "BRF021", "4:48", "40.0 °C to 300.0 °C")]
    [InlineData("20 K", "20 K, switch node area ratio: 0.5", "BRF023", "4:59", "at least 1")]
    [InlineData("ambient: 25 degC", "ambient: 25 degC\naccuracy: 50 %", "BRF023", "4:11", "0.01 % to 10 %")]
    [InlineData("ambient: 25 degC", "ambient: 25 degC\naccuracy: fine", "BRF023", "4:11", "0.01 % to 10 %")]
    [InlineData("J1.1", "J1", "BRF024", "9:27", "`J1.1`")]
    [InlineData("J1.1", "J1.", "BRF024", "9:27", "`J1.1`")]
    [InlineData("pins: [J1.1]", "circle: { layer: 0, x: 0 mm, y: 0 mm, diameter: 1 mm }", "BRF025", "9:37", "`bottom`")]
    [InlineData("net: N", "role: feed", "BRF030", "6:5", "exactly one")]
    [InlineData("net: N", "net: N\n    at: { layer: 1, x: 0 mm, y: 0 mm }", "BRF030", "6:5", "exactly one")]
    [InlineData("enters: 1 A", "contact: joined", "BRF031", "9:9", "exactly one")]
    [InlineData("enters: 1 A", "enters: 1 A, leaves: 1 A", "BRF031", "9:9", "exactly one")]
    [InlineData("enters: 1 A", "enters: -1 A", "BRF021", "9:42", "from 0 A to 10.0 kA")]
    [InlineData("enters: 1 A", "takes: half", "BRF022", "9:41", "rest")]
    [InlineData("pins: [J1.1], ", "", "BRF035", "9:9", "at least one of")]
    [InlineData("name: b, comp", "name: a, comp", "BRF036", "10:11", "line 9")]
    [InlineData("pins: [J1.1]", "pins: []", "BRF014", "9:26", "J1.1")]
    [InlineData("pins: [J1.1]", "rectangle: { layer: 1, from: [0 mm, 0 mm], to: [0 mm, 5 mm] }", "BRF043", "9:63", "opposite")]
    [InlineData("pins: [J1.1]", "rectangle: { layer: 1, from: [0 mm], to: [0 mm, 5 mm] }", "BRF013", "9:49", "[x, y]")]
    [InlineData("pins: [J1.1]", "holes: { x: 11 m, y: 0 mm }", "BRF021", "9:32", "10000 mm")]
    [InlineData("copperpath: 1", "copperpath: 2", "BRF004", "1:13", "`copperpath: 1`")]
    [InlineData("name: b,", "name: *b,", "BRF003", "2:16", "written out")]
    [InlineData("ambient: 25", "ambient: &warm 25", "BRF003", "3:10", "written out")]
    [InlineData("name: b,", "name: !!str b,", "BRF003", "2:16", "written out")]
    [InlineData("name: b,", "name: b: c,", "BRF001", "2:17", "YAML")]
    public void AFaultIsReportedWithItsPlace(string good, string bad, string code, string lineAndColumn, string expected)
    {
        string text = ExampleBrief.Head + ExampleBrief.Net;
        text.ShouldContain(good);

        BriefReading reading = BriefReader.Read("b.yaml", text.Replace(good, bad, StringComparison.Ordinal));

        reading.Brief.ShouldBeNull();
        reading.Diagnostics.ShouldContain(
            d => d.Code == code && d.Position.ToString() == "b.yaml:" + lineAndColumn
                && d.Expected.Contains(expected, StringComparison.Ordinal) && d.Severity == Severity.Error,
            string.Join('\n', reading.Diagnostics));
    }

    [Theory]
    [InlineData("copper: [35 um, 35 um], dielectric: [1 mm, 1 mm], plating: 25 um", "BRF040", "2 dielectric")]
    [InlineData("copper: [35 um], plating: 25 um", "BRF041", "layer 2")]
    [InlineData("copper: [35 mm, 35 um], dielectric: [1 mm], plating: 25 um", "BRF021", "35 mm")]
    [InlineData("copper: [-35 um, 35 um], dielectric: [1 mm], plating: 25 um", "BRF021", "-35 um")]
    [InlineData("copper: [35 um, 35 um], plating: 25 um", "BRF012", "no `dielectric`")]
    [InlineData("copper: [35 um, 35 um], dielectric: [1 mm]", "BRF012", "no `plating`")]
    public void AStackupMustBeWhole(string stackup, string code, string found)
    {
        string text = ExampleBrief.Head + "stackup: { " + stackup + " }\n"
            + ExampleBrief.Net.Replace("net: N", "at: { layer: 2, x: 0 mm, y: 0 mm }", StringComparison.Ordinal);

        BriefReading reading = BriefReader.Read("b.yaml", text);

        reading.Brief.ShouldBeNull();
        Diagnostic only = reading.Diagnostics.ShouldHaveSingleItem();
        only.Code.ShouldBe(code);
        only.Found.ShouldContain(found);
    }

    [Theory]
    [InlineData("{ file: a, role: copper }", "BRF012")]
    [InlineData("{ file: a, role: profile, number: 1 }", "BRF042")]
    [InlineData("{ file: a, role: profile }, { file: a, role: ignore }", "BRF042")]
    [InlineData("{ file: a, role: copper, number: 1 }, { file: b, role: copper, number: 1 }", "BRF042")]
    [InlineData("{ file: a, role: cooper, number: 1 }", "BRF022")]
    [InlineData("{ file: a, role: copper, number: 1.5 }", "BRF023")]
    public void LayerAnswersMustNotContradict(string layers, string code)
    {
        string text = (ExampleBrief.Head + ExampleBrief.Net)
            .Replace("files: f", $"files: f, layers: [{layers}]", StringComparison.Ordinal);

        BriefReader.Read("b.yaml", text).Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("# only a comment")]
    [InlineData("---\n...")]
    [InlineData("- a\n- b")]
    [InlineData("text")]
    [InlineData("copperpath: 1\n---\ncopperpath: 1")]
    [InlineData("a: [b")]
    [InlineData("\t: x")]
    [InlineData("? [a, b]\n: c")]
    [InlineData("\"unterminated")]
    [InlineData("%YAML 9.9\n---\na: b")]
    public void TextThatIsNoBriefIsAnError(string text)
    {
        BriefReading reading = BriefReader.Read("b.yaml", text);

        reading.Brief.ShouldBeNull();
        reading.Diagnostics.ShouldContain(d => d.Severity == Severity.Error);
    }

    [Fact]
    public void DepthIsBoundedBeforeTheStackIs()
    {
        BriefReading reading = BriefReader.Read("b.yaml", "a: " + new string('[', 100_000));

        reading.Brief.ShouldBeNull();
        reading.Diagnostics.ShouldHaveSingleItem().Code.ShouldBe("BRF003");
    }

    [Fact]
    public void FaultsInSeveralPlacesAreAllReportedInFileOrder()
    {
        string text = (ExampleBrief.Head + ExampleBrief.Net)
            .Replace("25 degC", "warm", StringComparison.Ordinal)
            .Replace("20 K", "20", StringComparison.Ordinal)
            .Replace("1 A", "1", StringComparison.Ordinal);

        IReadOnlyList<Diagnostic> diagnostics = BriefReader.Read("b.yaml", text).Diagnostics;

        diagnostics.Select(d => d.Position.Line).ShouldBe([3, 4, 9, 10]);
    }
}
