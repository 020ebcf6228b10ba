using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Report;

/// <summary>The scales of a review: pictures and page both take theirs from here, so that a shade means the same in each.</summary>
internal sealed class ReviewScales
{
    private readonly (int Stretch, AreaRanking Density, AreaRanking? Rise)[] _fields;

    public ReviewScales(IReadOnlyList<LayerField> fields) => _fields = OnAllCores.Of(fields, field =>
        (field.Stretch, AreaRanking.Of(field.Density), field.Rise is { } rise ? AreaRanking.Of(rise) : null));

    /// <summary>Current density of all stretches on all layers, or of one stretch alone.</summary>
    /// <param name="stretch">Number of the stretch in the brief; null for all.</param>
    public ScaleSpec Density(int? stretch = null) => SharedScale.Logarithmic(
        "Current density", "A/mm²", AreaRanking.Together(_fields.Where(field => IsOf(stretch, field.Stretch)).Select(field => field.Density)));

    /// <summary>Temperature rise, likewise.</summary>
    /// <param name="stretch">Number of the stretch in the brief; null for all.</param>
    public ScaleSpec Rise(int? stretch = null) => SharedScale.Linear(
        "Temperature rise", "K",
        AreaRanking.Together(_fields.Where(field => IsOf(stretch, field.Stretch)).Select(field => field.Rise).OfType<AreaRanking>()));

    private static bool IsOf(int? stretch, int number) => stretch is null || number == stretch;
}
