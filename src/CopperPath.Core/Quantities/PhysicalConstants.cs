namespace CopperPath.Quantities;

/// <summary>Constants of nature, CODATA 2018 (from memory).</summary>
public static class PhysicalConstants
{
    /// <summary>Magnetic constant, henries per metre.</summary>
    public const double Mu0HPerM = 1.25663706212e-6;

    /// <summary>Electric constant, farads per metre.</summary>
    public const double Epsilon0FPerM = 8.8541878128e-12;
}
