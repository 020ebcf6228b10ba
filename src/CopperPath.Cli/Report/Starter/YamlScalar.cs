namespace CopperPath.Cli.Report.Starter;

/// <summary>A text as one quoted YAML scalar.</summary>
internal static class YamlScalar
{
    public static string Quoted(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";
}
