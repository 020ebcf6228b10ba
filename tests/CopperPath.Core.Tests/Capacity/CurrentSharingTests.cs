using CopperPath.Capacity;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Capacity;

/// <summary>Skin depth sqrt(rho / (pi f mu0)) at 100 degC, micrometres, evaluated outside this project (numerical Python).</summary>
public class CurrentSharingTests
{
    [Fact]
    public void HarmonicsLeaveTheCopperOneAfterTheOther()
    {
        IReadOnlyList<SkinNote> notes = CurrentSharing.Of(70e-6, 500e3, Units.ZeroCelsiusK + 100, 3);

        notes[0].DepthM.ShouldBe(107.147e-6, 107.147e-6 * 1e-4);
        notes[1].DepthM.ShouldBe(75.764e-6, 75.764e-6 * 1e-4);
        notes.Select(note => note.FillsCopper).ShouldBe([true, true, false]);
    }

    /// <summary>70 um over 35 um at 0.2 mm, 20 degC: 1.7241e-8 (1/70e-6 + 1/35e-6) / (2 pi 4e-7 pi 0.2e-3) = 468 kHz.</summary>
    [Fact]
    public void AcrossTheWidthSharingEndsEarlier() =>
        CurrentSharing.LateralLimitHz(0.2e-3, 70e-6, 35e-6, Units.ZeroCelsiusK + 20).ShouldBe(467.9e3, 0.5e3);
}
