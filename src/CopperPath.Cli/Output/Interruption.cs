using System.Runtime.InteropServices;

namespace CopperPath.Cli.Output;

/// <summary>
/// Ends the program at once on Ctrl-C or a request to terminate, at whatever stage: drafts are removed, an earlier report stays
/// as it was, one line says so. A second signal ends it without clearing up.
/// </summary>
internal sealed class Interruption : IDisposable
{
    /// <summary>Longest wait for whoever reads the last line, milliseconds; a pipe may be full.</summary>
    private const int LongestFarewellMs = 500;

    private readonly Terminal _terminal;
    private readonly PosixSignalRegistration[] _registrations;
    private int _signals;

    private Interruption(Terminal terminal)
    {
        _terminal = terminal;
        _registrations = [PosixSignalRegistration.Create(PosixSignal.SIGINT, End), PosixSignalRegistration.Create(PosixSignal.SIGTERM, End)];
    }

    /// <summary>Watches for signals until disposed of.</summary>
    public static Interruption WatchFor(Terminal terminal) => new(terminal);

    public void Dispose()
    {
        foreach (PosixSignalRegistration registration in _registrations)
        {
            registration.Dispose();
        }
    }

    private void End(PosixSignalContext signal)
    {
        if (Interlocked.Increment(ref _signals) > 1)
        {
            return;
        }

        signal.Cancel = true;
        Unfinished.ClearForGood();
        Thread farewell = new(() =>
        {
            _terminal.EndProgress();
            _terminal.Error.WriteLine("Interrupted.");
        })
        { IsBackground = true };
        farewell.Start();
        farewell.Join(LongestFarewellMs);
        Environment.Exit(signal.Signal == PosixSignal.SIGINT ? ExitCode.Interrupted : ExitCode.Terminated);
    }
}
