namespace CopperPath.Reading.BoardFiles;

/// <summary>
/// An order for inner layers of which only names such as GND1, PWR and SIGNAL2 are known. The habit behind it (common
/// practice, no source): planes in the order of their numbers, supply planes paired with the middle ground, and the
/// signal layers spread evenly over the gaps between planes. It is a guess and always reported as one.
/// </summary>
internal static class InnerOrderGuess
{
    public static IReadOnlyList<T> Order<T>(IReadOnlyList<(T File, RoleClaim Claim)> layers)
    {
        List<(T File, RoleClaim Claim)> planes = Sorted(layers, LayerPlace.Ground);
        List<(T File, RoleClaim Claim)> supplies = Sorted(layers, LayerPlace.Supply);
        List<(T File, RoleClaim Claim)> signals = Sorted(layers, LayerPlace.Signal);
        planes.InsertRange((planes.Count + 1) / 2, supplies);

        // A ground and a supply plane side by side form a pair without a gap for signals.
        List<int> gaps = [.. Enumerable.Range(1, Math.Max(0, planes.Count - 1))
            .Where(i => planes[i - 1].Claim.Place != LayerPlace.Ground || planes[i].Claim.Place != LayerPlace.Supply)];
        if (gaps.Count == 0)
        {
            gaps = [planes.Count];
        }

        List<T> order = [];
        int gap = 0;
        int next = 0;
        for (int i = 0; i <= planes.Count; i++)
        {
            if (gap < gaps.Count && gaps[gap] == i)
            {
                gap++;
                int end = signals.Count * gap / gaps.Count;
                order.AddRange(signals[next..end].Select(s => s.File));
                next = end;
            }

            if (i < planes.Count)
            {
                order.Add(planes[i].File);
            }
        }

        return order;
    }

    private static List<(T File, RoleClaim Claim)> Sorted<T>(IReadOnlyList<(T File, RoleClaim Claim)> layers, LayerPlace place) =>
        [.. layers.Where(l => l.Claim.Place == place).OrderBy(l => l.Claim.Number)];
}
