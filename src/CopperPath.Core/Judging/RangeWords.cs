namespace CopperPath.Judging;

/// <summary>How findings speak of a value over the range of what is not known.</summary>
internal static class RangeWords
{
    /// <summary>What every finding within as stated only rests on.</summary>
    public const string Assumption = "at worst everything that is not known lies at its worse end; the ranges are among the assumptions";

    /// <summary>A value as stated against its limit, and what it becomes at worst, as one sentence.</summary>
    /// <param name="spread">The value.</param>
    /// <param name="limit">What is allowed.</param>
    /// <param name="print">A value in words.</param>
    public static string Of(Spread spread, double limit, Func<double, string> print) =>
        $"{print(spread.Nominal)} of {print(limit)} as stated; {AtWorst(spread, print)}.";

    /// <summary>A value at worst, and where most of the difference comes from.</summary>
    public static string AtWorst(Spread spread, Func<double, string> print) => double.IsFinite(spread.Worst)
        ? $"{print(spread.Worst)} with everything that is not known at its worse end{spread.MostWords}"
        : "no steady state that a laminate stands with everything that is not known at its worse end";
}
