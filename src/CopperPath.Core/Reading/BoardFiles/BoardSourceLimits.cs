namespace CopperPath.Reading.BoardFiles;

/// <summary>Bounds that keep a hostile or mistaken input from filling the memory.</summary>
/// <param name="MaxFiles">Largest number of files.</param>
/// <param name="MaxFileBytes">Largest size of one file, unpacked.</param>
/// <param name="MaxTotalBytes">Largest size of all files together, unpacked.</param>
public sealed record BoardSourceLimits(int MaxFiles, long MaxFileBytes, long MaxTotalBytes)
{
    /// <summary>1000 files, 128 MiB each, 256 MiB together: many times the largest real board.</summary>
    public static readonly BoardSourceLimits Usual = new(1_000, 128L << 20, 256L << 20);

    /// <summary>
    /// How many times its own size an archive may unpack to; fabrication files pack to about a seventh, and what packs a
    /// hundred times is made to fill memory. Common practice, no source.
    /// </summary>
    public int MaxUnpackRatio { get; init; } = 100;

    /// <summary>Every archive may unpack to this much, however small it is.</summary>
    public long FreeUnpackBytes { get; init; } = 16L << 20;

    /// <summary>Largest archive: all files unpacked, and a kibibyte of names and dates for each.</summary>
    public long MaxArchiveBytes => MaxTotalBytes + (1024L * MaxFiles);

    /// <summary>Most bytes that an archive of a size may hold.</summary>
    public long MostUnpacked(long archiveBytes) =>
        Math.Min(MaxTotalBytes, Math.Max(FreeUnpackBytes, archiveBytes * MaxUnpackRatio));
}
