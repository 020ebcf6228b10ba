namespace CopperPath.DemoBoards.Writing;

/// <summary>What a board is called in its files.</summary>
/// <param name="Name">Full name.</param>
/// <param name="Revision">Revision letter.</param>
/// <param name="ProjectGuid">Project identity, the same in all files and revisions.</param>
/// <param name="FileStem">Start of file names in the full dialect.</param>
/// <param name="ShortStem">Start of file names in the bare dialect.</param>
/// <param name="CopperMm">Copper thickness from top to bottom.</param>
/// <param name="DielectricMm">Dielectric thickness between copper layers.</param>
public sealed record BoardTitle(
    string Name, string Revision, string ProjectGuid, string FileStem, string ShortStem, IReadOnlyList<double> CopperMm, IReadOnlyList<double> DielectricMm);
