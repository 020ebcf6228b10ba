using CopperPath.Brief;

namespace CopperPath.Capacity;

/// <summary>
/// Least copper a finished board of a class may have: what a judgement on the safe side counts on. After the
/// tables of IPC-6012, from memory; table numbers and values vary by revision, so read them in the revision ordered to.
/// </summary>
public static class Ipc6012Minima
{
    /// <summary>What class 3 asks for on top of the others where copper is plated up, metres.</summary>
    private const double MoreForClass3M = 5e-6;

    /// <summary>Starting foil: its ounces and nominal thickness (IPC-4562; from memory), and the least that is left of it inside and, plated up, outside.</summary>
    private static readonly (double Ounces, double FoilM, double InternalM, double ExternalM)[] s_foils =
    [
        (0.125, 5.1e-6, 3.1e-6, 23.1e-6),
        (0.25, 8.5e-6, 6.2e-6, 26.2e-6),
        (0.375, 12.0e-6, 9.3e-6, 29.3e-6),
        (0.5, 17.1e-6, 11.4e-6, 33.4e-6),
        (1, 34.3e-6, 24.9e-6, 47.9e-6),
        (2, 68.6e-6, 55.7e-6, 78.7e-6),
        (3, 102.9e-6, 86.6e-6, 108.6e-6),
        (4, 137.2e-6, 117.5e-6, 139.5e-6),
    ];

    /// <summary>Least thickness of a finished layer, metres; null for a foil not in the table.</summary>
    /// <param name="foilOunces">Starting foil, ounces per square foot, 0.125 to 4.</param>
    /// <param name="placement">External layers are plated up.</param>
    /// <param name="boardClass">Performance class.</param>
    public static double? CopperM(double foilOunces, ConductorPlacement placement, BoardClass boardClass)
    {
        foreach ((double ounces, _, double internalM, double externalM) in s_foils)
        {
            if (ounces == foilOunces)
            {
                return placement == ConductorPlacement.Internal ? internalM : externalM + ClassM(boardClass);
            }
        }

        return null;
    }

    /// <summary>
    /// Least thickness of a layer that is stated as finished, metres: between the rows of the table in proportion, a row standing for its
    /// foil, outside with the least mean plating on it. Null for a thickness the table does not reach.
    /// </summary>
    /// <param name="finishedM">Stated thickness, metres.</param>
    /// <param name="placement">External layers are plated up.</param>
    /// <param name="boardClass">Performance class.</param>
    public static double? LeastOfFinishedM(double finishedM, ConductorPlacement placement, BoardClass boardClass)
    {
        bool isInternal = placement == ConductorPlacement.Internal;
        double foilM = isInternal ? finishedM : finishedM - MeanPlatingM(boardClass);
        for (int row = 1; row < s_foils.Length; row++)
        {
            (_, double thinM, double thinInternalM, double thinExternalM) = s_foils[row - 1];
            (_, double thickM, double thickInternalM, double thickExternalM) = s_foils[row];
            if (foilM >= thinM && foilM <= thickM)
            {
                double share = (foilM - thinM) / (thickM - thinM);
                return isInternal ? thinInternalM + (share * (thickInternalM - thinInternalM))
                    : thinExternalM + (share * (thickExternalM - thinExternalM)) + ClassM(boardClass);
            }
        }

        return null;
    }

    /// <summary>Least plating on the wall of a hole anywhere, metres.</summary>
    public static double PlatingM(BoardClass boardClass) => boardClass == BoardClass.Class3 ? 20e-6 : 18e-6;

    /// <summary>Least mean plating on the wall of a hole, metres.</summary>
    public static double MeanPlatingM(BoardClass boardClass) => boardClass == BoardClass.Class3 ? 25e-6 : 20e-6;

    private static double ClassM(BoardClass boardClass) => boardClass == BoardClass.Class3 ? MoreForClass3M : 0;
}
