namespace CopperPath.Thermal;

/// <summary>How still air met one face in a solution, and whether the correlation used is published for that.</summary>
/// <param name="Correlation">Whose form it is.</param>
/// <param name="LengthM">Height of an upright plate, area over perimeter of a lying one, metres.</param>
/// <param name="Rayleigh">Rayleigh number at the mean rise of the face.</param>
/// <param name="LeastRayleigh">From where on the form is published; 0 where it has no lower end.</param>
/// <param name="MostRayleigh">Up to where.</param>
public sealed record StillAir(string Correlation, double LengthM, double Rayleigh, double LeastRayleigh, double MostRayleigh)
{
    public bool IsWithinRange => Rayleigh >= LeastRayleigh && Rayleigh <= MostRayleigh;
}
