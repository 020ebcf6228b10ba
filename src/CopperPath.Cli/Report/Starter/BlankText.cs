using CopperPath.OutsideText;

namespace CopperPath.Cli.Report.Starter;

/// <summary>A guess of the starter brief as the brief's reader knows it: a blank with what it may as well be.</summary>
internal static class BlankText
{
    /// <param name="guess">What is worked with until somebody confirms it; YAML.</param>
    /// <param name="candidates">What it may be, the guess among them or not; YAML, empty where nothing is known.</param>
    /// <param name="because">What speaks for the guess, any text; null where nothing does.</param>
    public static string Of(string guess, IEnumerable<string> candidates, string? because = null)
    {
        string listed = string.Join(", ", candidates);
        return $"{{ guess: {guess}{(listed.Length > 0 ? $", candidates: [{listed}]" : "")}{(because is null ? "" : $", because: {YamlScalar.Quoted(because)}")} }}";
    }
}
