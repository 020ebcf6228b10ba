using System.Security.Cryptography;
using System.Text;

namespace CopperPath.Cli.Report.Html;

/// <summary>The brief as it was read, for whoever wants to repeat the run.</summary>
/// <param name="Name">File name without its folder: a report does not say where it was made.</param>
/// <param name="Bytes">Its content.</param>
internal sealed record BriefSource(string Name, byte[] Bytes)
{
    /// <summary>What the brief is called among the inputs of a fingerprint: no file of a board has this name, and its own does not matter.</summary>
    public const string EntryName = "/";

    /// <summary>Without the mark of byte order, which is no part of what was written.</summary>
    public string Text => Encoding.UTF8.GetString(Bytes).TrimStart('\uFEFF');

    public string Sha256 => Convert.ToHexStringLower(SHA256.HashData(Bytes));

    /// <summary>The brief of a review, as it was read for it.</summary>
    public static BriefSource Of(string path, Review review) => new(Path.GetFileName(path), review.BriefBytes.ToArray());
}
