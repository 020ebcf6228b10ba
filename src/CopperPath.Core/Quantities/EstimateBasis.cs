namespace CopperPath.Quantities;

/// <summary>What an estimate rests on: it travels with the number, so that no report can print one without the other.</summary>
/// <param name="Source">Where the formula comes from, and whether it was read there or recalled.</param>
/// <param name="Assumptions">What must hold for the number to mean anything.</param>
/// <param name="OutsideRange">Why this very estimate lies outside the range of the formula; empty when it does not.</param>
public sealed record EstimateBasis(string Source, string Assumptions, IReadOnlyList<string> OutsideRange)
{
    public EstimateBasis(string source, string assumptions)
        : this(source, assumptions, [])
    {
    }

    /// <summary>True when the inputs lie within the range the formula is used in.</summary>
    public bool IsInRange => OutsideRange.Count == 0;

    /// <summary>The same basis with reasons why one estimate lies outside the range.</summary>
    internal EstimateBasis WithReasons(List<string> reasons) => reasons.Count == 0 ? this : this with { OutsideRange = reasons };
}

/// <summary>Amperes, with what they rest on.</summary>
public sealed record CurrentEstimate(double CurrentA, EstimateBasis Basis);

/// <summary>Kelvin above ambient, with what they rest on.</summary>
public sealed record RiseEstimate(double RiseK, EstimateBasis Basis);

/// <summary>Square metres of conductor section, with what they rest on.</summary>
public sealed record SectionEstimate(double SectionM2, EstimateBasis Basis);

/// <summary>Metres of conductor width, with what they rest on.</summary>
public sealed record WidthEstimate(double WidthM, EstimateBasis Basis);

/// <summary>Seconds, with what they rest on.</summary>
public sealed record TimeEstimate(double TimeS, EstimateBasis Basis);

/// <summary>Henries, with what they rest on.</summary>
public sealed record InductanceEstimate(double InductanceH, EstimateBasis Basis);
