using CopperPath.Judging;

namespace CopperPath.Cli;

/// <summary>Exit codes of the program.</summary>
public static class ExitCode
{
    public const int WithinLimits = 0;
    public const int BeyondLimits = 1;
    public const int CouldNotJudge = 2;

    public static int Of(Verdict verdict) => verdict switch
    {
        Verdict.WithinLimits => WithinLimits,
        Verdict.BeyondLimits => BeyondLimits,
        _ => CouldNotJudge,
    };
}
