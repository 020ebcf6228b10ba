namespace CopperPath.Brief;

/// <summary>Resistivity of solders near room temperature, ohm metres: handbook values, from memory.</summary>
public static class SolderMaterial
{
    /// <summary>About ten times copper's: Sn63Pb37 145 nohm m, Sn96.5Ag3Cu0.5 130 nohm m.</summary>
    public static double ResistivityOhmM(SolderAlloy alloy) => alloy == SolderAlloy.TinLead ? 1.45e-7 : 1.3e-7;
}
