namespace CopperPath.Cli.Commands;

/// <summary>Words to choose from, in a sentence.</summary>
internal static class Choice
{
    /// <summary>"a, b or c".</summary>
    public static string Of(IEnumerable<string> words)
    {
        string[] all = [.. words];
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} or {all[^1]}";
    }

    /// <summary>The end of a message that guesses what was meant; empty without a guess.</summary>
    public static string Hint(string? near) => near is null ? "" : $"; did you mean '{near}'?";
}
