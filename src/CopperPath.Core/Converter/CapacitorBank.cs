using System.Numerics;
using CopperPath.Quantities;

namespace CopperPath.Converter;

/// <summary>Like capacitors of a bank.</summary>
/// <param name="Count">How many, at least 1.</param>
/// <param name="CapacitanceF">Capacitance of each at its bias, farads, positive.</param>
/// <param name="SeriesResistanceOhm">Equivalent series resistance of each, ohms, not negative.</param>
public sealed record CapacitorGroup(int Count, double CapacitanceF, double SeriesResistanceOhm)
{
    /// <summary>Admittance of one capacitor, siemens; its series inductance is left out.</summary>
    internal Complex AdmittanceS(double frequencyHz) =>
        Complex.One / new Complex(SeriesResistanceOhm, -1 / (2 * Math.PI * Checked.Positive(frequencyHz) * CapacitanceF));
}

/// <summary>Capacitors in parallel at one place: the copper between them is left out.</summary>
/// <param name="Groups">At least one.</param>
public sealed record CapacitorBank(IReadOnlyList<CapacitorGroup> Groups)
{
    /// <summary>How many capacitors.</summary>
    public int Count => Groups.Sum(group => group.Count);

    /// <summary>Sum of the capacitances, farads.</summary>
    public double CapacitanceF => Groups.Sum(group => group.Count * group.CapacitanceF);

    /// <summary>Series resistances in parallel, ohms; zero when any of them is.</summary>
    public double SeriesResistanceOhm => Groups.Any(group => group.SeriesResistanceOhm == 0) ? 0
        : 1 / Groups.Sum(group => group.Count / group.SeriesResistanceOhm);

    /// <summary>Current of each capacitor of a group when the bank carries a current: shares follow impedance, not count.</summary>
    /// <param name="group">A group of this bank.</param>
    /// <param name="bankA">RMS current of the bank, amperes, taken as a sine of that frequency.</param>
    /// <param name="frequencyHz">Frequency, hertz, positive.</param>
    public double CurrentOfEachA(CapacitorGroup group, double bankA, double frequencyHz)
    {
        Complex wholeS = Groups.Aggregate(Complex.Zero, (sum, member) => sum + (member.Count * member.AdmittanceS(frequencyHz)));
        return bankA * Complex.Abs(group.AdmittanceS(frequencyHz) / wholeS);
    }
}
