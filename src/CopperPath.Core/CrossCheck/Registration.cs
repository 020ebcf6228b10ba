namespace CopperPath.CrossCheck;

/// <summary>How the points of one file lie on those of another.</summary>
/// <param name="Possible">Most points that can meet: the number of the fewer.</param>
/// <param name="InPlace">Points that meet as the files stand.</param>
/// <param name="Misfit">Where nearly all would meet, when they do not as the files stand; null otherwise.</param>
/// <param name="Explained">Points that meet then.</param>
internal sealed record Registration(int Possible, int InPlace, Misfit? Misfit = null, int Explained = 0)
{
    /// <summary>Fewer points prove nothing: two pads at some distance are found on every board.</summary>
    public const int FewestPoints = 3;

    public bool CanTell => Possible >= FewestPoints;

    /// <summary>Whether at least this share of the points meets as the files stand.</summary>
    public bool IsInPlace(double leastShare) => CanTell && InPlace >= leastShare * Possible;
}
