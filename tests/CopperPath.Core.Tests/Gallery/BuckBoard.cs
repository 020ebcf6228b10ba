using System.Globalization;

namespace CopperPath.Core.Tests.Gallery;

/// <summary>
/// A small buck converter of two phases over a ground plane, drawn so that no rule has anything to say; each option
/// spoils one thing. Lengths in millimetres. The two phases lie one above the other, inductors to the right.
/// </summary>
public sealed record BuckBoard
{
    private const double PhasePitchMm = 24;

    /// <summary>Phases the brief claims.</summary>
    public int ClaimedPhases { get; init; } = 2;

    /// <summary>How far the first phase's switch node reaches beyond what its parts need.</summary>
    public double ExtraSwitchNodeMm { get; init; }

    /// <summary>How far the second phase's capacitors stand away from its switches.</summary>
    public double CapacitorShiftMm { get; init; }

    /// <summary>How far the second of each phase's capacitors stands away from the first, to the left.</summary>
    public double CapacitorSpreadMm { get; init; } = 1.8;

    /// <summary>Plated holes beside each output capacitor's return pad.</summary>
    public int CapacitorVias { get; init; } = 3;

    /// <summary>Class letter of the last part between output and return of each phase.</summary>
    public char LastOutputPart { get; init; } = 'C';

    /// <summary>Width of the copper between inductors and load.</summary>
    public double OutputWidthMm { get; init; } = 20;

    /// <summary>Width of the copper from the second inductor, where it is narrower.</summary>
    public double SecondOutputWidthMm { get; init; } = 12;

    /// <summary>Slot in the plane under the output, from and to, y of its ends; none where equal.</summary>
    public (double From, double To) Slot { get; init; }

    /// <summary>Gap between feedback track and the first switch node.</summary>
    public double FeedbackGapMm { get; init; } = 3;

    /// <summary>Columns of plated holes beside the low sides.</summary>
    public int LandVias { get; init; } = 6;

    /// <summary>How the supply pins share: spread or joined.</summary>
    public string PinContact { get; init; } = "spread";

    /// <summary>Length of the second supply pin's pad.</summary>
    public double SecondPinMm { get; init; } = 2.4;

    /// <summary>Load current the terminals carry.</summary>
    public double LoadA { get; init; } = 20;

    /// <summary>Rise that the copper's own current may add, kelvin.</summary>
    public double RiseK { get; init; } = 90;

    /// <summary>Power out over power in.</summary>
    public double Efficiency { get; init; } = 1;

    /// <summary>Lines added to the limits.</summary>
    public string Limits { get; init; } = "  bank drop: 40 mV\n  sharing ratio: 4\n";

    /// <summary>Stands in <see cref="Sections"/> for the fingerprint of the board's files.</summary>
    public const string OwnFingerprint = "OWN_FINGERPRINT";

    /// <summary>Lines added at the end of the brief.</summary>
    public string Sections { get; init; } = "";

    /// <summary>Rating of a supply pin.</summary>
    public double PinRatingA { get; init; } = 9;

    /// <summary>Reviews the board and gives the review.</summary>
    public Review Check()
    {
        using SyntheticBoard board = new(2);
        Drawing drawing = new(board);
        Draw(drawing);
        string brief = board.WriteBrief(Nets());
        string text = File.ReadAllText(brief)
            .Replace("  temperature rise: 200 K", string.Create(CultureInfo.InvariantCulture, $"  temperature rise: {RiseK} K\n  voltage drop: 60 mV\n  plane slot length: 6 mm\n{Limits}"), StringComparison.Ordinal)
            .Replace("ambient: 20 degC", "ambient: 20 degC\naccuracy: 5 %", StringComparison.Ordinal)
            .Replace("dielectric: [1.5 mm]", "dielectric: [0.2 mm]", StringComparison.Ordinal);
        string sections = !Sections.Contains(OwnFingerprint, StringComparison.Ordinal) ? Sections
            : Sections.Replace(OwnFingerprint, Analysis.Survey(board.Folder).Board.Fingerprint, StringComparison.Ordinal);
        File.WriteAllText(brief, text + Converter() + sections);
        Review review = Analysis.Check(brief);
        review.Diagnostics.Where(diagnostic => diagnostic.Severity == Diagnostics.Severity.Error).ShouldBeEmpty();
        return review;
    }

    private void Draw(Drawing to)
    {
        // The plane, with room for the supply pins.
        to.Rectangle(2, "GND", -18, -8, 78, 44);
        to.Clear(2, -2, 39, 3).Clear(2, 3, 39, 3);
        if (Slot.From != Slot.To)
        {
            to.ClearBox(2, 48, Slot.From, 49, Slot.To);
        }

        // Supply from the connector above to both phases.
        to.Rectangle(1, "VIN", -14, 35.5, 12, 42).Rectangle(1, "VIN", -14, 6, -5, 36.5);
        to.Pin(1, "J1", "1", "VIN", -2, 39, 2.4, 1.2).Pin(1, "J1", "2", "VIN", 3, 39, SecondPinMm, 1.2).Pin(1, "J1", "3", "GND", 16, 39, 2.4, 1.2).Pin(1, "J1", "4", "GND", 20, 39, 2.4, 1.2);
        to.Rectangle(1, "GND", 14, 37, 22, 41);
        for (int phase = 0; phase < 2; phase++)
        {
            DrawPhase(to, phase, PhasePitchMm * phase);
        }

        // Output to the load; the second phase joins through its own strip.
        to.Rectangle(1, "VOUT", 30, 0, 62, OutputWidthMm).Rectangle(1, "VOUT", 30, 23, 50, 23 + SecondOutputWidthMm).Rectangle(1, "VOUT", 44, 10, 50, 24);
        to.Rectangle(1, "GND", 65, 2, 72, 18).Vias("GND", 71, 4, 8, 1.6);
        to.Pad(1, "U9", "1", "VOUT", 59.5, 10, 4, 12).Pad(1, "U9", "2", "GND", 67.5, 10, 4, 12).Pad(1, "U9", "3", "FB", 63.5, 20.5, 0.6, 0.6);
        to.Rectangle(1, "FB", 63.3, -0.4 - FeedbackGapMm, 63.7, 20.7).Rectangle(1, "FB", 14, -0.4 - FeedbackGapMm, 63.7, -FeedbackGapMm);
    }

    private void DrawPhase(Drawing to, int phase, double y)
    {
        int n = phase + 1;
        double shift = phase == 1 ? CapacitorShiftMm : 0;
        string node = $"SW{n}";
        to.Rectangle(1, "VIN", -14, y + 6, 12, y + 12);
        to.Rectangle(1, node, 9, y, 24.5, y + 5);
        if (phase == 0 && ExtraSwitchNodeMm > 0)
        {
            to.Rectangle(1, node, 15, y + 4.5, 28, y + 5 + ExtraSwitchNodeMm);
        }

        to.Rectangle(1, "GND", -4, y - 1, 8, y + 4.5).Vias("GND", 5, y + 1.8, LandVias, -1.5, alongX: true).Vias("GND", 5, y + 3.2, LandVias, -1.5, alongX: true);
        to.Pad(1, $"Q{n}1", "1", "VIN", 10.5, y + 7.5, 2, 2.5).Pad(1, $"Q{n}1", "2", node, 10.5, y + 3.8, 2, 2).Pad(1, $"Q{n}1", "3", $"GH{n}", 13.6, y + 7.5, 0.6, 0.6);
        to.Pad(1, $"Q{n}2", "1", node, 10.5, y + 1, 2, 1.6).Pad(1, $"Q{n}2", "2", "GND", 7, y + 1, 1.5, 1.6).Pad(1, $"Q{n}2", "3", $"GL{n}", 13.6, y + 8.8, 0.6, 0.6);
        to.Pad(1, $"L{n}", "1", node, 22.5, y + 2.5, 3, 4).Pad(1, $"L{n}", "2", "VOUT", 32, y + 2.5, 3, 4);
        for (int i = 0; i < 2; i++)
        {
            double x = 7 - shift - (i * CapacitorSpreadMm);
            to.Pad(1, $"C{n}0{i + 1}", "1", "VIN", x, y + 7, 1.2, 1.2).Pad(1, $"C{n}0{i + 1}", "2", "GND", x, y + 3.7, 1.2, 1.2);
        }

        // Output capacitors below the copper of the output.
        for (int i = 0; i < 2; i++)
        {
            double x = 34 + (6 * i);
            double edge = phase == 0 ? 0 : 23;
            string part = $"{(i == 0 ? 'C' : LastOutputPart)}{n}1{i + 1}";
            to.Pad(1, part, "1", "VOUT", x, edge + 1, 1.2, 1.2).Pad(1, part, "2", "GND", x, edge - 2, 1.2, 1.2);
            to.Rectangle(1, "GND", x - 2.4, edge - 2.7, x + 2.4, edge - 1.3).Vias("GND", x - 1.9, edge - 2, Math.Min(1, CapacitorVias), 1).Vias("GND", x + 1.2, edge - 2, CapacitorVias - 1, 0.8, alongX: true);
        }
    }

    private string Converter() => string.Create(CultureInfo.InvariantCulture, $$"""

        converters:
          name: core
          input voltage: 12 V
          output voltage: 1.2 V
          load current: {{LoadA}} A
          phases: {{ClaimedPhases}}
          switching frequency: 500 kHz
          inductance: 0.5 uH
          efficiency: {{Efficiency}}
          edge time: 5 ns

        """);

    private string Nets()
    {
        double phaseA = LoadA / 2;
        return string.Create(CultureInfo.InvariantCulture, $"""
              - name: Input
                net: VIN
                role: feed
                terminals:
                  - name: connector
                    pins: [J1.1, J1.2]
                    enters: {LoadA / 10} A
                    contact: {PinContact}
                    contact rating: {PinRatingA} A
                  - name: high side 1
                    pins: [Q11.1]
                    leaves: {LoadA / 20} A
                  - name: high side 2
                    pins: [Q21.1]
                    takes: rest
              - name: Node 1
                net: SW1
                role: switch node
                siblings: core
                terminals:
                  - name: switches
                    pins: [Q11.2, Q12.1]
                    contact: spread
                    enters: {phaseA} A
                  - name: inductor
                    pins: [L1.1]
                    takes: rest
              - name: Node 2
                net: SW2
                role: switch node
                siblings: core
                terminals:
                  - name: switches
                    pins: [Q21.2, Q22.1]
                    contact: spread
                    enters: {phaseA} A
                  - name: inductor
                    pins: [L2.1]
                    takes: rest
              - name: Output
                net: VOUT
                role: output
                terminals:
                  - name: inductor 1
                    pins: [L1.2]
                    enters: {phaseA} A
                  - name: inductor 2
                    pins: [L2.2]
                    enters: {phaseA} A
                  - name: load
                    pins: [U9.1]
                    takes: rest
              - name: Return
                net: GND
                role: return
                terminals:
                  - name: load
                    pins: [U9.2]
                    enters: {LoadA} A
                  - name: low sides
                    pins: [Q12.2, Q22.2]
                    contact: spread
                    leaves: {LoadA * 0.9} A
                  - name: connector
                    pins: [J1.3, J1.4]
                    contact: spread
                    takes: rest
            """);
    }

    /// <summary>Labelled shapes as Gerber text.</summary>
    private sealed class Drawing(SyntheticBoard board)
    {
        private int _aperture = 9;

        public Drawing Rectangle(int layer, string net, double x0, double y0, double x1, double y1)
        {
            board.Draw(layer, $"%TO.N,{net}*%").Rectangle(layer, x0, y0, x1, y1).Draw(layer, "%TD*%");
            return this;
        }

        public Drawing Pad(int layer, string part, string pin, string net, double x, double y, double width, double height)
        {
            board.Draw(layer, string.Create(CultureInfo.InvariantCulture,
                $"%ADD{++_aperture}R,{width}X{height}*%\n%TO.P,{part},{pin}*%\n%TO.N,{net}*%\nD{_aperture}*\n{SyntheticBoard.At(x, y)}D03*\n%TD*%"));
            return this;
        }

        public Drawing Pin(int layer, string part, string pin, string net, double x, double y, double land, double hole)
        {
            board.Draw(layer, string.Create(CultureInfo.InvariantCulture,
                $"%ADD{++_aperture}C,{land}*%\n%TO.P,{part},{pin}*%\n%TO.N,{net}*%\nD{_aperture}*\n{SyntheticBoard.At(x, y)}D03*\n%TD*%"));
            board.PlatedSlot(x, y, x, y, hole);
            return this;
        }

        public Drawing Vias(string net, double x, double y, int count, double pitch, bool alongX = false)
        {
            for (int i = 0; i < count; i++)
            {
                (double atX, double atY) = alongX ? (x + (i * pitch), y) : (x, y + (i * pitch));
                board.Draw(1, string.Create(CultureInfo.InvariantCulture,
                    $"%ADD{++_aperture}C,0.6*%\n%TO.N,{net}*%\nD{_aperture}*\n{SyntheticBoard.At(atX, atY)}D03*\n%TD*%"));
                board.PlatedSlot(atX, atY, atX, atY, 0.3);
            }

            return this;
        }

        public Drawing Clear(int layer, double x, double y, double diameter)
        {
            board.Draw(layer, string.Create(CultureInfo.InvariantCulture,
                $"%LPC*%\n%ADD{++_aperture}C,{diameter}*%\nD{_aperture}*\n{SyntheticBoard.At(x, y)}D03*\n%LPD*%"));
            return this;
        }

        public Drawing ClearBox(int layer, double x0, double y0, double x1, double y1)
        {
            board.Draw(layer, "%LPC*%").Rectangle(layer, x0, y0, x1, y1).Draw(layer, "%LPD*%");
            return this;
        }
    }
}
