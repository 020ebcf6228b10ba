using System.Diagnostics;
using System.Net.Sockets;

namespace CopperPath.Core.Tests.Files;

/// <summary>Makes what is no regular file; skips, visibly, where the system has none of the kind.</summary>
public static class SpecialFile
{
    public const string Pipe = "a named pipe";
    public const string Device = "a device";
    public const string Socket = "a socket";
    public const string LinkToDevice = "a link to a device";
    public const string LinkToPipe = "a link to a named pipe";
    public const string LinkToNothing = "a link that leads nowhere";

    /// <summary>Makes one at a path.</summary>
    public static void Make(string kind, string path)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "no such files on this system");
        switch (kind)
        {
            case Pipe:
                Run("mkfifo", path);
                break;
            case Socket:
                using (Socket socket = new(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified))
                {
                    socket.Bind(new UnixDomainSocketEndPoint(path));
                    File.Exists(path).ShouldBeTrue();
                    File.Move(path, path + "-kept");
                }

                File.Move(path + "-kept", path);
                break;
            case LinkToDevice:
                File.CreateSymbolicLink(path, "/dev/zero");
                break;
            case LinkToPipe:
                Run("mkfifo", path + ".pipe");
                string hidden = Path.Combine(Path.GetDirectoryName(path)!, "." + Path.GetFileName(path) + ".pipe");
                File.Move(path + ".pipe", hidden);
                File.CreateSymbolicLink(path, hidden);
                break;
            case LinkToNothing:
                File.CreateSymbolicLink(path, path + ".gone");
                break;
            default:
                throw new ArgumentException(kind);
        }
    }

    /// <summary>Runs a program of the system to its end.</summary>
    public static void Run(string program, params string[] arguments)
    {
        using Process process = Process.Start(new ProcessStartInfo(program, arguments))!;
        process.WaitForExit();
        process.ExitCode.ShouldBe(0, program);
    }

    /// <summary>The result of work that would once have waited for ever.</summary>
    public static T Promptly<T>(Func<T> work)
    {
        Task<T> task = Task.Run(work);
        task.Wait(TimeSpan.FromSeconds(30)).ShouldBeTrue("it waits for ever");
        return task.Result;
    }
}
