namespace CopperPath.Cli.Tests.Commands;

/// <summary>One run of the program with its streams caught.</summary>
public sealed record CommandRun(int ExitCode, string Output, string Error)
{
    public static CommandRun Of(params string[] arguments)
    {
        using StringWriter output = new();
        using StringWriter error = new();
        int exit = Program.Run(arguments, new Terminal(output, error, IsErrorRedirected: true));
        return new CommandRun(exit, output.ToString(), error.ToString());
    }

    /// <summary>Lines of standard error that are error diagnostics.</summary>
    public IReadOnlyList<string> Errors => [.. Error.Split('\n').Where(line => line.Contains(": error ", StringComparison.Ordinal))];
}
