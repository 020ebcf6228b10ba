using System.Runtime.CompilerServices;

namespace CopperPath.Quantities;

/// <summary>
/// Guards of formulas against calls that can only be programming errors: what people write is checked, and answered with
/// diagnostics, long before it comes here.
/// </summary>
internal static class Checked
{
    /// <exception cref="ArgumentOutOfRangeException">The value is not a finite number above zero.</exception>
    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) && value > 0 ? value : throw new ArgumentOutOfRangeException(name, value, "must be above zero");

    /// <exception cref="ArgumentOutOfRangeException">The value is not a finite number of zero or more.</exception>
    public static double NotNegative(double value, [CallerArgumentExpression(nameof(value))] string name = "") =>
        double.IsFinite(value) && value >= 0 ? value : throw new ArgumentOutOfRangeException(name, value, "must not be negative");
}
