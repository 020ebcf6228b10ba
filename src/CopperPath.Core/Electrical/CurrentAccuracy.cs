namespace CopperPath.Electrical;

/// <summary>
/// How far off the currents of single holes and contacts may be, which the bounds of loss and drop say nothing of: an
/// estimate. A current is compared with that of the linear potential on the same mesh, whose error is several times
/// larger (the saturation assumption of hierarchical estimates: R. E. Bank and R. K. Smith, SIAM J. Numer. Anal. 30, 1993;
/// from memory): half their distance counts. Two errors may happen to be alike, so the distance of the bounds counts as well.
/// </summary>
/// <param name="widthShare">Distance of the bounds of loss and drop as a share of them.</param>
internal sealed class CurrentAccuracy(double widthShare)
{
    public IReadOnlyList<BarrelCurrent> Of(IReadOnlyList<BarrelCurrent> barrels, IReadOnlyList<BarrelCurrent> linear) =>
        [.. barrels.Zip(linear, (own, poorer) => own with { AccuracyA = Of(own.CurrentA, poorer.CurrentA) })];

    public IReadOnlyList<TerminalResult> Of(IReadOnlyList<TerminalResult> terminals, IReadOnlyList<TerminalResult> linear) =>
        [.. terminals.Zip(linear, (own, poorer) => own with
        {
            ContactAccuracyA = [.. own.ContactCurrentsA.Zip(poorer.ContactCurrentsA, Of)],
        })];

    private double Of(double currentA, double poorerA) => (Math.Abs(currentA - poorerA) / 2) + (widthShare * Math.Abs(currentA));
}
