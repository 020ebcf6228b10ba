using System.Diagnostics;
using CopperPath.Core.Tests.Files;

namespace CopperPath.Cli.Tests.Output;

/// <summary>A small disk in memory; the test skips where one can not be mounted.</summary>
internal sealed class MemoryDisk : IDisposable
{
    private MemoryDisk(string folder) => Folder = folder;

    public string Folder { get; }

    /// <param name="options">Options of the mount, its size among them.</param>
    public static MemoryDisk Of(string options)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux() && Environment.IsPrivilegedProcess, "mounts a disk in memory, which needs Linux and its administrator");
        string folder = Directory.CreateTempSubdirectory("copperpath-").FullName;
        using Process mount = Process.Start("mount", ["-t", "tmpfs", "-o", options, "tmpfs", folder]);
        mount.WaitForExit();
        Assert.SkipUnless(mount.ExitCode == 0, "a disk in memory could not be mounted here");
        return new MemoryDisk(folder);
    }

    public void Dispose()
    {
        SpecialFile.Run("umount", Folder);
        Directory.Delete(Folder);
    }
}
