namespace CopperPath.Quantities;

/// <summary>Conversion factors between SI and the units of the trade: the only place they are written.</summary>
public static class Units
{
    /// <summary>Nanometres in a metre.</summary>
    public const double NmPerM = 1e9;

    /// <summary>Nanometres in a millimetre.</summary>
    public const long NmPerMm = 1_000_000;

    /// <summary>Nanometres in an inch: 25.4 mm exactly (international yard and pound agreement, 1959).</summary>
    public const long NmPerInch = 25_400_000;

    /// <summary>Metres in a mil (0.001 inch).</summary>
    public const double MPerMil = 25.4e-6;

    /// <summary>Square metres in a square mil.</summary>
    public const double M2PerSquareMil = MPerMil * MPerMil;

    /// <summary>
    /// Copper thickness of one ounce per square foot, metres. 34.8 um is the trade's convention; the areal mass
    /// alone at 8.93 g/cm3 gives 34.2 um.
    /// </summary>
    public const double MPerOunceCopper = 34.8e-6;

    /// <summary>0 degrees Celsius in kelvin.</summary>
    public const double ZeroCelsiusK = 273.15;

    public static double MetresFromNm(double nm) => nm / NmPerM;

    public static double NmFromMetres(double metres) => metres * NmPerM;
}
