using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CopperPath.Converter;

namespace CopperPath.Core.Tests.Converter;

/// <summary>
/// The closed forms against a time-domain run of the ideal converter in ngspice, a general-purpose circuit simulator
/// (Debian package <c>ngspice</c>). Each phase is a pulsed source behind an inductor; the output is a stiff source, and
/// the summed ripple flows into a resistor and a capacitor beside it. Skips where the simulator is not installed; the
/// figures of the last run are in docs/converter.md.
/// </summary>
public sealed partial class CircuitSimulationTests
{
    private const double Tolerance = 0.01;
    private const double BankF = 1e-3;
    private const double BankOhm = 0.5e-3;
    private const int Periods = 8;

    [Theory]
    [InlineData(4, 0.1, 100, 0.25e-6, 500e3)]
    [InlineData(2, 0.25, 40, 0.47e-6, 500e3)]
    [InlineData(6, 0.1, 180, 0.15e-6, 500e3)]
    public void ClosedFormsAgreeWithATimeDomainRun(int phases, double duty, double outputA, double inductanceH, double switchingHz)
    {
        BuckStage stage = new(phases, 12, 12 * duty, outputA, inductanceH, switchingHz);
        Dictionary<string, double> run = Simulate(NetlistOf(stage));

        run["inductor_mean"].ShouldBe(stage.PhaseA, stage.PhaseA * Tolerance);
        run["inductor_pp"].ShouldBe(stage.PhaseRippleA, stage.PhaseRippleA * Tolerance);
        run["output_pp"].ShouldBe(stage.OutputRippleA, stage.OutputRippleA * Tolerance);
        run["feed_mean"].ShouldBe(stage.FeedA, stage.FeedA * Tolerance);
        double capacitorsA = Math.Sqrt((run["feed_rms"] * run["feed_rms"]) - (run["feed_mean"] * run["feed_mean"]));
        capacitorsA.ShouldBe(stage.InputCapacitorRmsA, stage.InputCapacitorRmsA * Tolerance);
        run["high_rms"].ShouldBe(stage.HighSideRmsA, stage.HighSideRmsA * Tolerance);
        run["low_rms"].ShouldBe(stage.LowSideRmsA, stage.LowSideRmsA * Tolerance);
        OutputRippleVoltage ripple = OutputRippleVoltage.Of(stage, BankF, BankOhm);
        run["resistive_pp"].ShouldBe(ripple.ResistiveV, ripple.ResistiveV * Tolerance);
        run["capacitive_pp"].ShouldBe(ripple.CapacitiveV, ripple.CapacitiveV * Tolerance);
    }

    /// <summary>The netlist; inductors start on the triangle that gives each phase its share of the load.</summary>
    private static string NetlistOf(BuckStage stage)
    {
        StringBuilder text = new("ideal multiphase buck\n");
        void Line(FormattableString line) => text.Append(FormattableString.Invariant(line)).Append('\n');
        double edgeS = stage.PeriodS * 1e-6;
        for (int k = 0; k < stage.Phases; k++)
        {
            // At the start a phase is k/N of a period away from its turn-on.
            double share = (1 - ((double)k / stage.Phases)) % 1;
            double rise = share < stage.Duty ? share / stage.Duty : (1 - share) / (1 - stage.Duty);
            Line($"Vg{k} g{k} 0 PULSE(0 1 {stage.TurnOnS(k):E9} {edgeS:E3} {edgeS:E3} {(stage.Duty * stage.PeriodS) - edgeS:E9} {stage.PeriodS:E9})");
            Line($"Bs{k} s{k} 0 V={stage.InputV}*v(g{k})");
            Line($"Vm{k} s{k} m{k} 0");
            Line($"L{k} m{k} o {stage.InductanceH:E9} IC={stage.PhaseA + (stage.PhaseRippleA * (rise - 0.5)):E9}");
        }

        string all = string.Join("+", Enumerable.Range(0, stage.Phases).Select(k => FormattableString.Invariant($"i(Vm{k})")));
        string drawn = string.Join("+", Enumerable.Range(0, stage.Phases).Select(k => FormattableString.Invariant($"i(Vm{k})*v(g{k})")));
        Line($"Vo o 0 {stage.OutputV:E9}");
        Line($"Bsum sum 0 V={all}");
        Line($"Bfeed feed 0 V={drawn}");
        Line($"Bhigh high 0 V=i(Vm0)*v(g0)");
        Line($"Blow low 0 V=i(Vm0)*(1-v(g0))");
        Line($"Bind ind 0 V=i(Vm0)");
        Line($"Brip 0 r I=v(sum)-{stage.OutputA:E9}");
        Line($"Rr r c {BankOhm:E9}");
        Line($"Cr c 0 {BankF:E9} IC=0");
        Line($"Bres res 0 V=v(r)-v(c)");
        double fromS = 3 * stage.PeriodS;
        double toS = Periods * stage.PeriodS;
        Line($".tran {stage.PeriodS / 2000:E6} {toS:E9} 0 {stage.PeriodS / 2000:E6} UIC");
        foreach ((string name, string what, string node) in new[]
        {
            ("inductor_mean", "AVG", "ind"), ("inductor_pp", "PP", "ind"), ("output_pp", "PP", "sum"), ("feed_mean", "AVG", "feed"),
            ("feed_rms", "RMS", "feed"), ("high_rms", "RMS", "high"), ("low_rms", "RMS", "low"), ("resistive_pp", "PP", "res"), ("capacitive_pp", "PP", "c"),
        })
        {
            Line($".meas tran {name} {what} v({node}) FROM={fromS:E9} TO={toS:E9}");
        }

        return text.Append(".end\n").ToString();
    }

    private static Dictionary<string, double> Simulate(string netlist)
    {
        string? simulator = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(folder => Path.Combine(folder, "ngspice")).FirstOrDefault(File.Exists);
        Assert.SkipWhen(simulator is null, "needs ngspice, which is not installed");
        string file = Path.Combine(Directory.CreateTempSubdirectory("copperpath-spice-").FullName, "converter.cir");
        try
        {
            File.WriteAllText(file, netlist);
            using Process process = Process.Start(new ProcessStartInfo(simulator!, ["-b", file]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            Task<string> errors = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            errors.Wait();
            return Measurement().Matches(output).ToDictionary(
                match => match.Groups[1].Value, match => double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture));
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
        }
    }

    [GeneratedRegex(@"^([a-z]+_[a-z]+)\s+=\s+(\S+)", RegexOptions.Multiline)]
    private static partial Regex Measurement();
}
