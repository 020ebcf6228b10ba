using CopperPath.Artwork;

namespace CopperPath.Reading.BoardFiles;

/// <summary>The user's statement about a file.</summary>
/// <param name="FileName">Name of the file in the folder or archive.</param>
/// <param name="Role">Its role.</param>
/// <param name="CopperLayer">Copper layer from 1 = top, for copper.</param>
/// <param name="Plating">Plating, for drill files; unknown leaves it to the marks in the file.</param>
public sealed record RoleOverride(string FileName, FileRole Role, int CopperLayer = 0, Plating Plating = Plating.Unknown);
