namespace CopperPath.Cli.Commands;

/// <summary>Arguments a command has no use for are refused: what is passed over in silence was meant.</summary>
internal static class SurplusArguments
{
    /// <returns>Null, or one line that says what is too much.</returns>
    public static string? Refusal(string command, string takes, IEnumerable<string> surplus) => surplus.FirstOrDefault() is { } first
        ? $"{command}: error CMD001: found '{first}' after the first argument; expected one {takes}" : null;
}
