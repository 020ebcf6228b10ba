namespace CopperPath.Cli;

/// <summary>A sentence broken between words, what follows set in as far as it began.</summary>
internal static class BrokenLines
{
    /// <summary>Narrower windows get lines of this width.</summary>
    private const int LeastWidth = 40;

    /// <param name="text">One line; spaces it begins with are its indent.</param>
    /// <param name="width">Most characters in a line; a word that is longer stands alone.</param>
    public static IEnumerable<string> Of(string text, int width)
    {
        width = Math.Max(width, LeastWidth);
        string indent = text[..(text.Length - text.TrimStart(' ').Length)];
        int begin = 0;
        while (true)
        {
            string head = begin == 0 ? "" : indent;
            int room = width - head.Length;
            if (text.Length - begin <= room)
            {
                yield return head + text[begin..];
                yield break;
            }

            int firstWord = begin == 0 ? indent.Length : begin;
            int end = text.LastIndexOf(' ', begin + room, begin + room - firstWord);
            end = end > firstWord ? end : text.IndexOf(' ', firstWord);
            if (end < 0)
            {
                yield return head + text[begin..];
                yield break;
            }

            yield return head + text[begin..end].TrimEnd(' ');
            begin = end + 1;
        }
    }
}
