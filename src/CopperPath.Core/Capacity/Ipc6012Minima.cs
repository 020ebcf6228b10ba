namespace CopperPath.Capacity;

/// <summary>Performance class of a rigid board after IPC-6012.</summary>
public enum BoardClass
{
    Class1,
    Class2,
    Class3,
}

/// <summary>
/// Least copper a finished board of a class may have: what a capacity check on the safe side should count on. After the
/// tables of IPC-6012, from memory; table numbers and values vary by revision, so read them in the revision ordered to.
/// </summary>
public static class Ipc6012Minima
{
    private static readonly (double Ounces, double InternalM, double ExternalM, double ExternalClass3M)[] s_foils =
    [
        (0.5, 11.4e-6, 33.4e-6, 38.4e-6),
        (1, 24.9e-6, 47.9e-6, 52.9e-6),
        (2, 55.7e-6, 78.7e-6, 83.7e-6),
    ];

    /// <summary>Least thickness of a finished layer, metres; null for a foil not in the table.</summary>
    /// <param name="foilOunces">Starting foil, ounces per square foot: 0.5, 1 or 2.</param>
    /// <param name="placement">External layers are plated up.</param>
    /// <param name="boardClass">Performance class.</param>
    public static double? CopperM(double foilOunces, ConductorPlacement placement, BoardClass boardClass)
    {
        foreach ((double ounces, double internalM, double externalM, double externalClass3M) in s_foils)
        {
            if (ounces == foilOunces)
            {
                return placement == ConductorPlacement.Internal ? internalM
                    : boardClass == BoardClass.Class3 ? externalClass3M : externalM;
            }
        }

        return null;
    }

    /// <summary>Least plating on the wall of a hole anywhere, metres.</summary>
    public static double PlatingM(BoardClass boardClass) => boardClass == BoardClass.Class3 ? 20e-6 : 18e-6;

    /// <summary>Least mean plating on the wall of a hole, metres.</summary>
    public static double MeanPlatingM(BoardClass boardClass) => boardClass == BoardClass.Class3 ? 25e-6 : 20e-6;
}
