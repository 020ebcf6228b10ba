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

    public string Text => Encoding.UTF8.GetString(Bytes);

    public string Sha256 => Convert.ToHexStringLower(SHA256.HashData(Bytes));

    /// <summary>Reads the brief again, which was readable a moment ago.</summary>
    public static BriefSource Of(string path) => new(Path.GetFileName(path), File.ReadAllBytes(path));
}
