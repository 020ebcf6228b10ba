using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>Potentials -> current densities, barrel and contact currents, drop, loss, and the balances that check them.</summary>
internal static class FieldRecovery
{
    public static ConductionResult Recover(
        NetMesh mesh, NodeMap nodes, List<BarrelLink> links, IReadOnlyList<BoundTerminal> terminals,
        Stackup stack, double[] potentialV, int unknownCount, double relativeResidual)
    {
        List<SheetField> sheets = [];
        ContactLedger ledger = new(nodes, terminals);
        double lossW = 0;
        for (int s = 0; s < mesh.Sheets.Count; s++)
        {
            sheets.Add(FieldOf(mesh, nodes, s, stack, potentialV, ledger, ref lossW));
        }

        List<BarrelCurrent> barrels = [];
        foreach (BarrelLink link in links)
        {
            double currentA = (potentialV[link.UpperGroup] - potentialV[link.LowerGroup]) / link.ResistanceOhm;
            currentA = double.IsNaN(currentA) ? 0 : currentA;
            lossW += currentA * currentA * link.ResistanceOhm;
            ledger.CountLink(link, currentA);
            barrels.Add(new BarrelCurrent(link.Barrel, link.UpperLayer, link.LowerLayer, currentA, link.ResistanceOhm));
        }

        IReadOnlyList<TerminalResult> results = ledger.Results(potentialV);
        double entering = terminals.Where(terminal => terminal.CurrentA > 0).Sum(terminal => terminal.CurrentA);
        double powerW = results.Sum(result => result.Terminal.CurrentA * result.PotentialV);
        double drop = results.Where(result => result.Terminal.CurrentA > 0).Max(result => result.PotentialV)
            - results.Where(result => result.Terminal.CurrentA < 0).Min(result => result.PotentialV);
        return new ConductionResult(
            ConductionStatus.Solved, null, sheets, barrels, results, drop, lossW,
            ledger.LargestErrorA / entering, Math.Abs(powerW - lossW) / Math.Max(lossW, double.Epsilon),
            unknownCount, relativeResidual);
    }

    private static SheetField FieldOf(
        NetMesh mesh, NodeMap nodes, int s, Stackup stack, double[] potentialV, ContactLedger ledger, ref double lossW)
    {
        (int layer, SheetMesh sheet) = mesh.Sheets[s];
        double conductance = stack.SheetConductanceS(layer);
        double[] vertexV = new double[sheet.VertexCount];
        for (int v = 0; v < vertexV.Length; v++)
        {
            vertexV[v] = potentialV[nodes.NodeOfVertex(s, v)];
        }

        double[] currentX = new double[sheet.TriangleCount];
        double[] currentY = new double[sheet.TriangleCount];
        for (int t = 0; t < sheet.TriangleCount; t++)
        {
            int a = sheet.Triangles[3 * t];
            int b = sheet.Triangles[(3 * t) + 1];
            int c = sheet.Triangles[(3 * t) + 2];
            if (sheet.TriangleMarkers[t] != 0 || double.IsNaN(vertexV[a]))
            {
                continue;
            }

            TriangleGradient g = new(sheet, t);
            currentX[t] = -conductance * ((g.X0 * vertexV[a]) + (g.X1 * vertexV[b]) + (g.X2 * vertexV[c]));
            currentY[t] = -conductance * ((g.Y0 * vertexV[a]) + (g.Y1 * vertexV[b]) + (g.Y2 * vertexV[c]));
            lossW += ((currentX[t] * currentX[t]) + (currentY[t] * currentY[t])) * g.AreaM2 / conductance;

            // Weak form: the current a vertex feeds into a triangle is -J . grad(shape function) times its area.
            ledger.CountVertex(nodes.GroupOfVertex(s, a), -g.AreaM2 * ((currentX[t] * g.X0) + (currentY[t] * g.Y0)));
            ledger.CountVertex(nodes.GroupOfVertex(s, b), -g.AreaM2 * ((currentX[t] * g.X1) + (currentY[t] * g.Y1)));
            ledger.CountVertex(nodes.GroupOfVertex(s, c), -g.AreaM2 * ((currentX[t] * g.X2) + (currentY[t] * g.Y2)));
        }

        return new SheetField(layer, sheet, vertexV, currentX, currentY);
    }
}
