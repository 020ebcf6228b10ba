using System.ComponentModel;
using System.Diagnostics;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// The Python programs of <c>tests/independent</c>. They need NumPy and SciPy; a test that runs one skips visibly where
/// no Python has them. <c>COPPERPATH_PYTHON</c> names an interpreter to use.
/// </summary>
internal static class Python
{
    /// <summary>Runs a program and gives what it printed.</summary>
    public static string Run(string program, params string[] arguments)
    {
        string path = Path.Combine(SharedData.ProjectRoot, "tests", "independent", program);
        (int code, string text) = Start(Interpreter(), [path, .. arguments]);
        code.ShouldBe(0, text);
        return text;
    }

    private static string Interpreter()
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
