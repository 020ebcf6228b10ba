using System.Diagnostics;
using CopperPath.Core.Tests;

namespace CopperPath.Cli.Tests.Commands;

/// <summary>The program compiled ahead of time does what the portable one does, to the byte.</summary>
public sealed class NativeBuildTests
{
    private static readonly string[] _helps = ["--help", "check --help", "survey --help", "curve --help", "chekc", "check --outptu x"];

    [Fact]
    [Trait("Category", "Soak")]
    public void NativeProgramWritesTheSameBytes()
    {
        Assert.SkipUnless(
            Environment.GetEnvironmentVariable("COPPERPATH_SOAK") == "1", "compiles for minutes and wants a C linker; set COPPERPATH_SOAK=1");
        string folder = Directory.CreateTempSubdirectory("native").FullName;
        string brief = Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", "revision-a.yaml");
        (int published, string said) = Run(
            "dotnet", "publish", Path.Combine(SharedData.ProjectRoot, "src", "CopperPath.Cli"), "-c", "Release",
            "--use-current-runtime", "-p:PublishAot=true", "-o", folder, "-v", "q");
        published.ShouldBe(0, said);
        string program = Path.Combine(folder, OperatingSystem.IsWindows() ? "copperpath.exe" : "copperpath");

        foreach (string[] arguments in _helps.Select(line => line.Split(' ')))
        {
            CommandRun portable = CommandRun.Of(arguments);
            Run(program, arguments).ShouldBe((portable.ExitCode, portable.Output + portable.Error), string.Join(' ', arguments));
        }

        string ofNative = Path.Combine(folder, "of-native"), ofPortable = Path.Combine(folder, "of-portable");
        int exit = CommandRun.Of("check", brief, "--output", ofPortable).ExitCode;
        Run(program, "check", brief, "--output", ofNative).Exit.ShouldBe(exit);

        string[] files = [.. Directory.EnumerateFiles(ofPortable).Select(Path.GetFileName).Order(StringComparer.Ordinal)!];
        files.Length.ShouldBeGreaterThan(10);
        Directory.EnumerateFiles(ofNative).Select(Path.GetFileName).Order(StringComparer.Ordinal).ShouldBe(files);
        foreach (string file in files)
        {
            File.ReadAllBytes(Path.Combine(ofNative, file)).AsSpan()
                .SequenceEqual(File.ReadAllBytes(Path.Combine(ofPortable, file))).ShouldBeTrue(file);
        }

        Directory.Delete(folder, recursive: true);
    }

    private static (int Exit, string Said) Run(string program, params string[] arguments)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + error.Result);
    }
}
