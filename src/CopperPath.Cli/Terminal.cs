namespace CopperPath.Cli;

/// <summary>
/// Where the program speaks to: standard output, standard error, and whether a person watches the latter. It uses no colour, so
/// that NO_COLOR has nothing to turn off.
/// </summary>
/// <param name="Out">Standard output.</param>
/// <param name="Error">Standard error.</param>
/// <param name="IsErrorRedirected">True when no person watches standard error.</param>
/// <param name="Width">Characters in a line of the window standard output goes to, or null where it goes to a file.</param>
public sealed record Terminal(TextWriter Out, TextWriter Error, bool IsErrorRedirected, int? Width = null)
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
