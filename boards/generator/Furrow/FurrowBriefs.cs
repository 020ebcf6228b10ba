using CopperPath.DemoBoards.Kit;
using CopperPath.DemoBoards.Writing;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>The briefs beside the card's folders: by name for the files with attributes, by place for those without.</summary>
public static class FurrowBriefs
{
    private const string LoadByName = "component: U1";

    /// <summary>A box round the load's balls.</summary>
    private const string LoadByPlace = "rectangle: { layer: top, from: [58.5 mm, 27.5 mm], to: [91.5 mm, 60.5 mm] }";

    public static void Write(Board board, BoardTitle title, string folder)
    {
        var revision = $"revision-{title.Revision.ToLowerInvariant()}";
        var nets = FurrowReview.Nets();
        Folders.Save(folder, $"{revision}.yaml", BriefFile.Write(board, title, $"{revision}/x2", nets, FurrowReview.Conditions(LoadByName), byName: true, []));
        string[] answers =
        [
            "layers:",
            $"  - {{ file: {title.ShortStem}.g2, role: copper, number: 2 }}",
            $"  - {{ file: {title.ShortStem}.g3, role: copper, number: 3 }}",
            $"  - {{ file: {title.ShortStem}.txt, role: drill mixed }}",
        ];
        Folders.Save(folder, $"{revision}-bare.yaml", BriefFile.Write(board, title, $"{revision}/bare", nets, FurrowReview.Conditions(LoadByPlace), byName: false, answers));
    }
}
