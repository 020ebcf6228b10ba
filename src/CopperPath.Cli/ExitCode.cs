using CopperPath.Judging;

namespace CopperPath.Cli;

/// <summary>Exit codes of the program.</summary>
public static class ExitCode
{
    public const int WithinLimits = 0;
    public const int BeyondLimits = 1;
    public const int CouldNotJudge = 2;

    /// <summary>Within limits as everything is stated, not over the whole range of what is not known.</summary>
    public const int WithinAsStated = 3;

    /// <summary>128 and the number of the signal, after the habit of shells: Ctrl-C.</summary>
    public const int Interrupted = 130;

    /// <summary>128 and the number of the signal: a request to terminate.</summary>
    public const int Terminated = 143;

    private static readonly List<int> s_byGravity = [WithinLimits, WithinAsStated, BeyondLimits, CouldNotJudge];

    public static int Of(Verdict verdict) => verdict switch
    {
        Verdict.WithinLimits => WithinLimits,
        Verdict.WithinAsStated => WithinAsStated,
        Verdict.BeyondLimits => BeyondLimits,
        _ => CouldNotJudge,
    };

    /// <summary>The code of several verdicts together: that of the gravest, could not judge before beyond before within as stated.</summary>
    /// <param name="codes">Codes of verdicts, at least one.</param>
    public static int Gravest(IEnumerable<int> codes) => codes.MaxBy(code => s_byGravity.IndexOf(code));
}
