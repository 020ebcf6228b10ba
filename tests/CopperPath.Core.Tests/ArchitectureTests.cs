using System.Text.RegularExpressions;

namespace CopperPath.Core.Tests;

/// <summary>The rooms use each other one way only, as DEVELOPERS.md draws it.</summary>
public sealed partial class ArchitectureTests
{
    private static readonly string[] Foundations = ["Geometry", "OutsideText", "Diagnostics", "Files", "Quantities", "LinearAlgebra", "Polygons"];

    /// <summary>
    /// Rooms in the order of the data. Artwork's records stand before Reading because readers produce them.
    /// </summary>
    private static readonly string[] Flow =
        ["Artwork", "Reading", "Copper", "Nets", "CrossCheck", "PowerPath", "Converter", "Brief", "Meshing", "Electrical", "Circuit", "Thermal", "Capacity", "Judging"];

    [Fact]
    public void RoomsUseOnlyRoomsBeforeThem()
    {
        List<string> offences = [];
        string source = Path.Combine(SharedData.ProjectRoot, "src", "CopperPath.Core");
        foreach (string file in Directory.EnumerateFiles(source, "*.cs", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
        {
            string room = Path.GetRelativePath(source, file).Split(Path.DirectorySeparatorChar)[0];
            if (room.EndsWith(".cs", StringComparison.Ordinal))
            {
                continue;
            }

            foreach (Match match in RoomUse().Matches(File.ReadAllText(file)))
            {
                string used = match.Groups[1].Value;
                if (used != room && !Foundations.Contains(used) && !IsBefore(used, room))
                {
                    offences.Add($"{room} uses {used} in {Path.GetFileName(file)}");
                }
            }
        }

        offences.ShouldBeEmpty();
    }

    [Fact]
    public void EveryRoomHasAPlaceInTheFlow()
    {
        string source = Path.Combine(SharedData.ProjectRoot, "src", "CopperPath.Core");
        foreach (string room in Directory.EnumerateDirectories(source).Select(Path.GetFileName).OfType<string>()
            .Where(room => room is not ("bin" or "obj")))
        {
            Foundations.Concat(Flow).ShouldContain(room);
        }
    }

    private static bool IsBefore(string used, string room) =>
        Array.IndexOf(Flow, used) is >= 0 and int place && place < Array.IndexOf(Flow, room);

    [GeneratedRegex(@"^using (?:static )?CopperPath\.(\w+)", RegexOptions.Multiline)]
    private static partial Regex RoomUse();
}
