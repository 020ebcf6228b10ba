namespace CopperPath.Reading.BoardFiles;

/// <summary>One file of a board's fabrication data, already in memory.</summary>
/// <param name="Name">Name within the folder or archive, without directory.</param>
/// <param name="Bytes">The whole content.</param>
public sealed record BoardFile(string Name, ReadOnlyMemory<byte> Bytes);
