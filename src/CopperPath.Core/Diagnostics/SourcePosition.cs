namespace CopperPath.Diagnostics;

/// <summary>A place in an input file. Line and column count from 1; 0 means the file as a whole.</summary>
public readonly record struct SourcePosition(string File, int Line, int Column)
{
    public static SourcePosition WholeFile(string file) => new(file, 0, 0);

    public override string ToString() => Line == 0 ? File : string.Create(
        System.Globalization.CultureInfo.InvariantCulture, $"{File}:{Line}:{Column}");
}
