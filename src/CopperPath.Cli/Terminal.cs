using CopperPath.OutsideText;

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
    /// <summary>The progress line alone moves the cursor, so it alone goes past the writer that lets nothing do so.</summary>
    private readonly TextWriter _rawError = Error;

    /// <summary>Standard output; what is written to it is made visible first.</summary>
    public TextWriter Out { get; } = new VisibleWriter(Out, Width);

    /// <summary>Standard error, likewise.</summary>
    public TextWriter Error { get; } = new VisibleWriter(Error);

    /// <summary>Shows a stage on standard error when a person watches it; silent otherwise.</summary>
    public Action<string>? Progress => IsErrorRedirected ? null : stage => _rawError.Write($"\r\u001b[K{VisibleText.Of(stage)} ...");

    /// <summary>Tells a person who watches standard error what is known so far; silent otherwise.</summary>
    public void Announce(string line)
    {
        EndProgress();
        if (!IsErrorRedirected)
        {
            Error.WriteLine(line);
        }
    }

    /// <summary>Wipes the progress line.</summary>
    public void EndProgress()
    {
        if (!IsErrorRedirected)
        {
            _rawError.Write("\r\u001b[K");
        }
    }
}
