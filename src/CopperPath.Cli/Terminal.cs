namespace CopperPath.Cli;

/// <summary>Where the program speaks to: standard output, standard error, and whether a person watches the latter.</summary>
public sealed record Terminal(TextWriter Out, TextWriter Error, bool IsErrorRedirected)
{
    /// <summary>Shows a stage on standard error when a person watches it; silent otherwise.</summary>
    public Action<string>? Progress => IsErrorRedirected ? null : stage => Error.Write($"\r\u001b[K{stage} ...");

    /// <summary>Wipes the progress line.</summary>
    public void EndProgress()
    {
        if (!IsErrorRedirected)
        {
            Error.Write("\r\u001b[K");
        }
    }
}
