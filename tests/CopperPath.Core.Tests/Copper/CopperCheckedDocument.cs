namespace CopperPath.Core.Tests.Copper;

/// <summary>
/// <c>docs/copper-checked.md</c>: tables whose rows are made from the real boards. With COPPERPATH_WRITE_DOCS=1 the tests
/// write a board's rows anew before they look for them.
/// </summary>
internal static class CopperCheckedDocument
{
    private const string WriteVariable = "COPPERPATH_WRITE_DOCS";

    private static readonly string s_path = Path.Combine(SharedData.ProjectRoot, "docs", "copper-checked.md");
    private static readonly Lock s_writing = new();

    /// <summary>Fails unless the rows of a board stand one after another under a heading, and no others of that board.</summary>
    public static void ShouldSay(string heading, string board, IReadOnlyList<string> rows)
    {
        lock (s_writing)
        {
            if (Environment.GetEnvironmentVariable(WriteVariable) == "1")
            {
                Write(heading, board, rows);
            }

            RowsOf(heading, board, out _).ShouldBe(rows, $"run this test with {WriteVariable}=1 to write the rows anew");
        }
    }

    private static void Write(string heading, string board, IReadOnlyList<string> rows)
    {
        string[] lines = File.ReadAllLines(s_path);
        int count = RowsOf(heading, board, out int first).Count;
        File.WriteAllText(s_path, string.Join('\n', [.. lines[..first], .. rows, .. lines[(first + count)..], ""]));
    }

    /// <summary>Rows of the section that begin with the board's name; where there are none, the end of its table.</summary>
    private static IReadOnlyList<string> RowsOf(string heading, string board, out int first)
    {
        string[] lines = File.ReadAllLines(s_path);
        int section = Array.IndexOf(lines, $"## {heading}");
        int end = Array.FindIndex(lines, section + 1, line => line.StartsWith("## ", StringComparison.Ordinal));
        end = end < 0 ? lines.Length : end;
        int table = Array.FindIndex(lines, section, line => line.StartsWith("| ---", StringComparison.Ordinal));
        int afterTable = Array.FindIndex(lines, table, line => !line.StartsWith('|'));
        afterTable = afterTable < 0 ? lines.Length : afterTable;
        int found = Array.FindIndex(lines, section, end - section, line => line.StartsWith($"| {board} |", StringComparison.Ordinal));
        first = found < 0 ? afterTable : found;
        return found < 0 ? [] : [.. lines.Skip(found).TakeWhile(line => line.StartsWith($"| {board} |", StringComparison.Ordinal))];
    }
}
