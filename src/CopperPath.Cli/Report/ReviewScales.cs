using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Report;

/// <summary>The scales of a review: pictures and page both take theirs from here, so that a shade means the same in each.</summary>
internal sealed class ReviewScales(IReadOnlyList<LayerField> fields)
{
    /// <summary>Current density of all stretches on all layers, or of one stretch alone.</summary>
    /// <param name="stretch">Number of the stretch in the brief; null for all.</param>
    public ScaleSpec Density(int? stretch = null) => SharedScale.Logarithmic(
        "Current density", "A/mm²", new AreaRanking([.. Of(stretch).Select(field => field.Density)]));

    /// <summary>Temperature rise, likewise.</summary>
    /// <param name="stretch">Number of the stretch in the brief; null for all.</param>
    public ScaleSpec Rise(int? stretch = null) => SharedScale.Linear(
        "Temperature rise", "K", new AreaRanking([.. Of(stretch).Select(field => field.Rise).OfType<ShadedSheet>()]));

    private IEnumerable<LayerField> Of(int? stretch) => fields.Where(field => stretch is null || field.Stretch == stretch);
}
