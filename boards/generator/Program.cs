using CopperPath.DemoBoards.Furrow;
using CopperPath.DemoBoards.Kit;
using CopperPath.DemoBoards.Writing;

var boards = args.Length > 0 ? args[0] : "boards";
foreach (var revision in new[] { "A", "B" })
{
    var filled = FurrowCard.Draw(hasFaults: revision == "A");
    var wrong = RuleCheck.Find(filled);
    if (wrong.Count > 0)
    {
        foreach (var line in wrong)
        {
            Console.Error.WriteLine($"revision {revision}: {line}");
        }

        return 1;
    }

    var folder = Path.Combine(boards, "furrow-compute", $"revision-{revision.ToLowerInvariant()}");
    var title = FurrowTitle.Of(revision);
    Folders.WriteExtended2(filled, title, Path.Combine(folder, "x2"));
    Folders.WriteBare(filled, title, Path.Combine(folder, "bare"));
    FurrowBriefs.Write(filled.Board, title, Path.Combine(boards, "furrow-compute"));
}

Folders.Save(
    Path.Combine(boards, "furrow-compute"),
    "planted-faults.json",
    FaultsFile.Write(FurrowTitle.Of("A").Name, "A", PlantedFaults.List()));

return 0;
