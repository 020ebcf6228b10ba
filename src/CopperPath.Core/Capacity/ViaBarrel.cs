using CopperPath.Quantities;

namespace CopperPath.Capacity;

/// <summary>
/// The copper on the wall of one plated hole. A hole is known either by its finished diameter or by its drill; the two
/// differ by twice the plating, so each has its own way in and nothing takes a bare "diameter".
/// </summary>
public sealed record ViaBarrel
{
    private ViaBarrel(double sectionM2, EstimateBasis basis)
    {
        SectionM2 = sectionM2;
        Basis = basis;
    }

    /// <summary>Section of the copper across the axis, square metres.</summary>
    public double SectionM2 { get; }

    /// <summary>Which diameter the section rests on.</summary>
    public EstimateBasis Basis { get; }

    /// <summary>A barrel whose open hole has the given diameter: <c>A = pi (d + t) t</c>.</summary>
    /// <param name="finishedHoleM">Diameter of the hole after plating, metres, positive.</param>
    /// <param name="platingM">Wall thickness, metres, positive; use the least the specification allows.</param>
    public static ViaBarrel OfFinishedHole(double finishedHoleM, double platingM) => new(
        Math.PI * (Checked.Positive(finishedHoleM) + Checked.Positive(platingM)) * platingM,
        new EstimateBasis("geometry", "the diameter is that of the finished hole; uniform wall, unfilled"));

    /// <summary>A barrel plated into a drilled hole of the given diameter: <c>A = pi (D - t) t</c>.</summary>
    /// <param name="drillM">Diameter of the drill, metres, more than twice the plating.</param>
    /// <param name="platingM">Wall thickness, metres, positive; use the least the specification allows.</param>
    public static ViaBarrel OfDrill(double drillM, double platingM)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(drillM, 2 * Checked.Positive(platingM));
        return new ViaBarrel(
            Math.PI * (drillM - platingM) * platingM,
            new EstimateBasis("geometry", "the diameter is that of the drill; uniform wall, unfilled"));
    }

    /// <summary>Resistance along a length of the barrel, ohms.</summary>
    public double ResistanceOhm(double lengthM, double resistivityOhmM) =>
        Checked.Positive(resistivityOhmM) * Checked.NotNegative(lengthM) / SectionM2;

    /// <summary>Thermal resistance along a length of the barrel, kelvin per watt.</summary>
    /// <param name="lengthM">Length along the axis, metres.</param>
    /// <param name="conductivityWPerMK">Thermal conductivity of the wall, watts per metre and kelvin; copper 385 to 401.</param>
    public double ThermalResistanceKPerW(double lengthM, double conductivityWPerMK) =>
        Checked.NotNegative(lengthM) / (Checked.Positive(conductivityWPerMK) * SectionM2);

    /// <summary>Width of a trace of the given thickness with the same section, metres.</summary>
    public double EqualSectionWidthM(double traceThicknessM) => SectionM2 / Checked.Positive(traceThicknessM);

    /// <summary>
    /// Current of an IPC-2221 conductor of the same section: the rule that a barrel should have at least the section of
    /// the conductor it joins, turned into a current.
    /// </summary>
    public CurrentEstimate EqualSectionCurrent(double riseK, ConductorPlacement placement)
    {
        CurrentEstimate conductor = Ipc2221.Current(riseK, SectionM2, placement);
        return conductor with { Basis = JoinedTo(conductor.Basis) };
    }

    /// <summary>Current of an external trace of the given thickness and the same section, by the IPC-2152-style fit.</summary>
    public CurrentEstimate EqualSectionCurrent(double riseK, double traceThicknessM)
    {
        CurrentEstimate trace = Ipc2152StyleFit.Current(riseK, EqualSectionWidthM(traceThicknessM), traceThicknessM);
        return trace with { Basis = JoinedTo(trace.Basis) };
    }

    private EstimateBasis JoinedTo(EstimateBasis conductor) => conductor with
    {
        Assumptions = $"barrel taken as a conductor of equal section, conservative where wide copper cools it; "
            + $"{Basis.Assumptions}; {conductor.Assumptions}",
    };
}
