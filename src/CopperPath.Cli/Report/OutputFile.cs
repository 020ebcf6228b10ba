namespace CopperPath.Cli.Report;

/// <summary>A file to be written, complete in memory.</summary>
public sealed record OutputFile(string Name, byte[] Content);
