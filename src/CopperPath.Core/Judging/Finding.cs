using CopperPath.Brief;
using CopperPath.Geometry;

namespace CopperPath.Judging;

/// <summary>What a finding means for the verdict.</summary>
public enum FindingLevel
{
    /// <summary>Worth reading; within limits.</summary>
    Remark,

    /// <summary>Within the limit as everything is stated, beyond it where what is not known lies at its worse end.</summary>
    WithinAsStated,

    /// <summary>Beyond a limit of the brief.</summary>
    BeyondLimit,

    /// <summary>The question could not be answered.</summary>
    Undecided,
}

/// <summary>A measured value against its limit, both in the unit named.</summary>
/// <param name="Name">Quantity, e.g. <c>temperature rise</c>.</param>
/// <param name="Unit">SI unit symbol, e.g. <c>K</c>; empty for a ratio.</param>
/// <param name="Value">What was found.</param>
/// <param name="Limit">What is allowed.</param>
/// <param name="LimitIsLeast">True where the value must not be below the limit; else it must not be above.</param>
/// <param name="IsCount">True where both are numbers of things, which have no decimals.</param>
public sealed record Measure(string Name, string Unit, double Value, double Limit, bool LimitIsLeast = false, bool IsCount = false)
{
    /// <summary>
    /// What the value becomes with everything that is not known at its worse end, in the same unit; infinite where there is no such
    /// value, null where nothing it rests on has a range.
    /// </summary>
    public double? Worst { get; init; }

    /// <summary>Room left: 0.2 means the value could change for the worse by 20 % of the limit; negative beyond it.</summary>
    public double MarginRatio => (LimitIsLeast ? Value - Limit : Limit - Value) / Limit;
}

/// <summary>One thing a reviewer should know, with where it is and what to do.</summary>
/// <param name="Rule">Identifier of the rule, from <see cref="RuleCatalogue"/>.</param>
/// <param name="Level">What it means for the verdict.</param>
/// <param name="Subject">Name of the reviewed net.</param>
/// <param name="Layer">Layer number, 1 = top; 0 when it is about the whole net.</param>
/// <param name="XM">Place, metres from the board origin.</param>
/// <param name="YM">Place, metres from the board origin.</param>
/// <param name="Measure">Value and limit, or null where nothing is measured.</param>
/// <param name="Sentence">What was found, in one plain sentence.</param>
/// <param name="Advice">What would mend it, in one plain sentence.</param>
/// <param name="Assumption">What the judgement rests on.</param>
public sealed record Finding(
    string Rule,
    FindingLevel Level,
    string Subject,
    int Layer,
    double XM,
    double YM,
    Measure? Measure,
    string Sentence,
    string Advice,
    string Assumption)
{
    /// <summary>Box round all it is about on its layer, such as a slot or a group of holes; null where the place says it.</summary>
    public BoxNm? Extent { get; init; }

    /// <summary>The brief's word that this finding is accepted, or null.</summary>
    public Waiver? Waiver { get; init; }

    /// <summary>True when it would have touched the verdict but for its waiver.</summary>
    public bool IsWaived => Level != FindingLevel.Remark && Waiver is not null;

    /// <summary>True when it counts against the board: beyond a limit and not waived.</summary>
    public bool Counts => Level == FindingLevel.BeyondLimit && Waiver is null;

    /// <summary>True when it keeps the board from being within limits over the whole range: within as stated only and not waived.</summary>
    public bool IsOnlyAsStated => Level == FindingLevel.WithinAsStated && Waiver is null;
}

/// <summary>Answer to the review as a whole.</summary>
public enum Verdict
{
    /// <summary>Within every limit over the whole range of what is not known.</summary>
    WithinLimits,

    /// <summary>Within every limit as stated, not over the whole range.</summary>
    WithinAsStated,

    BeyondLimits,
    CouldNotJudge,
}
