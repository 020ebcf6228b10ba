using CopperPath.Capacity;
using CopperPath.Electrical;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>What belongs beside the rise a chart relation gives a cut, for a chart knows no length.</summary>
/// <param name="LengthM">How far along the current the copper stays within <see cref="NeckLength.WidestRatio"/> times the least, metres.</param>
/// <param name="HeatLengthM">Length over which heat spreads along such a conductor, metres (<see cref="ShortNeck"/>).</param>
/// <param name="ShortNeckK">Rise of so short a neck above its ends, kelvin, by the same relation's loss to the surroundings.</param>
public sealed record NeckFigures(double LengthM, double HeatLengthM, double ShortNeckK)
{
    /// <param name="net">The stretch.</param>
    /// <param name="section">One of its cuts, with current.</param>
    /// <param name="rating">The relation.</param>
    public static NeckFigures? Of(SolvedNet net, Section section, ConductorRating rating) => !(section.WidthM > 0 && section.CurrentA > 0) ? null
        : Of(net.NeckLengthM(section), section.CurrentA, rating.CopperSectionM2(section), rating.TraceRiseK(section), rating.Stack.ResistivityOhmM);

    /// <param name="section">A cut through copper that carries a current together.</param>
    /// <param name="rating">The relation.</param>
    public static NeckFigures Of(JointSection section, ConductorRating rating) =>
        Of(section.LengthM, section.CurrentA, rating.CopperSectionM2(section), rating.JointRiseK(section), rating.Stack.ResistivityOhmM);

    /// <summary>As a sentence states them.</summary>
    public override string ToString() => $"the neck is {QuantityText.Length(LengthM)} long where heat spreads over {QuantityText.Length(HeatLengthM)}: "
        + $"as a short neck {QuantityText.TemperatureDifference(ShortNeckK)} above its ends";

    private static NeckFigures Of(double lengthM, double currentA, double sectionM2, double longRiseK, double resistivityOhmM)
    {
        double heatLengthM = ShortNeck.HeatLengthM(
            currentA, sectionM2, longRiseK, resistivityOhmM, ThermalMaterials.CopperOnFr4.CopperWPerMK);
        return new NeckFigures(lengthM, heatLengthM, ShortNeck.RiseK(longRiseK, lengthM, heatLengthM));
    }
}
