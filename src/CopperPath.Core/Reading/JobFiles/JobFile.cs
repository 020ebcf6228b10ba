namespace CopperPath.Reading.JobFiles;

/// <summary>What a Gerber job file (.gbrjob) says about a board. Lengths in metres; null where the file is silent.</summary>
/// <param name="CopperLayerCount">Number of copper layers.</param>
/// <param name="BoardThicknessM">Thickness of the finished board, metres.</param>
/// <param name="WidthM">Board size in X, metres.</param>
/// <param name="HeightM">Board size in Y, metres.</param>
/// <param name="Files">Files with their function, in file order.</param>
/// <param name="Stackup">Materials from top to bottom.</param>
public sealed record JobFile(
    int? CopperLayerCount,
    double? BoardThicknessM,
    double? WidthM,
    double? HeightM,
    IReadOnlyList<JobFileEntry> Files,
    IReadOnlyList<StackupMaterial> Stackup)
{
    /// <summary>Copper entries of the stack-up, top first: the n-th is copper layer n.</summary>
    public IEnumerable<StackupMaterial> CopperLayers => Stackup.Where(m => m.Kind == StackupKind.Copper);
}

/// <summary>One file named by the job file.</summary>
/// <param name="Path">Plain file name beside the job file.</param>
/// <param name="FileFunction">Function text, e.g. <c>Copper,L1,Top</c>.</param>
/// <param name="FilePolarity"><c>Positive</c>, <c>Negative</c> or null.</param>
public sealed record JobFileEntry(string Path, string FileFunction, string? FilePolarity);

/// <summary>Kind of a layer of the stack-up.</summary>
public enum StackupKind
{
    Other,
    Legend,
    SolderPaste,
    SolderMask,
    Copper,
    Dielectric,
}

/// <summary>One layer of the stack-up.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name, or null.</param>
/// <param name="ThicknessM">Thickness in metres, or null when the file does not give it.</param>
/// <param name="Material">Material name, or null.</param>
/// <param name="DielectricConstant">Relative permittivity, or null.</param>
public sealed record StackupMaterial(
    StackupKind Kind,
    string? Name,
    double? ThicknessM,
    string? Material,
    double? DielectricConstant);
