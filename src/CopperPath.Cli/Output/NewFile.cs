using CopperPath.Files;

namespace CopperPath.Cli.Output;

/// <summary>
/// One file that must be new: written beside its place, and given its name at once, never over a file or link. Prepared before the
/// work begins, so that a place that can not be written is known then.
/// </summary>
internal sealed class NewFile : IDisposable
{
    private readonly string _path;
    private readonly string _draft;
    private IReadOnlyList<string> _made = [];

    private NewFile(string path)
    {
        _path = path;
        _draft = Draft.In(Path.GetDirectoryName(Path.GetFullPath(path))!, ".part");
    }

    /// <summary>Makes sure that the file can be written.</summary>
    /// <param name="path">Its path; nothing may stand there.</param>
    /// <param name="problem">One line when there is no result.</param>
    public static NewFile? Prepare(string path, out string? problem)
    {
        NewFile? file = null;
        try
        {
            if (Path.Exists(path) || PathKinds.IsLink(path))
            {
                problem = Exists(path);
                return null;
            }

            NewFile begun = file = new(path);
            Unfinished.Add(begun);
            Unfinished.Undisturbed(() =>
            {
                begun._made = Draft.MakeFolders(Path.GetDirectoryName(begun._draft)!);
                Draft.WriteNew(begun._draft, []);
            });
            problem = null;
            return begun;
        }
        catch (Exception e) when (RegularFile.IsOfFiles(e))
        {
            file?.Dispose();
            problem = Unwritable(path, e);
            return null;
        }
    }

    /// <returns>Null, or one line saying what went wrong; there is then no file.</returns>
    public string? Write(byte[] content)
    {
        try
        {
            Unfinished.Undisturbed(() =>
            {
                File.Delete(_draft);
                Draft.WriteNew(_draft, content);
                File.Move(_draft, _path, overwrite: false);
                _made = [];
            });
            return null;
        }
        catch (Exception e) when (RegularFile.IsOfFiles(e))
        {
            return Path.Exists(_path) ? Exists(_path) : Unwritable(_path, e);
        }
    }

    /// <summary>Removes what was begun and not finished.</summary>
    public void Dispose() => Unfinished.Undisturbed(() =>
    {
        Unfinished.Remove(this);
        Draft.Try(() => File.Delete(_draft));
        foreach (string folder in _made.Reverse())
        {
            Draft.Try(() => Directory.Delete(folder));
        }
    });

    private static string Exists(string path) => $"{path}: error OUT002: found a file of that name; expected a new one, nothing is overwritten";

    private static string Unwritable(string path, Exception e) =>
        $"{path}: error OUT001: found a file that can not be written ({e.Message}); expected a place that can";
}
