namespace CopperPath.Quantities;

/// <summary>Numbers of things for people: one hole, two holes.</summary>
public static class Counted
{
    /// <param name="count">How many.</param>
    /// <param name="one">The noun for one of them.</param>
    /// <param name="many">The noun for none or several; null for the former with an s.</param>
    public static string Of(int count, string one, string? many = null) =>
        FormattableString.Invariant($"{count} {(count == 1 ? one : many ?? one + "s")}");
}
