namespace CopperPath.Cli.Tests.Report;

/// <summary>Oracle: the framework's own sort.</summary>
public sealed class OrderStatisticTests
{
    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 1)]
    [InlineData(1000, 1)]
    [InlineData(1000, 7)]
    [InlineData(1000, 1_000_000)]
    public void TheValueOfARankIsWhereSortingPutsIt(int count, int differentValues)
    {
        Random random = new(count + differentValues);
        int[] values = [.. Enumerable.Range(0, count).Select(_ => random.Next(differentValues))];
        int[] sorted = [.. values.Order()];

        for (int rank = 0; rank < count; rank += Math.Max(1, count / 50))
        {
            OrderStatistic.At<int>([.. values], rank).ShouldBe(sorted[rank]);
        }

        OrderStatistic.At<int>([.. values], count - 1).ShouldBe(sorted[^1]);
        OrderStatistic.At<int>([.. sorted], count / 2).ShouldBe(sorted[count / 2]);
        OrderStatistic.At<int>([.. sorted.Reverse()], count / 2).ShouldBe(sorted[count / 2]);
    }
}
