using CopperPath.Nets;

namespace CopperPath.Electrical;

/// <summary>The stretch of a barrel between two layers it touches, as a conductor between two groups.</summary>
internal sealed record BarrelLink(
    Barrel Barrel, int UpperLayer, int LowerLayer, int UpperGroup, int LowerGroup, double ResistanceOhm)
{
    public static List<BarrelLink> Of(Net net, NodeMap nodes, Stackup stack)
    {
        List<BarrelLink> links = [];
        for (int b = 0; b < net.Barrels.Count; b++)
        {
            Barrel barrel = net.Barrels[b];
            double sectionM2 = BarrelSection.AreaM2(barrel.Feature, stack);
            int upperLayer = 0;
            int upperGroup = -1;
            foreach (int layer in barrel.Layers)
            {
                int group = nodes.GroupOfBarrel(b, layer);
                if (group < 0)
                {
                    continue;
                }

                if (upperGroup >= 0)
                {
                    double resistance = stack.ResistivityOhmM * stack.BarrelLengthM(upperLayer, layer) / sectionM2;
                    links.Add(new BarrelLink(barrel, upperLayer, layer, upperGroup, group, resistance));
                }

                (upperLayer, upperGroup) = (layer, group);
            }
        }

        return links;
    }
}
