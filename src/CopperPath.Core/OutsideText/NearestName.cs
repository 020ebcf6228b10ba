namespace CopperPath.OutsideText;

/// <summary>Finds the known name a reader probably meant.</summary>
public static class NearestName
{
    /// <param name="written">What was written.</param>
    /// <param name="known">What it may have meant.</param>
    /// <returns>The known name fewest single-letter edits away, or null when none is near enough to be worth saying.</returns>
    public static string? Of(string written, IEnumerable<string> known)
    {
        // Bounded so that a page of text in the wrong place costs nothing.
        if (written.Length > 64)
        {
            return null;
        }

        string folded = Fold(written);
        string? nearest = null;
        int least = int.MaxValue;
        foreach (string name in known)
        {
            int edits = Edits(folded, Fold(name));
            if (edits < least && edits <= Math.Max(1, name.Length / 3))
            {
                nearest = name;
                least = edits;
            }
        }

        return nearest;
    }

    /// <summary>Case and the joint between words are the commonest slips, so they count as no edit.</summary>
    private static string Fold(string name) => name.ToLowerInvariant().Replace('_', ' ').Replace('-', ' ');

    /// <summary>Levenshtein distance counting a swap of neighbours as one edit (optimal string alignment).</summary>
    private static int Edits(string a, string b)
    {
        int[,] cost = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
        {
            for (int j = 0; j <= b.Length; j++)
            {
                cost[i, j] = i == 0 || j == 0 ? i + j : Math.Min(
                    Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1,
                    cost[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
                }
            }
        }

        return cost[a.Length, b.Length];
    }
}
