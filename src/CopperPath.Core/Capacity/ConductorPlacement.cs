namespace CopperPath.Capacity;

/// <summary>Whether a conductor lies on a face of the board or inside it.</summary>
public enum ConductorPlacement
{
    External,
    Internal,
}
