using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Meshing;
using CopperPath.Nets;
using CopperPath.Polygons;
using CopperPath.Quantities;

namespace CopperPath.Electrical;

/// <summary>The meshes of a net's layers, and which marker in them belongs to which barrel or contact.</summary>
/// <param name="Sheets">Layer number and mesh, ascending.</param>
/// <param name="BarrelCount">Markers 1 to this number are the net's barrels, in order.</param>
/// <param name="Contacts">Markers above are these contacts, in order.</param>
/// <param name="Drawn">What each sheet was meshed from.</param>
internal sealed record NetMesh(
    IReadOnlyList<(int Layer, SheetMesh Mesh)> Sheets,
    int BarrelCount,
    IReadOnlyList<Contact> Contacts,
    IReadOnlyList<SheetDomain> Drawn)
{
    /// <summary>Layers whose first mesh ended at its limit of vertices, coarser than asked for.</summary>
    public IReadOnlyList<int> CoarseLayers { get; private init; } = [];

    /// <summary>How far outlines of the mesh may lie off the drawn ones, metres.</summary>
    public double OutlineReachM { get; private init; }

    /// <summary>Edges of each sheet beside which the drawn outline runs elsewhere.</summary>
    public IReadOnlyList<IReadOnlyList<EdgeFit>> OutlineFits()
    {
        IReadOnlyList<EdgeFit>[] fits = new IReadOnlyList<EdgeFit>[Sheets.Count];
        Parallel.For(0, fits.Length, s => fits[s] = OutlineFit.Of(Drawn[s], Sheets[s].Mesh, BarrelCount + 1, OutlineReachM));
        return fits;
    }

    /// <summary>What rounding to the welding grid and laying rings onto outlines may move an outline by, in steps of the grid.</summary>
    private const int WeldingSteps = 6;

    /// <summary>
    /// Meshes a net. Barrels are discs the size of the drilled hole: their walls conduct so much better sideways than
    /// the sheet that the rim of a hole is one potential, which makes the disc inside it one as well.
    /// </summary>
    /// <returns>The mesh, or null and the reason.</returns>
    public static (NetMesh? Mesh, string? Reason) Build(
        Net net, IReadOnlyList<Contact> contacts, IReadOnlyList<DrilledFeature> cuts, Stackup stack, MeshQuality quality)
    {
        SheetMeshing[] meshings = new SheetMeshing[net.Sheets.Count];
        SheetDomain[] domains = new SheetDomain[net.Sheets.Count];
        Parallel.For(0, net.Sheets.Count, i =>
        {
            NetSheet sheet = WithoutLonePads(net.Sheets[i], net.Barrels, contacts);
            try
            {
                domains[i] = DomainOf(sheet, net.Barrels, contacts, cuts, stack);
                meshings[i] = SheetMesher.Mesh(domains[i], quality);
            }
            catch (EntangledOutlinesException)
            {
                meshings[i] = new SheetMeshing(MeshingOutcome.OutlinesCross, null, null, "unplated holes and cuts meet its copper too often to be taken from it");
            }
        });

        List<(int, SheetMesh)> sheets = [];
        List<SheetDomain> drawn = [];
        for (int i = 0; i < meshings.Length; i++)
        {
            if (meshings[i].Mesh is { } mesh)
            {
                sheets.Add((net.Sheets[i].Layer, MaskOpenings.Tinned(mesh, net.Barrels.Count + contacts.Count)));
                drawn.Add(domains[i]);
            }
            else if (meshings[i].Outcome != MeshingOutcome.NoCopper)
            {
                return (null, $"layer {net.Sheets[i].Layer}: {meshings[i].Reason}");
            }
        }

        return (new NetMesh(sheets, net.Barrels.Count, contacts, drawn)
        {
            CoarseLayers = [.. meshings.Zip(net.Sheets).Where(each => each.First.Outcome == MeshingOutcome.VertexLimitReached).Select(each => each.Second.Layer)],
            OutlineReachM = quality.SimplificationToleranceM + (WeldingSteps * quality.WeldingGridM),
        }, null);
    }

    /// <summary>The same net with triangles halved; one count per triangle of each sheet.</summary>
    public NetMesh Refined(IReadOnlyList<int[]> halvings)
    {
        (int, SheetMesh)[] refined = new (int, SheetMesh)[Sheets.Count];
        Parallel.For(0, refined.Length, s =>
            refined[s] = (Sheets[s].Layer, MeshBisection.Refine(Sheets[s].Mesh, halvings[s])));
        return this with { Sheets = refined };
    }

    private static SheetDomain DomainOf(
        NetSheet sheet, IReadOnlyList<Barrel> barrels, IReadOnlyList<Contact> contacts,
        IReadOnlyList<DrilledFeature> cuts, Stackup stack)
    {
        List<MarkedRing> marked = [];
        double wallNm = Units.NmFromMetres(stack.WallOutsideToolM);
        for (int b = 0; b < barrels.Count; b++)
        {
            if (barrels[b].Layers.Contains(sheet.Layer))
            {
                marked.Add(new MarkedRing(HoleOutline.ForMeshing(barrels[b].Feature, wallNm), b + 1) { IsHeld = true });
            }
        }

        for (int c = 0; c < contacts.Count; c++)
        {
            marked.AddRange(contacts[c].Areas.Where(area => area.Layer == sheet.Layer)
                .Select(area => new MarkedRing(area.Outline, barrels.Count + c + 1) { IsHeld = true }));
        }

        foreach ((int _, IReadOnlyList<PolygonNm> pieces) in (stack.Solder?.Openings ?? []).Where(side => side.Layer == sheet.Layer))
        {
            marked.AddRange(MaskOpenings.Rings(
                [.. pieces.Where(piece => sheet.Islands.Any(island => island.Bounds.Touches(piece.Bounds)))], barrels.Count + contacts.Count));
        }

        return new SheetDomain(WithoutCuts(sheet, cuts), marked);
    }

    /// <summary>
    /// The sheet without the pads around plated holes which nothing else of the layer meets: they carry no current, and
    /// there are as many of them as holes.
    /// </summary>
    private static NetSheet WithoutLonePads(NetSheet sheet, IReadOnlyList<Barrel> barrels, IReadOnlyList<Contact> contacts)
    {
        BoxNm[] holes = [.. barrels.Where(barrel => barrel.Layers.Contains(sheet.Layer)).Select(barrel => BoxNm.Of(barrel.Outline))];
        BoxNm[] areas = [.. contacts.SelectMany(contact => contact.Areas)
            .Where(area => area.Layer == sheet.Layer).Select(area => BoxNm.Of(area.Outline))];
        return sheet with
        {
            Islands = [.. sheet.Islands.Where(island =>
                holes.Count(island.Bounds.Touches) > 1 || Array.Exists(areas, island.Bounds.Touches))],
        };
    }

    private static IReadOnlyList<PolygonNm> WithoutCuts(NetSheet sheet, IReadOnlyList<DrilledFeature> cuts)
    {
        List<PointNm[]> holes = [.. cuts.Select(cut => HoleOutline.Of(cut, 0))
            .Where(hole => sheet.Islands.Any(island => island.Bounds.Touches(BoxNm.Of(hole))))];
        return holes.Count == 0 ? sheet.Islands
            : PolygonOperations.Subtract(CopperBuilder.RingsOf(sheet.Islands), holes);
    }
}
