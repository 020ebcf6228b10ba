namespace CopperPath.Core.Tests;

/// <summary>
/// Real fabrication data that stands beside the project, not in it. Tests that need it skip visibly where it is absent.
/// </summary>
public static class SharedData
{
    /// <summary>Root of the working copy, the folder above the built tests that holds the solution.</summary>
    public static string ProjectRoot { get; } = FindProjectRoot();

    /// <summary>Path of a file or folder under <c>../shared</c>; skips the calling test when it is absent.</summary>
    public static string Require(params string[] parts)
    {
        string path = Path.Combine([ProjectRoot, "..", "shared", .. parts]);
        if (!File.Exists(path) && !Directory.Exists(path))
        {
            Assert.Skip($"needs ../shared/{string.Join('/', parts)}, which is not beside this working copy");
        }

        return Path.GetFullPath(path);
    }

    private static string FindProjectRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "CopperPath.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName
            ?? throw new InvalidOperationException("the tests run outside the working copy: no CopperPath.sln above them");
    }
}
