using CopperPath.DemoBoards.Furrow;
using CopperPath.DemoBoards.Kit;
using CopperPath.DemoBoards.Writing;

namespace CopperPath.Core.Tests.DemoBoard;

/// <summary>What lies in <c>boards/furrow-compute</c> is what the program that draws the boards writes, byte for byte.</summary>
public sealed class GeneratorTests
{
    private static readonly string _board = Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute");

    [Fact]
    public void BriefsAndListOfFaultsAreReproduced() => ShouldReproduce(folder =>
    {
        foreach (string revision in new[] { "A", "B" })
        {
            FurrowBriefs.Write(FurrowCard.Lay(hasFaults: revision == "A"), FurrowTitle.Of(revision), folder);
        }

        Folders.Save(folder, "planted-faults.json", FaultsFile.Write(FurrowTitle.Of("A").Name, "A", PlantedFaults.List()));
    }, 5);

    [Fact]
    [Trait("Category", "Soak")]
    public void FabricationFilesAreReproduced()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is "1", "a soak; set COPPERPATH_SOAK=1");
        ShouldReproduce(folder =>
        {
            foreach (string revision in new[] { "A", "B" })
            {
                FilledBoard filled = FurrowCard.Draw(hasFaults: revision == "A");
                RuleCheck.Find(filled).ShouldBeEmpty();
                string own = Path.Combine(folder, $"revision-{revision.ToLowerInvariant()}");
                Folders.WriteExtended2(filled, FurrowTitle.Of(revision), Path.Combine(own, "x2"));
                Folders.WriteBare(filled, FurrowTitle.Of(revision), Path.Combine(own, "bare"));
            }
        }, 52);
    }

    /// <param name="write">Writes into a folder.</param>
    /// <param name="least">Files it writes at least.</param>
    private static void ShouldReproduce(Action<string> write, int least)
    {
        string folder = Directory.CreateTempSubdirectory("copperpath-generator-").FullName;
        try
        {
            write(folder);
            string[] written = Directory.GetFiles(folder, "*", SearchOption.AllDirectories);
            written.Length.ShouldBeGreaterThanOrEqualTo(least);
            foreach (string file in written)
            {
                string name = Path.GetRelativePath(folder, file);
                File.ReadAllBytes(file).AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(_board, name))).ShouldBeTrue(name);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
