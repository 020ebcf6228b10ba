using System.Globalization;
using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Circuit;

/// <summary>Thicknesses of the brief -> the conductor stack of the solve.</summary>
public static class StackupBuilder
{
    /// <returns>The stack and the assumptions it needed, or a question to the reader of the brief.</returns>
    public static (Stackup? Stack, IReadOnlyList<string> Assumed, Diagnostic? Problem) Build(ReviewBrief brief, NetList board)
    {
        int layers = board.Layers[^1].Number;
        if (brief.Stackup is not { } stackup)
        {
            return (null, [], new Diagnostic("CIR020", Severity.Error, brief.Board.Position,
                string.Create(CultureInfo.InvariantCulture, $"no stackup for a board of {layers} copper layers"),
                "a 'stackup' section with the copper thickness of each layer and the dielectric between them; resistance rests on it"));
        }

        if (stackup.CopperM.Count != layers)
        {
            return (null, [], new Diagnostic("CIR021", Severity.Error, stackup.Position,
                string.Create(CultureInfo.InvariantCulture, $"{stackup.CopperM.Count} copper thicknesses"),
                string.Create(CultureInfo.InvariantCulture, $"{layers}, one for each copper layer found")));
        }

        double resistivity = CopperMaterial.Iacs.ResistivityOhmM(brief.ConductorK);
        string line = $"Copper at {QuantityText.Temperature(brief.ConductorK)}: resistivity of annealed copper (IACS) throughout.";
        return (new Stackup(stackup.CopperM, stackup.DielectricM, stackup.PlatingM, resistivity)
        {
            WallOutsideToolM = stackup.HoleDiameters == HoleDiameters.Drilled ? 0 : stackup.PlatingM,
        }, [line], null);
    }
}
