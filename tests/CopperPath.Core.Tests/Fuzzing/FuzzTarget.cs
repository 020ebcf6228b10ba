using System.Diagnostics;

namespace CopperPath.Core.Tests.Fuzzing;

/// <summary>A reader under damaged input.</summary>
/// <param name="Name">Name for messages.</param>
/// <param name="Mutator">Where its inputs come from.</param>
/// <param name="IsRefused">Reads one input, asserts what is promised of any, and says whether it was refused.</param>
internal sealed record FuzzTarget(string Name, Mutator Mutator, Func<byte[], bool> IsRefused)
{
    /// <summary>Longest any input may take: what takes longer hangs.</summary>
    private static readonly TimeSpan MostTime = TimeSpan.FromSeconds(2);

    /// <summary>How long a machine that is busy with other things may make it.</summary>
    private static readonly TimeSpan MostWaiting = TimeSpan.FromMinutes(10);

    /// <summary>Feeds inputs one after the other.</summary>
    public FuzzTally Run(int count)
    {
        FuzzTally tally = new(0, 0, TimeSpan.Zero, 0);
        for (int i = 0; i < count; i++)
        {
            byte[] input = Mutator.Next();
            long allocatedBefore = GC.GetAllocatedBytesForCurrentThread();
            long start = Stopwatch.GetTimestamp();
            bool refused = Feed(input);
            TimeSpan taken = Stopwatch.GetElapsedTime(start);
            long allocatedBytes = GC.GetAllocatedBytesForCurrentThread() - allocatedBefore;
            if (taken > MostTime)
            {
                taken.ShouldBeLessThan(MostWaiting, Shown(input));
                taken = ProcessorTimeOf(input);
                taken.ShouldBeLessThan(MostTime, Shown(input));
            }

            tally = tally.With(refused, taken, allocatedBytes);
        }

        return tally;
    }

    /// <summary>Time the process works for an input: what counts where others use the machine too.</summary>
    private TimeSpan ProcessorTimeOf(byte[] input)
    {
        TimeSpan before = Environment.CpuUsage.TotalTime;
        Feed(input);
        return Environment.CpuUsage.TotalTime - before;
    }

    private bool Feed(byte[] input)
    {
        try
        {
            return IsRefused(input);
        }
        catch (Exception e)
        {
            Assert.Fail($"{Shown(input)}: {e}");
            return false;
        }
    }

    private string Shown(byte[] input) => $"{Name}, input {Convert.ToBase64String(input)}";
}

/// <summary>What a run showed.</summary>
/// <param name="Inputs">Inputs fed.</param>
/// <param name="Refused">Those answered with an error.</param>
/// <param name="Slowest">Longest time of one input.</param>
/// <param name="MostAllocatedBytes">Most memory asked for during one input, garbage included.</param>
internal sealed record FuzzTally(int Inputs, int Refused, TimeSpan Slowest, long MostAllocatedBytes)
{
    public FuzzTally With(bool refused, TimeSpan taken, long allocatedBytes) => new(
        Inputs + 1,
        Refused + (refused ? 1 : 0),
        taken > Slowest ? taken : Slowest,
        Math.Max(MostAllocatedBytes, allocatedBytes));
}
