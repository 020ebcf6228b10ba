using System.Diagnostics;
using System.Security.Cryptography;

namespace CopperPath.Cli.Tests.Report;

/// <summary>The same inputs give the same bytes, whatever number of threads works on them.</summary>
public sealed class DeterminismTests(ReviewedNeck review) : IClassFixture<ReviewedNeck>
{
    [Fact]
    public void EveryFileIsTheSameOnOneProcessorAndOnEight()
    {
        Dictionary<string, string> onOne = Run("1");
        Dictionary<string, string> onEight = Run("8");

        onOne.Count.ShouldBeGreaterThan(6);
        onEight.ShouldBe(onOne, ignoreOrder: true);
    }

    private Dictionary<string, string> Run(string processors)
    {
        string folder = Path.Combine(review.Folder, "on-" + processors);
        ProcessStartInfo start = new("dotnet", [typeof(Program).Assembly.Location, "check", review.Brief, "--output", folder])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["DOTNET_PROCESSOR_COUNT"] = processors;
        using Process process = Process.Start(start)!;
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        process.ExitCode.ShouldBe(review.ExitCode, output);
        return Directory.EnumerateFiles(folder).ToDictionary(
            file => Path.GetFileName(file), file => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file))));
    }
}
