using System.Globalization;
using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.CrossCheck;

/// <summary>Remarks of the cross-check in one form.</summary>
internal static class SetRemark
{
    /// <summary>What copper may be wrong or missing for: the run can not pass.</summary>
    public static Diagnostic Doubt(string code, string file, FormattableString found, string expected) =>
        new(code, Severity.Error, SourcePosition.WholeFile(file), Text(found), expected, AffectsCopper: true);

    /// <summary>What is worth a word.</summary>
    public static Diagnostic Warning(string code, string file, FormattableString found, string expected) =>
        new(code, Severity.Warning, SourcePosition.WholeFile(file), Text(found), expected);

    /// <summary>A place in words that fit after a noun.</summary>
    public static string At(PointNm place) => Text($"at {place.X / 1e6:0.###}, {place.Y / 1e6:0.###} mm");

    /// <summary>Up to three places, as many as a person looks up.</summary>
    public static string At(IReadOnlyList<PointNm> places)
    {
        const int Listed = 3;
        string list = string.Join("; ", places.Take(Listed).Select(place => Text($"{place.X / 1e6:0.###}, {place.Y / 1e6:0.###}")));
        return Text($"at {list} mm{(places.Count > Listed ? Text($" and {places.Count - Listed} more places") : "")}");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
