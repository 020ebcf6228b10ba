using System.Reflection;

namespace CopperPath.Cli;

/// <summary>Name and version of the tool.</summary>
public static class Product
{
    public const string Name = "CopperPath";

    /// <summary>The word that starts it.</summary>
    public const string Alias = "copperpath";

    public const string Purpose = "Checks from the fabrication files whether a board's power copper carries its current.";

    public static string Version { get; } =
        typeof(Product).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unversioned";

    public static string NameAndVersion => $"{Name} {Version}";
}
