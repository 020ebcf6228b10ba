using System.ComponentModel;
using System.Diagnostics;

namespace CopperPath.Core.Tests.Gallery;

/// <summary>
/// The programs of <c>tests/independent</c>. Those in Python need NumPy and SciPy (<c>COPPERPATH_PYTHON</c> names an
/// interpreter to use), those in Octave need Octave; a test that runs one skips visibly where they are not installed.
/// </summary>
internal static class IndependentProgram
{
    /// <summary>Runs a Python program and gives what it printed.</summary>
    public static string Python(string program, params string[] arguments) => Run(PythonInterpreter(), program, arguments);

    /// <summary>Runs an Octave program and gives what it printed.</summary>
    public static string Octave(string program, params string[] arguments)
    {
        if (Start("octave-cli", ["--version"]).Code != 0)
        {
            Assert.Skip("needs Octave");
        }

        return Run("octave-cli", program, arguments);
    }

    private static string Run(string interpreter, string program, string[] arguments)
    {
        string path = Path.Combine(SharedData.ProjectRoot, "tests", "independent", program);
        (int code, string text) = Start(interpreter, [path, .. arguments]);
        code.ShouldBe(0, text);
        return text;
    }

    private static string PythonInterpreter()
    {
        string[] candidates = Environment.GetEnvironmentVariable("COPPERPATH_PYTHON") is { } stated ? [stated] : ["python3", "/usr/bin/python3"];
        string? usable = Array.Find(candidates, each => Start(each, ["-c", "import numpy, scipy"]).Code == 0);
        if (usable is null)
        {
            Assert.Skip("needs a Python with NumPy and SciPy");
        }

        return usable;
    }

    private static (int Code, string Text) Start(string interpreter, string[] arguments)
    {
        try
        {
            using Process process = Process.Start(new ProcessStartInfo(interpreter, arguments)
            {
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            Task<string> errors = process.StandardError.ReadToEndAsync();
            string text = process.StandardOutput.ReadToEnd() + errors.GetAwaiter().GetResult();
            process.WaitForExit();
            return (process.ExitCode, text);
        }
        catch (Win32Exception)
        {
            return (-1, $"{interpreter} can not be started");
        }
    }
}
