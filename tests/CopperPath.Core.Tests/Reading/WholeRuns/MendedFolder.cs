using System.Text;
using CopperPath.Core.Tests.Fuzzing;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Reading.WholeRuns;

/// <summary>The small board as a folder of files that a test changes before the whole review is run over it.</summary>
internal sealed class MendedFolder : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("copperpath-test-").FullName;
    private readonly SmallBoard _board;

    public MendedFolder(int layerCount = 2, bool withAttributes = true)
    {
        _board = new SmallBoard(layerCount, withAttributes);
        foreach ((string name, byte[] bytes) in _board.Files())
        {
            Write(name, Encoding.ASCII.GetString(bytes));
        }
    }

    /// <summary>Lines put into the brief's section on the board, such as an answer to a question of the program.</summary>
    public string Answer { get; set; } = "";

    public string this[string name] => File.ReadAllText(Path.Combine(_root, "files", name));

    public MendedFolder Write(string name, string text)
    {
        Directory.CreateDirectory(Path.Combine(_root, "files"));
        File.WriteAllText(Path.Combine(_root, "files", name), text);
        return this;
    }

    public MendedFolder Change(string name, string from, string to)
    {
        this[name].ShouldContain(from);
        return Write(name, this[name].Replace(from, to, StringComparison.Ordinal));
    }

    public MendedFolder Rename(string name, string to)
    {
        File.Move(Path.Combine(_root, "files", name), Path.Combine(_root, "files", to));
        return this;
    }

    public Review Check()
    {
        string brief = Path.Combine(_root, "brief.yaml");
        string text = _board.Brief("files");
        File.WriteAllText(brief, Answer.Length == 0 ? text
            : text.Replace("board: { name: Small, files: files }", $"board:\n  name: Small\n  files: files\n{Answer}", StringComparison.Ordinal));
        return Analysis.Check(brief);
    }

    /// <summary>Runs the review, which must not pass, and gives the remarks that keep it from passing.</summary>
    public string[] WhyNotJudged()
    {
        Review review = Check();
        review.Verdict.ShouldBe(Verdict.CouldNotJudge, string.Join('\n', review.Diagnostics));
        return [.. review.Diagnostics.Where(remark => remark.AffectsCopper).Select(remark => remark.ToString())];
    }

    public void Dispose() => Directory.Delete(_root, recursive: true);
}
