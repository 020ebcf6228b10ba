using CopperPath.Meshing;
using CopperPath.Nets;

namespace CopperPath.Electrical;

/// <summary>What copper holds at one potential, contacts and holes, and how densely current passes their rims.</summary>
internal sealed class EquipotentialRims
{
    private readonly Dictionary<(int Layer, int Marker), double> _potentialV = [];
    private readonly Dictionary<Barrel, int> _numberOf = new(ReferenceEqualityComparer.Instance);

    private EquipotentialRims(Net net)
    {
        for (int b = 0; b < net.Barrels.Count; b++)
        {
            _numberOf[net.Barrels[b]] = b + 1;
        }
    }

    /// <summary>Rims with current through them, densest first.</summary>
    public IReadOnlyList<EquipotentialRim> Densest { get; private set; } = [];

    /// <summary>Potential of a hole's rim on a layer, volts; null where it meets no copper with current there.</summary>
    public double? PotentialV(Barrel barrel, int layer) =>
        _potentialV.TryGetValue((layer, _numberOf[barrel]), out double potentialV) ? potentialV : null;

    public static EquipotentialRims Of(ConductionResult result, Net net)
    {
        EquipotentialRims rims = new(net);
        List<EquipotentialRim> found = [];
        foreach (SheetField sheet in result.Sheets)
        {
            found.AddRange(rims.Rims(sheet));
        }

        rims.Densest = [.. found.Where(rim => rim.OutA != 0).OrderByDescending(rim => Math.Abs(rim.OutA) / rim.LengthM)];
        return rims;
    }

    private SortedDictionary<int, EquipotentialRim>.ValueCollection Rims(SheetField sheet)
    {
        SheetMesh mesh = sheet.Mesh;
        SortedDictionary<int, EquipotentialRim> ofMarker = [];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            if (!mesh.IsHeld(t))
            {
                continue;
            }

            int marker = mesh.TriangleMarkers[t];
            double potentialV = sheet.PotentialV[mesh.Triangles[3 * t]];
            _potentialV[(sheet.Layer, marker)] = potentialV;
            for (int edge = 3 * t; edge < (3 * t) + 3; edge++)
            {
                if (mesh.Links.Twin(edge) is >= 0 and int twin && !mesh.IsHeld(twin / 3))
                {
                    int from = mesh.Triangles[edge], to = mesh.Triangles[TriangleLinks.Next(edge)];
                    double dx = mesh.XM[to] - mesh.XM[from], dy = mesh.YM[to] - mesh.YM[from];
                    EquipotentialRim rim = ofMarker.GetValueOrDefault(marker) ?? new EquipotentialRim(potentialV, 0, 0);
                    ofMarker[marker] = rim with
                    {
                        LengthM = rim.LengthM + Math.Sqrt((dx * dx) + (dy * dy)),
                        OutA = rim.OutA + (sheet.SheetCurrentXAPerM[twin / 3] * dy) - (sheet.SheetCurrentYAPerM[twin / 3] * dx),
                    };
                }
            }
        }

        return ofMarker.Values;
    }
}

/// <summary>The rim of a contact or hole on a layer.</summary>
/// <param name="PotentialV">Its potential, volts.</param>
/// <param name="LengthM">How much of it meets plain copper, metres.</param>
/// <param name="OutA">Current out of it into the copper, amperes.</param>
internal sealed record EquipotentialRim(double PotentialV, double LengthM, double OutA);
