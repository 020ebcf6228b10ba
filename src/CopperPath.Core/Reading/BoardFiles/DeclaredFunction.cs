using System.Text;

namespace CopperPath.Reading.BoardFiles;

/// <summary>
/// Finds the <c>.FileFunction</c> a file declares about itself, in each of its written forms:
/// <c>%TF.FileFunction,...*%</c>, <c>G04 #@! TF.FileFunction,...*</c> and <c>; #@! TF.FileFunction,...</c>.
/// </summary>
internal static class DeclaredFunction
{
    /// <summary>Files declare themselves in their first lines; this is far behind those.</summary>
    private const int HeadBytes = 256 * 1024;

    private const string Mark = "TF.FileFunction,";

    /// <summary>The value without its name, or null.</summary>
    public static string? Find(ReadOnlySpan<byte> bytes)
    {
        string head = Encoding.UTF8.GetString(bytes[..Math.Min(bytes.Length, HeadBytes)]);
        for (int at = head.IndexOf(Mark, StringComparison.Ordinal); at >= 0;
            at = head.IndexOf(Mark, at + Mark.Length, StringComparison.Ordinal))
        {
            ReadOnlySpan<char> before = head.AsSpan(0, at).TrimEnd();
            if (before.EndsWith('%') || before.EndsWith("#@!"))
            {
                int start = at + Mark.Length;
                int length = head.AsSpan(start).IndexOfAny("*\r\n%");
                return head.Substring(start, length < 0 ? head.Length - start : length).Trim();
            }
        }

        return null;
    }
}
