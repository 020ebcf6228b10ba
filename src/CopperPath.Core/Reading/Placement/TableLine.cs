namespace CopperPath.Reading.Placement;

/// <summary>One field of a line.</summary>
/// <param name="Text">Its text without surrounding blanks and quotes.</param>
/// <param name="Column">Where it starts in the line, from 1.</param>
internal readonly record struct TableField(string Text, int Column);

/// <summary>Cuts a line of a table into fields.</summary>
internal static class TableLine
{
    /// <summary>Stands for columns kept apart by blanks.</summary>
    public const char Blanks = ' ';

    /// <summary>The delimiter of a heading: a tab or semicolon where there is one, else commas, else blanks.</summary>
    public static char DelimiterOf(string heading) =>
        heading.Contains('\t', StringComparison.Ordinal) ? '\t'
        : heading.Contains(';', StringComparison.Ordinal) ? ';'
        : heading.Contains(',', StringComparison.Ordinal) ? ','
        : Blanks;

    /// <summary>
    /// The fields of a line. A field in double quotes may hold the delimiter, and a doubled quote for a quote.
    /// <paramref name="openQuoteColumn"/> is 0, or says which quote never ends; the list then breaks off.
    /// </summary>
    public static List<TableField> Split(string line, char delimiter, out int openQuoteColumn)
    {
        List<TableField> fields = [];
        openQuoteColumn = 0;
        int at = 0;
        while (true)
        {
            while (at < line.Length && line[at] != delimiter && char.IsWhiteSpace(line[at]))
            {
                at++;
            }

            if (delimiter == Blanks)
            {
                while (at < line.Length && line[at] == Blanks)
                {
                    at++;
                }

                if (at == line.Length)
                {
                    return fields;
                }
            }

            int start = at;
            if (at < line.Length && line[at] == '"')
            {
                if (QuotedEnd(line, at) is not { } end)
                {
                    openQuoteColumn = start + 1;
                    return fields;
                }

                fields.Add(new TableField(line[(start + 1)..end].Replace("\"\"", "\"", StringComparison.Ordinal).Trim(), start + 1));
                at = IndexOf(line, delimiter, end + 1);
            }
            else
            {
                at = IndexOf(line, delimiter, start);
                fields.Add(new TableField(line[start..at].TrimEnd(), start + 1));
            }

            if (at == line.Length)
            {
                return fields;
            }

            at++;
        }
    }

    /// <summary>Index of the quote that ends the field which starts with one.</summary>
    private static int? QuotedEnd(string line, int start)
    {
        for (int i = start + 1; i < line.Length; i++)
        {
            if (line[i] == '"')
            {
                if (i + 1 == line.Length || line[i + 1] != '"')
                {
                    return i;
                }

                i++;
            }
        }

        return null;
    }

    private static int IndexOf(string line, char delimiter, int start)
    {
        int found = line.IndexOf(delimiter, start);
        return found < 0 ? line.Length : found;
    }
}
