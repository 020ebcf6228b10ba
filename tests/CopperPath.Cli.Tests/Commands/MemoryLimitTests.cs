using System.Diagnostics;
using CopperPath.Core.Tests;

namespace CopperPath.Cli.Tests.Commands;

/// <summary>A process of its own with a heap of 64 MiB: one clear refusal, no result, no trace.</summary>
public sealed class MemoryLimitTests
{
    [Fact]
    public async Task TooLittleMemoryIsRefusedInOneLine()
    {
        string folder = Path.Combine(Directory.CreateTempSubdirectory("copperpath-test-").FullName, "out");
        ProcessStartInfo start = new("dotnet",
            [typeof(Program).Assembly.Location, "check", Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", "revision-a.yaml"), "--output", folder, "--quiet"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["DOTNET_GCHeapHardLimit"] = "0x4000000" },
        };
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync();
        string error = await errors;
        await process.WaitForExitAsync();

        process.ExitCode.ShouldBe(2, output + error);
        output.ShouldBeEmpty();
        error.TrimEnd().ShouldBe("CopperPath: error RUN002: found too little memory for this board; expected more of it; the run was given up");
        if (Directory.Exists(folder))
        {
            // Where memory is enough for it, a report says that nothing was judged.
            File.ReadAllText(Path.Combine(folder, "results.json")).ShouldContain("\"could not judge\"");
        }

        Directory.Delete(Path.GetDirectoryName(folder)!, recursive: true);
    }
}
