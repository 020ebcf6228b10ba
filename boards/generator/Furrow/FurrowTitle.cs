using CopperPath.DemoBoards.Writing;

namespace CopperPath.DemoBoards.Furrow;

/// <summary>What the Furrow compute card is called, and its build-up.</summary>
public static class FurrowTitle
{
    public static BoardTitle Of(string revision) => new(
        "Furrow compute card",
        revision,
        "46757272-6f77-4063-8f6d-707574650001",
        "furrow-compute",
        "furrow",
        [0.07, 0.035, 0.035, 0.07],
        [0.2, 1.0, 0.2]);
}
