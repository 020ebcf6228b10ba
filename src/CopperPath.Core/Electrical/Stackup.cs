namespace CopperPath.Electrical;

/// <summary>What the copper is made of and where its layers lie. One entry per copper layer, top to bottom.</summary>
/// <param name="ThicknessM">Finished copper thickness of each layer, metres, positive.</param>
/// <param name="DielectricM">Dielectric between each layer and the next, metres; one fewer than layers.</param>
/// <param name="PlatingM">Thickness of the copper on the wall of plated holes, metres, positive.</param>
/// <param name="ResistivityOhmM">Resistivity of all copper at the temperature assumed, ohm metres.</param>
public sealed record Stackup(
    IReadOnlyList<double> ThicknessM,
    IReadOnlyList<double> DielectricM,
    double PlatingM,
    double ResistivityOhmM)
{
    /// <summary>
    /// How far the outer face of a hole's wall lies outside the radius of the tool, metres: the plating where the files
    /// give finished diameters, nothing where they give those of the drill.
    /// </summary>
    public double WallOutsideToolM { get; init; } = PlatingM;

    /// <summary>Solder on exposed copper, or null where there is none to count on.</summary>
    public SolderCoat? Solder { get; init; }

    /// <summary>Sheet conductance of a layer (1 = top), siemens per square.</summary>
    public double SheetConductanceS(int layer) => ThicknessM[layer - 1] / ResistivityOhmM;

    /// <summary>The same with what solder adds where it lies.</summary>
    public SheetConductance ConductanceOf(int layer) =>
        new(SheetConductanceS(layer), SheetConductanceS(layer) + (Solder is null ? 0 : Solder.ThicknessM / Solder.ResistivityOhmM));

    /// <summary>Distance between the mid-planes of two layers, metres: the length of barrel the current runs through.</summary>
    public double BarrelLengthM(int upperLayer, int lowerLayer)
    {
        double length = (ThicknessM[upperLayer - 1] + ThicknessM[lowerLayer - 1]) / 2;
        for (int layer = upperLayer; layer < lowerLayer; layer++)
        {
            length += DielectricM[layer - 1] + (layer > upperLayer ? ThicknessM[layer - 1] : 0);
        }

        return length;
    }
}
