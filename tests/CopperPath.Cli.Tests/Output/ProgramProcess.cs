using System.Diagnostics;

namespace CopperPath.Cli.Tests.Output;

/// <summary>The built program as a process of its own: signals and streams of the system reach nothing less.</summary>
internal sealed class ProgramProcess : IDisposable
{
    private readonly Process _process;
    private readonly Task<string> _output;
    private readonly Task<string> _error;

    private ProgramProcess(ProcessStartInfo start)
    {
        start.RedirectStandardOutput = true;
        start.RedirectStandardError = true;
        _process = Process.Start(start)!;
        _output = _process.StandardOutput.ReadToEndAsync();
        _error = _process.StandardError.ReadToEndAsync();
    }

    private static string Assembly => typeof(Program).Assembly.Location;

    /// <summary>Starts the program.</summary>
    public static ProgramProcess Start(params string[] arguments) => new(new ProcessStartInfo("dotnet", [Assembly, .. arguments]));

    /// <summary>Starts the program by a shell, which redirects its streams or limits it; <c>"$@"</c> is the program.</summary>
    public static ProgramProcess StartBy(string shell, params string[] arguments) =>
        new(new ProcessStartInfo("/bin/sh", ["-c", shell, "sh", "dotnet", Assembly, .. arguments]));

    /// <summary>Sends a signal by its name.</summary>
    public void Send(string signal)
    {
        using Process kill = Process.Start("kill", ["-" + signal, _process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    /// <summary>Waits for the end.</summary>
    public (int Exit, string Output, string Error) End()
    {
        _process.WaitForExit(TimeSpan.FromMinutes(3)).ShouldBeTrue("the program does not end");
        return (_process.ExitCode, _output.Result, _error.Result);
    }

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
        }

        _process.Dispose();
    }
}
