using CopperPath.Cli.Report;
using CopperPath.Files;

namespace CopperPath.Cli.Output;

/// <summary>
/// A folder that is replaced as a whole: its new content is written beside it, under a name of its own, and put in its place by
/// renaming. Whatever goes wrong, the folder holds one report and no parts of two. Prepared before the work begins, so that
/// a place that can not be written is known then.
/// </summary>
internal sealed class ReportFolder : IDisposable
{
    /// <summary>Name of the folder that holds the reports of the briefs beside it.</summary>
    public const string HomeName = "copperpath-report";

    private static readonly byte[] s_probe = new byte[4096];

    private readonly string _command;
    private readonly string _target;
    private readonly string _parent;
    private readonly string _draft;
    private IReadOnlyList<string> _made = [];

    private ReportFolder(string folder, string command, string target, string parent)
    {
        (Folder, _command, _target, _parent) = (folder, command, target, parent);
        _draft = Draft.In(parent, ".part");
    }

    /// <summary>The folder as the caller named it.</summary>
    public string Folder { get; }

    /// <summary>Makes sure that a report can be written.</summary>
    /// <param name="folder">Where it goes: a new folder, an empty one, or one with an earlier report of the command and nothing else.</param>
    /// <param name="command">The command that writes it.</param>
    /// <param name="problem">One line when there is no result.</param>
    public static ReportFolder? Prepare(string folder, string command, out string? problem)
    {
        ReportFolder? report = null;
        try
        {
            string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
            problem = FaultOf(folder, target, command);
            if (problem is not null)
            {
                return null;
            }

            report = new ReportFolder(folder, command, target, Path.GetDirectoryName(target)!);
            Unfinished.Add(report);
            Unfinished.Undisturbed(report.Begin);
            return report;
        }
        catch (Exception e) when (RegularFile.IsOfFiles(e))
        {
            report?.Dispose();
            problem = Unwritable(folder, e);
            return null;
        }
    }

    /// <summary>Puts the files in the place of whatever report was there; once.</summary>
    /// <returns>Null, or one line saying what went wrong; an earlier report is then still there.</returns>
    public string? Replace(IReadOnlyList<OutputFile> files)
    {
        bool isWhole = false;
        try
        {
            // Whoever removed the place meanwhile gets it back.
            Unfinished.Undisturbed(() => _made = [.. _made, .. Draft.MakeFolders(_draft)]);
            foreach (OutputFile file in files)
            {
                Write(file.Name, file.Content);
            }

            Write(ReportManifest.FileName, ReportManifest.Of(_command, files.Select(file => file.Name)));
            isWhole = true;
            string? problem = null;
            Unfinished.Undisturbed(() => problem = Swap());
            return problem;
        }
        catch (Exception e) when (RegularFile.IsOfFiles(e))
        {
            if (!isWhole)
            {
                return Unwritable(Folder, e);
            }

            // Nothing is wrong with what was written: it is kept where it is.
            Unfinished.Remove(this);
            return $"{Folder}: error OUT001: found a folder that can not be replaced ({e.Message}); "
                + $"expected a writable one, see --output; the report is whole in {_draft}";
        }
    }

    /// <summary>Removes what was begun and not finished.</summary>
    public void Dispose() => Unfinished.Undisturbed(() =>
    {
        Unfinished.Remove(this);
        if (Directory.Exists(_draft))
        {
            Draft.Try(() => Directory.Delete(_draft, recursive: true));
        }

        foreach (string folder in _made.Reverse())
        {
            Draft.Try(() => Directory.Delete(folder));
        }
    });

    private static string? FaultOf(string folder, string target, string command)
    {
        string here = Path.GetFullPath(".");
        if (Path.GetDirectoryName(target) is null || here == target || here.StartsWith(target + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            return Refusal(folder, "the folder the command runs in, or one around it", "a folder of the report's own");
        }

        string parent = Path.GetDirectoryName(target)!;
        if (PathKinds.IsLink(target) || (Path.GetFileName(parent) == HomeName && PathKinds.IsLink(parent)))
        {
            return Refusal(folder, "a link", "a folder: nothing is written through a link");
        }

        PathKind kind = PathKinds.At(target);
        if (kind is not (PathKind.Nothing or PathKind.Folder))
        {
            return Refusal(folder, PathKinds.Named(kind), "a folder");
        }

        return kind == PathKind.Folder && ReportManifest.ForeignIn(target, command) is { } foreign
            ? Refusal(folder, $"{foreign} in it, which is of no earlier report", "a new folder, or one with an earlier report alone: the whole folder is replaced, see --output")
            : null;
    }

    private static string Refusal(string folder, string found, string expected) => $"{folder}: error OUT003: found {found}; expected {expected}";

    private static string Unwritable(string folder, Exception e) =>
        $"{folder}: error OUT001: found a folder that can not be written ({e.Message}); expected a writable one, see --output";

    /// <summary>Makes the draft's folder and writes a little to it; a folder to be replaced is moved, and moved back.</summary>
    private void Begin()
    {
        _made = Draft.MakeFolders(_parent);
        if (Directory.Exists(_target))
        {
            string aside = Draft.In(_parent, ".old");
            Directory.Move(_target, aside);
            Directory.Move(aside, _target);
        }

        Directory.CreateDirectory(_draft);
        string probe = Path.Combine(_draft, "probe");
        Draft.WriteNew(probe, s_probe);
        File.Delete(probe);
    }

    private void Write(string name, byte[] content)
    {
        if (name.Length == 0 || Path.GetFileName(name) != name || name.Any(char.IsControl))
        {
            throw new ArgumentException($"'{name}' is no file name");
        }

        Unfinished.Undisturbed(() => Draft.WriteNew(Path.Combine(_draft, name), content));
    }

    /// <summary>Two renames; nothing is deleted before the new report is in place.</summary>
    private string? Swap()
    {
        if (FaultOf(Folder, _target, _command) is { } problem)
        {
            return problem;
        }

        string? old = Directory.Exists(_target) ? Draft.In(_parent, ".old") : null;
        if (old is not null)
        {
            Directory.Move(_target, old);
        }

        try
        {
            Directory.Move(_draft, _target);
        }
        catch (Exception e) when (old is not null && RegularFile.IsOfFiles(e))
        {
            Directory.Move(old, _target);
            throw;
        }

        _made = [];
        Unfinished.Remove(this);
        if (old is not null)
        {
            ReportManifest.Delete(old);
        }

        return null;
    }
}
