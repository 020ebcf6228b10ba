using CopperPath.Artwork;

namespace CopperPath.Reading.BoardFiles;

/// <summary>All that is known about one file while the board is being identified.</summary>
internal sealed class FileDossier
{
    private readonly string? _unknownFunction;
    private string _explanation = "";

    public FileDossier(BoardFile file, FileContent content)
    {
        File = file;
        Content = content;
        if (content is FileContent.Gerber or FileContent.Drill
            && DeclaredFunction.Find(file.Bytes.Span) is { } function)
        {
            Declared = RoleClaim.FromFileFunction(function, "the file");
            _unknownFunction = Declared is null ? function : null;
        }
    }

    public BoardFile File { get; }

    public FileContent Content { get; }

    /// <summary>Words of the name without those shared by all layers.</summary>
    public string[] Words { get; set; } = [];

    public RoleClaim? Declared { get; }

    public RoleClaim? Job { get; set; }

    /// <summary>The claim that was taken.</summary>
    public RoleClaim Claim { get; private set; } = new(FileRole.Other, "nothing known");

    public Evidence Evidence { get; private set; }

    public int CopperLayer { get; private set; }

    public Plating Plating { get; set; }

    public DrillSpan? Span { get; set; }

    public bool IsCopper => Claim.Role == FileRole.Copper;

    public bool IsDrill => Claim.Role == FileRole.Drill;

    /// <summary>Takes the strongest claim and reports weaker ones that contradict it.</summary>
    public void Settle(RoleOverride? byUser, IdentificationLog log)
    {
        RoleClaim? byExtension = NameClaims.FromExtension(File.Name);
        RoleClaim? byWords = Content == FileContent.Gerber ? NameClaims.FromWords(Words) : null;
        RoleClaim? byName = byExtension is null || IsContradictedByContent(byExtension) ? byWords : byExtension;
        if (byUser is not null)
        {
            Take(FromOverride(byUser), Evidence.Override);
            return;
        }

        if (Declared is not null)
        {
            Take(Declared, Evidence.Declared);
            ReportConflict(Job, log);
            ReportConflict(Content == FileContent.Gerber && !IsDrill ? byName : null, log);
        }
        else if (Job is not null)
        {
            Take(Job, Evidence.JobFile);
            ReportConflict(Content == FileContent.Gerber ? byName : null, log);
        }
        else if (FromContent() is { } byContent)
        {
            Take(byContent, Evidence.Content);
        }
        else if (Content == FileContent.Gerber)
        {
            SettleGerberByName(byName, byWords, log);
        }
        else
        {
            Take(new RoleClaim(FileRole.Other, $"content of kind {Content.ToString().ToLowerInvariant()}"), Evidence.Content);
            ReportUnread(byExtension, log);
        }

        ReportUnknownFunction(log);
    }

    public void PlaceCopper(int layer, string reason)
    {
        CopperLayer = layer;
        _explanation = reason;
    }

    public void Explain(string reason) => _explanation = _explanation.Length == 0 ? reason : $"{_explanation}; {reason}";

    public IdentifiedFile ToIdentifiedFile() => new(
        File,
        Content,
        Claim.Role,
        CopperLayer,
        Span,
        Plating,
        Evidence,
        _explanation.Length == 0 ? Claim.Reason : $"{Claim.Reason}; {_explanation}");

    private void Take(RoleClaim claim, Evidence evidence)
    {
        Claim = claim;
        Evidence = evidence;
        Plating = claim.Plating;
        Span = claim.Span;
    }

    private void SettleGerberByName(RoleClaim? byName, RoleClaim? byWords, IdentificationLog log)
    {
        if (byName is null)
        {
            Take(new RoleClaim(FileRole.Other, "a Gerber file whose name says nothing"), Evidence.Content);
            log.Warn(BoardSourceCode.UnknownRole, File.Name, "a Gerber file that declares no function and whose name says nothing", "an override with its role; it is left out",
                affectsCopper: true);
            return;
        }

        Take(byName, Evidence.Name);
        ReportConflict(byWords, log);
    }

    /// <summary>Depth routing cuts copper and is not read; any other word is a damaged or a foreign one.</summary>
    private void ReportUnknownFunction(IdentificationLog log)
    {
        if (_unknownFunction is not null)
        {
            log.Warn(
                BoardSourceCode.UnknownFunction,
                File.Name,
                $"the file function '{_unknownFunction}', which is not known",
                $"a function of the layer format; {Claim.Reason} decides, else an override with its role",
                affectsCopper: Claim.MakesCopper || Claim.Role == FileRole.Other);
        }
    }

    /// <summary>
    /// Text, lists and pictures lie beside fabrication files and are no concern. A file named as copper, drill or
    /// outline, or one made of coordinates, is: damaged, it would be left out and its copper or holes with it.
    /// </summary>
    private void ReportUnread(RoleClaim? byExtension, IdentificationLog log)
    {
        RoleClaim? named = NameClaims.IsPlotExtension(File.Name)
            ? NameClaims.FromWords(NameWords.Of(Path.GetFileNameWithoutExtension(File.Name)))
                ?? new RoleClaim(FileRole.Copper, "its extension, that of plot data")
            : byExtension;
        int coordinates = CoordinateLines.CountIn(File.Bytes.Span);
        if (named is { MakesCopper: true } || coordinates >= CoordinateLines.Telling)
        {
            string found = named is { MakesCopper: true }
                ? $"{Content.ToString().ToLowerInvariant()} in a file named as {named.Role.ToString().ToLowerInvariant()} ({named.Reason})"
                : FormattableString.Invariant($"{coordinates} lines of coordinates in a file of no known form");
            log.Warn(BoardSourceCode.UnreadData, File.Name, found,
                "fabrication data in a form that is read, or an override with its role; it is left out", affectsCopper: true);
        }
    }

    private bool IsContradictedByContent(RoleClaim byExtension) => Content == FileContent.Gerber
        && byExtension.Role is FileRole.Netlist or FileRole.JobFile or FileRole.Placement;

    private RoleClaim? FromContent() => Content switch
    {
        FileContent.Drill => new RoleClaim(FileRole.Drill, "drill commands in it"),
        FileContent.Netlist => new RoleClaim(FileRole.Netlist, "netlist records in it"),
        FileContent.JobFile => new RoleClaim(FileRole.JobFile, "job data in it"),
        FileContent.Placement => new RoleClaim(FileRole.Placement, "a table of placements in it"),
        _ => null,
    };

    private static RoleClaim FromOverride(RoleOverride byUser) => new(
        byUser.Role,
        "stated by the user",
        byUser is { Role: FileRole.Copper, CopperLayer: > 0 } ? LayerPlace.Numbered : LayerPlace.None,
        byUser.CopperLayer,
        byUser.Plating);

    private void ReportConflict(RoleClaim? weaker, IdentificationLog log)
    {
        if (weaker is not null && !Claim.AgreesWith(weaker))
        {
            log.Warn(
                BoardSourceCode.RoleConflict,
                File.Name,
                $"{weaker.Reason}, against: {Claim.Reason}",
                "one role; the stronger evidence stands",
                affectsCopper: Evidence < Evidence.Declared && (IsCopper || weaker.Role == FileRole.Copper));
        }
    }
}
