using CopperPath.Diagnostics;

namespace CopperPath.Reading.JobFiles;

/// <summary>What came out of a job file.</summary>
/// <param name="Job">The content, or null when the file is no job file: a job file is optional, so that is a warning.</param>
/// <param name="Diagnostics">Remarks in the order made.</param>
public sealed record JobFileReading(JobFile? Job, IReadOnlyList<Diagnostic> Diagnostics);
