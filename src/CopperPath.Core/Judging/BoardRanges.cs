using System.Globalization;
using CopperPath.Brief;
using CopperPath.Capacity;
using CopperPath.Electrical;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// What is not known of a board: everything the judgement counts with a range. A range that the brief does not state is the one of
/// common ignorance; <see cref="Assumptions"/> says where each comes from.
/// </summary>
/// <param name="CopperM">Finished thickness of each layer, metres.</param>
/// <param name="PlatingM">Copper on hole walls, metres.</param>
/// <param name="AmbientK">Air around the board, kelvin.</param>
public sealed record BoardRanges(IReadOnlyList<ValueRange> CopperM, ValueRange PlatingM, ValueRange AmbientK)
{
    /// <summary>Correlations of natural convection scatter by 15 to 25 % against measurements (from memory).</summary>
    public const double StillAirShare = 0.25;

    /// <summary>A film that stands for an air flow. Common practice, no source.</summary>
    public const double StatedFilmShare = 0.15;

    /// <summary>A thickness of laminate against its drawing. Common practice, no source.</summary>
    public const double LaminateThicknessShare = 0.1;

    /// <summary>A conductivity from a data sheet against the board's own. Common practice, no source.</summary>
    public const double StatedLaminateShare = 0.1;

    private static readonly ValueRange s_exact = new(1, 1);

    /// <summary>FR-4 across the board, watts per metre and kelvin (from memory).</summary>
    private static readonly ValueRange s_throughWPerMK = new(0.25, 0.35);

    /// <summary>The same along the board, where the glass conducts (from memory).</summary>
    private static readonly ValueRange s_inPlaneWPerMK = new(0.6, 1.0);

    /// <summary>Factor on films that follow from correlations.</summary>
    public ValueRange StillAir { get; init; } = s_exact;

    /// <summary>Factor on stated films.</summary>
    public ValueRange StatedFilm { get; init; } = s_exact;

    /// <summary>Factor on the laminate's conductivity across the board.</summary>
    public ValueRange LaminateThrough { get; init; } = s_exact;

    /// <summary>Factor on the one along the board.</summary>
    public ValueRange LaminateInPlane { get; init; } = s_exact;

    /// <summary>Factor on all thicknesses of laminate.</summary>
    public ValueRange LaminateThickness { get; init; } = s_exact;

    /// <summary>Factor on all currents.</summary>
    public ValueRange Current { get; init; } = s_exact;

    /// <summary>Each range with its source, one line each.</summary>
    public IReadOnlyList<string> Assumptions { get; init; } = [];

    /// <summary>True where anything has a range.</summary>
    public bool HasAny => ToleranceItem.OfHeat(this).Count > 0;

    /// <param name="brief">Values, and the ranges it states.</param>
    /// <param name="stack">The build as stated.</param>
    public static BoardRanges Of(ReviewBrief brief, Stackup stack)
    {
        ValueRange ambientK = new(brief.AmbientK, brief.AmbientK);
        if (brief.Tolerance is { IsAsStated: true })
        {
            return new BoardRanges([.. stack.ThicknessM.Select(Exactly)], Exactly(stack.PlatingM), ambientK)
            {
                Assumptions = ["range: none, the brief takes everything as stated"],
            };
        }

        ToleranceSection stated = brief.Tolerance ?? new ToleranceSection();
        List<string> lines = [];
        LaminateSection laminate = brief.Thermal.Laminate;
        BoardRanges ranges = new(
            stated.CopperM is { } copperM ? Of(copperM, lines) : LeastCopper(stack, stated.BoardClass, lines),
            stated.PlatingM is { } platingM ? Of("plating", platingM, QuantityText.Length, lines) : LeastPlating(stack.PlatingM, stated.BoardClass, lines),
            stated.AmbientK is { } airK ? Of("ambient", airK, QuantityText.Temperature, lines) : ambientK)
        {
            LaminateThickness = Factor("thickness of laminate", stated.Dielectric, LaminateThicknessShare, "common practice, no source", lines),
            LaminateThrough = Laminate("through", stated.Laminate, laminate.IsThroughStated, s_throughWPerMK, LaminateSection.Default.ThroughWPerMK, lines),
            LaminateInPlane = Laminate("in plane", stated.Laminate, laminate.IsInPlaneStated, s_inPlaneWPerMK, LaminateSection.Default.InPlaneWPerMK, lines),
            StillAir = HasFace(isStill: true)
                ? Factor("film of still air", stated.Film, StillAirShare, "correlations scatter by 15 to 25 % against measurements; from memory", lines) : s_exact,
            StatedFilm = HasFace(isStill: false)
                ? Factor("stated film", stated.Film, StatedFilmShare, "common practice, no source", lines) : s_exact,
            Current = stated.Current is { } current ? Factor("current", current, 0, "", lines) : s_exact,
        };
        return ranges with { Assumptions = lines };

        bool HasFace(bool isStill) => (brief.Thermal.Top.FilmWPerM2K is null) == isStill || (brief.Thermal.Bottom.FilmWPerM2K is null) == isStill;
    }

    private static ValueRange[] LeastCopper(Stackup stack, BoardClass boardClass, List<string> lines)
    {
        int layers = stack.ThicknessM.Count;
        ValueRange[] ranges = new ValueRange[layers];
        for (int layer = 1; layer <= layers; layer++)
        {
            // A board with one layer of copper has no plated holes, and its copper is not plated up.
            double statedM = stack.ThicknessM[layer - 1];
            ConductorPlacement placement = layers > 1 && (layer == 1 || layer == layers) ? ConductorPlacement.External : ConductorPlacement.Internal;
            double? leastM = Ipc6012Minima.LeastOfFinishedM(statedM, placement, boardClass);
            ranges[layer - 1] = new ValueRange(Math.Min(statedM, leastM ?? (0.9 * statedM)), statedM);
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"range, copper of layer {layer}: {Ends(ranges[layer - 1], QuantityText.Length)} ")
                + (leastM is null ? "(10 % less, common practice, no source: the tables of IPC-6012 do not reach it)" : $"(down to the least of IPC-6012, {Word(boardClass)}; from memory)"));
        }

        return ranges;
    }

    private static ValueRange LeastPlating(double statedM, BoardClass boardClass, List<string> lines)
    {
        double leastM = Ipc6012Minima.PlatingM(boardClass);
        ValueRange range = new(Math.Min(statedM, leastM), statedM);
        lines.Add($"range, plating: {Ends(range, QuantityText.Length)} "
            + (leastM > statedM ? $"(as stated, less than the least of IPC-6012, {Word(boardClass)})" : $"(down to the least of IPC-6012, {Word(boardClass)}; from memory)"));
        return range;
    }

    private static ValueRange Laminate(
        string way, ValueRange? stated, bool isStated, ValueRange usualWPerMK, double defaultWPerMK, List<string> lines) => stated is null && !isStated
        ? Of($"conductivity of laminate, {way}", usualWPerMK, QuantityText.ThermalConductivity, lines, "FR-4; from memory") is var usual
            ? new ValueRange(usual.Least / defaultWPerMK, usual.Most / defaultWPerMK) : default
        : Factor($"conductivity of laminate, {way}", stated, StatedLaminateShare, "common practice, no source", lines);

    private static ValueRange Factor(string item, ValueRange? stated, double share, string source, List<string> lines)
    {
        ValueRange range = stated ?? new ValueRange(1 - share, 1 + share);
        lines.Add(string.Create(CultureInfo.InvariantCulture,
            $"range, {item}: {100 * (range.Least - 1):0.#}..{100 * (range.Most - 1):0.#} % ({(stated is null ? source : Brief)})"));
        return range;
    }

    private static IReadOnlyList<ValueRange> Of(IReadOnlyList<ValueRange> copperM, List<string> lines)
    {
        for (int layer = 1; layer <= copperM.Count; layer++)
        {
            Of(FormattableString.Invariant($"copper of layer {layer}"), copperM[layer - 1], QuantityText.Length, lines);
        }

        return copperM;
    }

    private static ValueRange Of(string item, ValueRange range, Func<double, string> print, List<string> lines, string source = Brief)
    {
        lines.Add($"range, {item}: {Ends(range, print)} ({source})");
        return range;
    }

    private const string Brief = "the brief";

    private static string Ends(ValueRange range, Func<double, string> print) => $"{print(range.Least)} to {print(range.Most)}";

    private static string Word(BoardClass boardClass) => boardClass == BoardClass.Class3 ? "class 3" : "class 2";

    private static ValueRange Exactly(double value) => new(value, value);
}
