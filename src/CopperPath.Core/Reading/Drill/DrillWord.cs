namespace CopperPath.Reading.Drill;

/// <summary>One letter with its number, such as <c>X1.5</c>, <c>G85</c> or <c>T01</c>.</summary>
/// <param name="Letter">Address letter, upper case.</param>
/// <param name="Number">Text of the number, possibly empty.</param>
/// <param name="Column">Column of the letter in its line, from 1.</param>
internal readonly record struct DrillWord(char Letter, string Number, int Column)
{
    public override string ToString() => Letter + Number;

    /// <summary>
    /// Splits a line into words. A character that can not stand there ends the list;
    /// <paramref name="badColumn"/> then says where, and is 0 otherwise.
    /// </summary>
    public static List<DrillWord> Split(string line, int start, int end, out int badColumn)
    {
        List<DrillWord> words = [];
        int at = start;
        while (at < end)
        {
            char letter = line[at];
            if (char.IsWhiteSpace(letter))
            {
                at++;
                continue;
            }

            if (letter is < 'A' or > 'Z')
            {
                badColumn = at + 1;
                return words;
            }

            int numberStart = at + 1;
            int numberEnd = numberStart;
            while (numberEnd < end && (char.IsAsciiDigit(line[numberEnd]) || line[numberEnd] is '+' or '-' or '.'))
            {
                numberEnd++;
            }

            words.Add(new DrillWord(letter, line[numberStart..numberEnd], at + 1));
            at = numberEnd;
        }

        badColumn = 0;
        return words;
    }
}
