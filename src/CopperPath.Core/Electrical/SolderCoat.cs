using CopperPath.Geometry;
using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>Solder on copper that the mask leaves bare: a conductor in parallel with the copper under it.</summary>
/// <param name="ThicknessM">Mean thickness of the solder, metres, positive.</param>
/// <param name="ResistivityOhmM">Its resistivity, ohm metres.</param>
/// <param name="Openings">Openings of the mask on the outer layers: layer number and pieces.</param>
public sealed record SolderCoat(
    double ThicknessM, double ResistivityOhmM, IReadOnlyList<(int Layer, IReadOnlyList<PolygonNm> Pieces)> Openings);

/// <summary>Sheet conductance of a layer, siemens per square, of bare copper and of copper under solder.</summary>
public readonly record struct SheetConductance(double BareS, double TinnedS)
{
    public double Of(SheetMesh mesh, int triangle) => mesh.TriangleMarkers[triangle] == SheetMesh.Tinned ? TinnedS : BareS;

    /// <summary>Share of the current of tinned copper that runs in the copper.</summary>
    public double CopperShareUnderSolder => BareS / TinnedS;
}
