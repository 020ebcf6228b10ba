namespace CopperPath.Reading.BoardFiles;

/// <summary>
/// A file name cut into lower-case words: at signs, between letters and digits, and where a capital follows a small
/// letter. <c>In1_Cu</c> gives in, 1, cu.
/// </summary>
internal static class NameWords
{
    public static string[] Of(string name)
    {
        List<string> words = [];
        int start = -1;
        for (int i = 0; i <= name.Length; i++)
        {
            bool inWord = i < name.Length && char.IsLetterOrDigit(name[i]);
            bool cut = start >= 0 && (!inWord || char.IsDigit(name[i]) != char.IsDigit(name[i - 1])
                || (char.IsUpper(name[i]) && char.IsLower(name[i - 1])));
            if (cut)
            {
                words.Add(name[start..i].ToLowerInvariant());
                start = -1;
            }

            if (inWord && start < 0)
            {
                start = i;
            }
        }

        return [.. words];
    }

    /// <summary>Number of leading words that all names share: the name of the board, which says nothing of a layer.</summary>
    public static int CommonLead(IReadOnlyList<string[]> names)
    {
        if (names.Count < 2)
        {
            return 0;
        }

        int shortest = names.Min(n => n.Length);
        int count = 0;
        while (count < shortest && names.All(n => n[count] == names[0][count]))
        {
            count++;
        }

        return count;
    }
}
