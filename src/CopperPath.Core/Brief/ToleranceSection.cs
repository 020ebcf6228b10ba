using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>How far what the brief states as one value may lie from it. What is null is taken as stated.</summary>
public sealed record ToleranceSection
{
    /// <summary>Finished thickness of each copper layer, metres.</summary>
    public IReadOnlyList<ValueRange>? CopperM { get; init; }

    /// <summary>Copper on hole walls, metres.</summary>
    public ValueRange? PlatingM { get; init; }

    /// <summary>Air around the board, kelvin.</summary>
    public ValueRange? AmbientK { get; init; }

    /// <summary>Film coefficients of both faces, as factors on what is stated or follows from correlations.</summary>
    public ValueRange? Film { get; init; }

    /// <summary>All currents together, as factors on what is stated.</summary>
    public ValueRange? Current { get; init; }
}
