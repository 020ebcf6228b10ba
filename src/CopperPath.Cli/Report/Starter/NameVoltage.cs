using System.Globalization;
using System.Text.RegularExpressions;

namespace CopperPath.Cli.Report.Starter;

/// <summary>The voltage a net's name speaks of, as in <c>+12V</c>, <c>3V3</c> or <c>1.8V_CORE</c>: a habit of schematics, no more than a guess.</summary>
internal static partial class NameVoltage
{
    private const double MostV = 100;

    /// <summary>Volts, positive; null where the name speaks of none, or of several.</summary>
    public static double? Of(string name)
    {
        double[] spoken = [.. Words().Matches(name).Select(match => double.Parse(
            match.Groups["decimal"].Success ? match.Groups["decimal"].Value : $"{match.Groups["whole"].Value}.{match.Groups["part"].Value}0",
            CultureInfo.InvariantCulture)).Distinct()];
        return spoken is [> 0 and <= MostV and var only] ? only : null;
    }

    [GeneratedRegex(@"(?<![0-9.])(?:(?<decimal>[0-9]{1,2}\.[0-9]{1,2})V(?![0-9])|(?<whole>[0-9]{1,2})V(?<part>[0-9]{0,2}))(?![0-9A-Za-z])", RegexOptions.CultureInvariant)]
    private static partial Regex Words();
}
