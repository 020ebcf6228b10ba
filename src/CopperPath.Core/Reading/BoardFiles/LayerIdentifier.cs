using CopperPath.Reading.JobFiles;

namespace CopperPath.Reading.BoardFiles;

/// <summary>
/// Finds what each file of a board is for. Evidence, strongest first: the user's override, the file's own
/// <c>.FileFunction</c>, the job file, the kind of content, the name. Every guess is reported as one.
/// </summary>
public static class LayerIdentifier
{
    /// <summary>Identifies all files of a source. Never throws.</summary>
    public static BoardIdentification Identify(BoardSource source, IReadOnlyList<RoleOverride>? overrides = null)
    {
        IdentificationLog log = new(source.Path);

        // 1. What each file is by content, and what it declares about itself.
        List<FileDossier> dossiers = [.. source.Files.Select(f => new FileDossier(f, ContentSniffer.Sniff(f.Bytes.Span)))];

        // 2. The job file speaks for files that say nothing themselves.
        JobFile? job = ReadJobFile(dossiers, log);

        // 3. Names, read against each other: the words all names share are the board's own name.
        ReadNames(dossiers);

        // 4. One claim for each file, the strongest; contradictions are reported.
        foreach (FileDossier dossier in dossiers)
        {
            dossier.Settle(FindOverride(dossier.File.Name, overrides), log);
        }

        ReportUnknownOverrides(dossiers, overrides, log);

        // 5. Numbers for the copper layers, which only the whole set can give.
        int layerCount = CopperOrder.Assign(dossiers, job, log);

        // 6. Plating and span of the drill files.
        DrillTraits.Assign(dossiers, layerCount, log);

        return new BoardIdentification([.. dossiers.Select(d => d.ToIdentifiedFile())], layerCount, job, log.Remarks);
    }

    private static JobFile? ReadJobFile(List<FileDossier> dossiers, IdentificationLog log)
    {
        FileDossier[] jobFiles = [.. dossiers.Where(d => d.Content == FileContent.JobFile)];
        if (jobFiles.Length == 0)
        {
            return null;
        }

        if (jobFiles.Length > 1)
        {
            log.Warn(BoardSourceCode.RoleConflict, jobFiles[1].File.Name, "a second job file", "one job file for a board; the first is used");
        }

        JobFileReading reading = JobFileReader.Read(jobFiles[0].File.Name, jobFiles[0].File.Bytes);
        log.Add(reading.Diagnostics);
        foreach (JobFileEntry entry in reading.Job?.Files ?? [])
        {
            FileDossier? named = dossiers.Find(d => d.File.Name == entry.Path);
            if (named is null)
            {
                log.Warn(BoardSourceCode.RoleConflict, jobFiles[0].File.Name, $"the file '{entry.Path}', which is not there", "the files named by the job file",
                    affectsCopper: RoleClaim.FromFileFunction(entry.FileFunction, "the job file") is null or { MakesCopper: true });
            }
            else
            {
                named.Job = RoleClaim.FromFileFunction(entry.FileFunction, "the job file");
            }
        }

        return reading.Job;
    }

    private static void ReadNames(List<FileDossier> dossiers)
    {
        FileDossier[] layers = [.. dossiers.Where(d => d.Content is FileContent.Gerber or FileContent.Drill)];
        string[][] names = [.. layers.Select(d => NameWords.Of(Path.GetFileNameWithoutExtension(d.File.Name)))];
        int lead = NameWords.CommonLead(names);
        foreach ((FileDossier dossier, string[] words) in layers.Zip(names))
        {
            dossier.Words = words[lead..];
        }
    }

    private static RoleOverride? FindOverride(string name, IReadOnlyList<RoleOverride>? overrides) =>
        overrides?.LastOrDefault(o => o.FileName == name);

    private static void ReportUnknownOverrides(
        List<FileDossier> dossiers, IReadOnlyList<RoleOverride>? overrides, IdentificationLog log)
    {
        foreach (RoleOverride unknown in (overrides ?? []).Where(o => dossiers.TrueForAll(d => d.File.Name != o.FileName)))
        {
            log.Error(BoardSourceCode.UnknownOverride, unknown.FileName, $"an override for '{unknown.FileName}'", "the name of a file of the board");
        }
    }
}
