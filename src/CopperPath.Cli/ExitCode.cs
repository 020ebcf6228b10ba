using CopperPath.Judging;

namespace CopperPath.Cli;

/// <summary>Exit codes of the program.</summary>
public static class ExitCode
{
    public const int WithinLimits = 0;
    public const int BeyondLimits = 1;
    public const int CouldNotJudge = 2;

    /// <summary>128 and the number of the signal, after the habit of shells: Ctrl-C.</summary>
    public const int Interrupted = 130;

    /// <summary>128 and the number of the signal: a request to terminate.</summary>
    public const int Terminated = 143;

    public static int Of(Verdict verdict) => verdict switch
    {
        Verdict.WithinLimits => WithinLimits,
        Verdict.BeyondLimits => BeyondLimits,
        _ => CouldNotJudge,
    };
}
