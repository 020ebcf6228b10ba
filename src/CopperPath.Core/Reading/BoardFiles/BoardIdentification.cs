using CopperPath.Diagnostics;
using CopperPath.Reading.JobFiles;

namespace CopperPath.Reading.BoardFiles;

/// <summary>All files of a board with their roles.</summary>
/// <param name="Files">One entry for each file, in the order of the source.</param>
/// <param name="CopperLayerCount">Number of copper layers; 0 when none was found.</param>
/// <param name="Job">The job file, or null.</param>
/// <param name="Diagnostics">Remarks: conflicts, gaps, and every guess.</param>
public sealed record BoardIdentification(
    IReadOnlyList<IdentifiedFile> Files,
    int CopperLayerCount,
    JobFile? Job,
    IReadOnlyList<Diagnostic> Diagnostics)
{
    /// <summary>Copper files from top to bottom.</summary>
    public IEnumerable<IdentifiedFile> Copper => OfRole(FileRole.Copper).OrderBy(f => f.CopperLayer);

    /// <summary>Files of one role.</summary>
    public IEnumerable<IdentifiedFile> OfRole(FileRole role) => Files.Where(f => f.Role == role);
}
