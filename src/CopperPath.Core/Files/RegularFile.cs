using System.Globalization;

namespace CopperPath.Files;

/// <summary>Why a file was not read.</summary>
public enum FileFault
{
    Missing,

    /// <summary>A folder, pipe, socket or device, be it at the end of a link.</summary>
    NotRegular,
    TooLarge,
    Unreadable,
}

/// <summary>A file that was not read, and why.</summary>
/// <param name="Fault">The kind of fault.</param>
/// <param name="Found">Words that fit after "found".</param>
public sealed record FileRefusal(FileFault Fault, string Found);

/// <summary>
/// The one way files come in: regular files, also at the end of links, no larger than asked for. Anything else could wait for
/// ever or never end, and is refused before it is opened.
/// </summary>
public static class RegularFile
{
    /// <summary>Opens a file for reading.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="mostBytes">Largest length taken.</param>
    /// <param name="refusal">Why there is no stream; else null.</param>
    public static FileStream? Open(string path, long mostBytes, out FileRefusal? refusal)
    {
        PathKind kind = PathKinds.At(path);
        if (kind != PathKind.RegularFile)
        {
            refusal = new FileRefusal(kind == PathKind.Nothing ? FileFault.Missing : FileFault.NotRegular, PathKinds.Named(kind));
            return null;
        }

        try
        {
            FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
            if (stream.Length <= mostBytes)
            {
                refusal = null;
                return stream;
            }

            refusal = new FileRefusal(FileFault.TooLarge, string.Create(CultureInfo.InvariantCulture, $"{stream.Length} bytes"));
            stream.Dispose();
        }
        catch (Exception e) when (IsOfFiles(e))
        {
            refusal = Unreadable(e.Message);
        }

        return null;
    }

    /// <summary>Reads a whole file, never more than the length it had when it was opened.</summary>
    /// <param name="path">Its path.</param>
    /// <param name="mostBytes">Largest length taken.</param>
    /// <param name="refusal">Why there are no bytes; else null.</param>
    public static byte[]? Read(string path, long mostBytes, out FileRefusal? refusal)
    {
        using FileStream? stream = Open(path, Math.Min(mostBytes, Array.MaxLength), out refusal);
        if (stream is null)
        {
            return null;
        }

        try
        {
            byte[] bytes = new byte[stream.Length];
            int read = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            if (read == bytes.Length && stream.ReadByte() < 0)
            {
                return bytes;
            }

            refusal = Unreadable("its length changed while it was read");
        }
        catch (Exception e) when (IsOfFiles(e))
        {
            refusal = Unreadable(e.Message);
        }

        return null;
    }

    /// <summary>Whether an exception is of those that paths and files throw.</summary>
    public static bool IsOfFiles(Exception e) =>
        e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException;

    private static FileRefusal Unreadable(string why) => new(FileFault.Unreadable, $"a file that can not be read ({why})");
}
