using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Fuzzing;

/// <summary>
/// Whole reviews of folders whose files were damaged, exchanged or transformed: each is answered, soon, and none passes
/// with another board where the damaged file itself tells of it. What passes beyond that is listed in docs/cross-check.md.
/// </summary>
public sealed class FolderFuzzTests : IDisposable
{
    /// <summary>Processor time of one review: some tens of milliseconds for the board as it is.</summary>
    private static readonly TimeSpan MostTime = TimeSpan.FromSeconds(5);

    /// <summary>
    /// Share of cases that may pass with another board although the other files tell of it: mostly one inner layer copied
    /// over the other where no file says how many there are (docs/cross-check.md). The soak lists every case of it.
    /// </summary>
    private const double MostUnnoticed = 0.005;

    /// <summary>In memory where the system has such a place.</summary>
    private readonly string _folder = Directory.CreateDirectory(Path.Combine(
        Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath(), Path.GetRandomFileName())).FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void DamagedFoldersAreAnswered() => ShouldBeAnswered(seed: 1, count: 100);

    /// <summary>Ten thousand in all.</summary>
    [Theory]
    [Trait("Category", "Soak")]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    public void TenThousandDamagedFoldersAreAnswered(int seed)
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        ShouldBeAnswered(seed, count: 2_000);
    }

    private void ShouldBeAnswered(int seed, int count)
    {
        FolderMutator mutator = new(seed);
        FolderOracle[] oracles = [.. Enumerable.Range(0, 4).Select(number =>
        {
            Review whole = Check(FolderMutator.BoardOf(number), FolderMutator.BoardOf(number).Files(), $"whole{number}");
            whole.Verdict.ShouldBe(Verdict.WithinLimits);
            return new FolderOracle(whole);
        })];
        FolderCase[] cases = new FolderCase[count];
        InLanes(count, number => cases[number] = Run(mutator.Make(number), number, oracles[FolderMutator.BoardNumber(number)]));
        TestContext.Current.TestOutputHelper?.WriteLine(Table(cases));

        // A busy machine makes any of them late: what counts is the work of one that runs alone.
        foreach (int slow in cases.Where(one => one.Taken > MostTime).Select(one => one.Number))
        {
            TimeSpan before = Environment.CpuUsage.TotalTime;
            Check(FolderMutator.BoardOf(slow), mutator.Make(slow).Files, "slow");
            (Environment.CpuUsage.TotalTime - before).ShouldBeLessThan(MostTime, $"case {slow}: {cases[slow].Kind}");
        }

        // Some damage must be noticed and some must not, or the run would prove little.
        cases.Count(one => one.Outcome == FolderOutcome.NotJudged).ShouldBeInRange(count / 4, count - (count / 20));
        ILookup<TellTale, string> missed = cases.Where(one => one.Outcome == FolderOutcome.PassedAnother)
            .ToLookup(one => one.TellTale, one => $"{one.Number}: {one.Kind}");
        missed[TellTale.FileItself].ShouldBeEmpty("a review passed over a file that tells of its damage");
        missed[TellTale.OtherFiles].Count().ShouldBeLessThanOrEqualTo(
            (int)(MostUnnoticed * count), string.Join('\n', missed[TellTale.OtherFiles]));
    }

    /// <summary>
    /// Runs cases side by side on threads of their own: a review waits for its own parallel parts, and a thread of the pool
    /// would begin further cases in the meantime.
    /// </summary>
    private static void InLanes(int count, Action<int> run)
    {
        int next = -1;
        ConcurrentQueue<Exception> failures = new();
        Thread[] lanes = [.. Enumerable.Range(0, Environment.ProcessorCount).Select(_ => new Thread(() =>
        {
            for (int number = Interlocked.Increment(ref next); number < count && failures.IsEmpty; number = Interlocked.Increment(ref next))
            {
                try
                {
                    run(number);
                }
                catch (Exception e)
                {
                    failures.Enqueue(e);
                }
            }
        }))];
        Array.ForEach(lanes, lane => lane.Start());
        Array.ForEach(lanes, lane => lane.Join());
        failures.ShouldBeEmpty();
    }

    private FolderCase Run(FolderMutation mutation, int number, FolderOracle oracle)
    {
        try
        {
            long start = Stopwatch.GetTimestamp();
            Review review = Check(FolderMutator.BoardOf(number), mutation.Files, $"case{number}");
            TimeSpan taken = Stopwatch.GetElapsedTime(start);
            FolderOutcome outcome = review.Verdict switch
            {
                Verdict.CouldNotJudge => FolderOutcome.NotJudged,
                Verdict.BeyondLimits => FolderOutcome.BeyondLimits,
                _ => oracle.IsAnotherBoard(review) ? FolderOutcome.PassedAnother : FolderOutcome.PassedSame,
            };
            return new FolderCase(
                number, mutation.Kind, mutation.TellTale, outcome, outcome == FolderOutcome.PassedAnother && oracle.IsAnotherResult(review), taken);
        }
        catch (Exception e)
        {
            Assert.Fail($"case {number}, {mutation.Kind}: {e}");
            throw;
        }
    }

    private Review Check(SmallBoard board, SortedDictionary<string, byte[]> files, string name)
    {
        string folder = Directory.CreateDirectory(Path.Combine(_folder, name, "files")).FullName;
        foreach ((string file, byte[] bytes) in files)
        {
            File.WriteAllBytes(Path.Combine(folder, file), bytes);
        }

        string brief = Path.Combine(_folder, name, "brief.yaml");
        File.WriteAllText(brief, board.Brief("files"));
        try
        {
            return Analysis.Check(brief);
        }
        finally
        {
            Directory.Delete(Path.Combine(_folder, name), recursive: true);
        }
    }

    /// <summary>One line for each kind of a single change, and the passes over another board one by one.</summary>
    private static string Table(IReadOnlyList<FolderCase> cases)
    {
        StringBuilder text = new("kind | cases | not judged | beyond limits | passed, same board | passed, another board | of these with another result\n");
        Add("all", cases);
        foreach (IGrouping<string, FolderCase> kind in cases.Where(one => !one.Kind.Contains(';', StringComparison.Ordinal))
            .GroupBy(one => one.Kind).OrderBy(kind => kind.Key, StringComparer.Ordinal))
        {
            Add(kind.Key, [.. kind]);
        }

        Add("two changes", [.. cases.Where(one => one.Kind.Contains(';', StringComparison.Ordinal))]);
        foreach (FolderCase missed in cases.Where(one => one.Outcome == FolderOutcome.PassedAnother))
        {
            text.Append(FormattableString.Invariant(
                $"passed: case {missed.Number}, board {FolderMutator.BoardNumber(missed.Number)}, told by {missed.TellTale}, {(missed.IsAnotherResult ? "another result, " : "")}{missed.Kind}\n"));
        }

        return text.ToString();

        void Add(string kind, IReadOnlyList<FolderCase> of) => text.Append(FormattableString.Invariant(
            $"{kind} | {of.Count} | {Count(of, FolderOutcome.NotJudged)} | {Count(of, FolderOutcome.BeyondLimits)} | {Count(of, FolderOutcome.PassedSame)} | {Count(of, FolderOutcome.PassedAnother)} | {of.Count(one => one.IsAnotherResult)}\n"));
    }

    private static int Count(IReadOnlyList<FolderCase> of, FolderOutcome outcome) => of.Count(one => one.Outcome == outcome);

    private enum FolderOutcome
    {
        NotJudged,
        BeyondLimits,
        PassedSame,
        PassedAnother,
    }

    private sealed record FolderCase(int Number, string Kind, TellTale TellTale, FolderOutcome Outcome, bool IsAnotherResult, TimeSpan Taken);
}
