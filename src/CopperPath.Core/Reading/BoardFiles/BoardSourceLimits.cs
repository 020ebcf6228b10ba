namespace CopperPath.Reading.BoardFiles;

/// <summary>Bounds that keep a hostile or mistaken input from filling the memory.</summary>
/// <param name="MaxFiles">Largest number of files.</param>
/// <param name="MaxFileBytes">Largest size of one file, unpacked.</param>
/// <param name="MaxTotalBytes">Largest size of all files together, unpacked.</param>
public sealed record BoardSourceLimits(int MaxFiles, long MaxFileBytes, long MaxTotalBytes)
{
    /// <summary>1000 files, 256 MB each, 1 GB together: many times the largest real board.</summary>
    public static readonly BoardSourceLimits Usual = new(1_000, 256L << 20, 1L << 30);
}
