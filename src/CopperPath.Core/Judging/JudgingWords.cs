namespace CopperPath.Judging;

/// <summary>What findings and verdicts are called, in every file and on every screen alike.</summary>
public static class JudgingWords
{
    internal const string Remark = "remark";
    internal const string BeyondLimit = "beyond limit";
    internal const string WithinAsStated = "within as stated only";

    public static string Word(this FindingLevel level) => level switch
    {
        FindingLevel.Remark => Remark,
        FindingLevel.WithinAsStated => WithinAsStated,
        FindingLevel.BeyondLimit => BeyondLimit,
        FindingLevel.Undecided => "undecided",
        _ => throw new ArgumentOutOfRangeException(nameof(level)),
    };

    public static string Word(this Verdict verdict) => verdict switch
    {
        Verdict.WithinLimits => "within limits",
        Verdict.WithinAsStated => "within limits as stated only",
        Verdict.BeyondLimits => "beyond limits",
        Verdict.CouldNotJudge => "could not judge",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict)),
    };
}
