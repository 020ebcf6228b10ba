namespace CopperPath.Artwork;

/// <summary>Whether an object adds material or clears what was drawn before it.</summary>
public enum Polarity
{
    Dark,
    Clear,
}
