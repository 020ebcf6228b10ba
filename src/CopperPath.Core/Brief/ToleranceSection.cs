using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>
/// How far what the brief states as one value may lie from it, where the brief says so. What is null has the range that
/// holds by default.
/// </summary>
public sealed record ToleranceSection
{
    /// <summary>True where the brief takes everything as stated: nothing has a range.</summary>
    public bool IsAsStated { get; init; }

    /// <summary>Performance class the board is ordered to: least copper and plating by default follow it.</summary>
    public BoardClass BoardClass { get; init; } = BoardClass.Class2;

    /// <summary>Finished thickness of each copper layer, metres.</summary>
    public IReadOnlyList<ValueRange>? CopperM { get; init; }

    /// <summary>Copper on hole walls, metres.</summary>
    public ValueRange? PlatingM { get; init; }

    /// <summary>Thicknesses of laminate, all together, as factors on what is stated.</summary>
    public ValueRange? Dielectric { get; init; }

    /// <summary>Conductivity of the laminate, through and in plane together, as factors on what is stated or holds by default.</summary>
    public ValueRange? Laminate { get; init; }

    /// <summary>Air around the board, kelvin.</summary>
    public ValueRange? AmbientK { get; init; }

    /// <summary>Film coefficients of both faces, as factors on what is stated or follows from correlations.</summary>
    public ValueRange? Film { get; init; }

    /// <summary>All currents together, as factors on what is stated.</summary>
    public ValueRange? Current { get; init; }
}
