using System.Runtime.InteropServices;
using System.Text;

namespace CopperPath.Files;

/// <summary>What stands at a path once links are followed.</summary>
public enum PathKind
{
    /// <summary>Nothing, or a link that leads nowhere.</summary>
    Nothing,
    RegularFile,
    Folder,
    NamedPipe,
    Socket,
    Device,
}

/// <summary>Tells what stands at a path without opening it: opening a pipe waits for ever, opening a device may act on it.</summary>
public static class PathKinds
{
    private const int Missing = -1;
    private const int StatusBytes = 256;
    private const int ModeOffset = 4;

    /// <summary>Never throws; what can not be looked at counts as nothing.</summary>
    public static PathKind At(string path)
    {
        if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal))
        {
            return PathKind.Nothing;
        }

        if (OperatingSystem.IsWindows())
        {
            return File.Exists(path) ? PathKind.RegularFile : Directory.Exists(path) ? PathKind.Folder : PathKind.Nothing;
        }

        // The runtime's own library evens out the systems' layouts; no public call of the runtime tells the kind of a file.
        Span<byte> status = stackalloc byte[StatusBytes];
        if (Status(Encoding.UTF8.GetBytes(path + '\0'), ref MemoryMarshal.GetReference(status)) == Missing)
        {
            return PathKind.Nothing;
        }

        // File types of POSIX <sys/stat.h>, the values those of all systems the runtime knows.
        return (MemoryMarshal.Read<int>(status[ModeOffset..]) & 0xF000) switch
        {
            0x8000 => PathKind.RegularFile,
            0x4000 => PathKind.Folder,
            0x1000 => PathKind.NamedPipe,
            0xC000 => PathKind.Socket,
            _ => PathKind.Device,
        };
    }

    /// <summary>Whether the last name of a path is a link, wherever it leads.</summary>
    public static bool IsLink(string path) => new FileInfo(Path.TrimEndingDirectorySeparator(path)).LinkTarget is not null;

    /// <summary>Words that fit after "found".</summary>
    public static string Named(PathKind kind) => kind switch
    {
        PathKind.Nothing => "no such file",
        PathKind.RegularFile => "a file",
        PathKind.Folder => "a folder",
        PathKind.NamedPipe => "a named pipe",
        PathKind.Socket => "a socket",
        _ => "a device",
    };

    [DllImport("libSystem.Native", EntryPoint = "SystemNative_Stat")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Status(byte[] path, ref byte status);
}
