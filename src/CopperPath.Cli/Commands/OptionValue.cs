using System.Globalization;
using CopperPath.OutsideText;

namespace CopperPath.Cli.Commands;

/// <summary>Values of options as they are written. A wrong one gets one line: option, what was found, what was expected.</summary>
internal static class OptionValue
{
    /// <summary>The words of a list parted by commas, each once, in the order written; none where the option was not given.</summary>
    public static IReadOnlyList<T> Words<T>(string? written)
        where T : struct, Enum => [.. Parts(written).Select(part => WordOf<T>(part)).OfType<T>().Distinct()];

    /// <returns>Null, or one line on the first word that is none of <typeparamref name="T"/>.</returns>
    public static string? WordRefusal<T>(string option, string? written)
        where T : struct, Enum => Parts(written).FirstOrDefault(part => WordOf<T>(part) is null) is not { } wrong ? null
        : Refusal(option, $"'{wrong}'", Choice.Of(Enum.GetNames<T>().Select(name => name.ToLowerInvariant())), NearestName.Of(wrong, Enum.GetNames<T>())?.ToLowerInvariant());

    /// <summary>The whole number written, or <paramref name="otherwise"/> where the option was not given.</summary>
    public static int Number(string? written, int otherwise) => NumberOf(written) ?? otherwise;

    /// <returns>Null, or one line where no whole number in the range was written.</returns>
    public static string? NumberRefusal(string option, string? written, int least, int most, string unit) =>
        written is null || (NumberOf(written) is { } number && number >= least && number <= most) ? null
            : Refusal(option, NumberOf(written) is null ? $"'{written}'" : written, FormattableString.Invariant($"{least} to {most} {unit}"), null);

    private static string Refusal(string option, string found, string expected, string? near) =>
        $"{option}: error CMD004: found {found}; expected {expected}" + Choice.Hint(near);

    private static IEnumerable<string> Parts(string? written) => written?.Split(',').Select(part => part.Trim()) ?? [];

    private static T? WordOf<T>(string part)
        where T : struct, Enum => Enum.GetValues<T>().Where(value => part.Equals(value.ToString(), StringComparison.OrdinalIgnoreCase)).Cast<T?>().FirstOrDefault();

    private static int? NumberOf(string? written) =>
        int.TryParse(written, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number) ? number : null;
}
