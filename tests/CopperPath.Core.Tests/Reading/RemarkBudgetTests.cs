using System.Text;
using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Core.Tests.Reading;

/// <summary>A run says a bounded number of things, and nothing that matters to the verdict is lost.</summary>
public sealed class RemarkBudgetTests
{
    [Fact]
    public void WhatFitsStaysAsItIs()
    {
        Diagnostic[] remarks = [.. Enumerable.Range(0, RemarkBudget.ListedPerKind).Select(i => Remark("GBR001", "a", i))];

        RemarkBudget.Apply(remarks).ShouldBe(remarks);
    }

    [Fact]
    public void MoreOfOneKindAreCountedForEachFile()
    {
        Diagnostic[] remarks = [.. Enumerable.Range(0, 200).Select(i => Remark("GBR001", i % 2 == 0 ? "a" : "b", i)), Remark("GBR002", "a", 1)];

        IReadOnlyList<Diagnostic> said = RemarkBudget.Apply(remarks);

        said.Count.ShouldBe((2 * RemarkBudget.ListedPerKind) + 1 + 2);
        said[^2].ToString().ShouldBe("a: note MSG001: found 50 more remarks GBR001 than are listed; expected the same correction as for those listed");
        said[^1].Position.File.ShouldBe("b");
    }

    [Fact]
    public void TheWholeIsBoundedHoweverManyKindsThereAre()
    {
        Diagnostic[] remarks = [.. Enumerable.Range(0, 100_000).Select(i => Remark("GBR001", $"file {i}", i))];

        IReadOnlyList<Diagnostic> said = RemarkBudget.Apply(remarks);

        said.Count.ShouldBe(RemarkBudget.ListedInAll + 1);
        said[^1].Found.ShouldBe("99000 more remarks than are listed");
    }

    [Fact]
    public void WhatIsLeftOutStillKeepsARunFromPassing()
    {
        Diagnostic grave = Remark("GBR001", "a", 1) with { Severity = Severity.Error, AffectsCopper = true };
        Diagnostic[] remarks = [.. Enumerable.Range(0, 60).Select(i => Remark("GBR001", "a", i)), grave];

        Diagnostic more = RemarkBudget.Apply(remarks)[^1];

        more.AffectsCopper.ShouldBeTrue();
        more.Severity.ShouldBe(Severity.Error);
    }

    [Fact]
    public void LongWordsAreCut() =>
        RemarkBudget.Apply([Remark("GBR001", "a", 1) with { Found = new string('x', 1 << 20) }])[0].Found.Length
            .ShouldBe(RemarkBudget.LongestWords + 3);

    [Fact]
    public void TwentyThousandUnknownKeysAreToldInFiftyLinesAndOne()
    {
        StringBuilder brief = new("copperpath: 1\n");
        for (int i = 0; i < 20_000; i++)
        {
            brief.Append(System.Globalization.CultureInfo.InvariantCulture, $"bord{i}: 1\n");
        }

        IReadOnlyList<Diagnostic> said = BriefReader.Read("brief.yaml", brief.ToString()).Diagnostics;

        said.Count(remark => remark.Code == BriefCodes.UnknownKey).ShouldBe(RemarkBudget.ListedPerKind);
        said[^1].ToString().ShouldBe(
            "brief.yaml: error MSG001: found 19950 more remarks BRF010 than are listed; expected the same correction as for those listed");
    }

    [Fact]
    public void ABriefOfThreeHundredThousandKeysIsRefusedAtOnce()
    {
        StringBuilder brief = new("copperpath: 1\n");
        for (int i = 0; i < 300_000; i++)
        {
            brief.Append(System.Globalization.CultureInfo.InvariantCulture, $"b{i}: 1\n");
        }

        BriefReader.Read("brief.yaml", brief.ToString()).Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "brief.yaml:25000:9: error BRF003: found more than 50000 keys and values; expected a brief of fewer; check that this is one");
    }

    [Fact]
    public void ABoardsJobFileDoesNotFillTheTerminal()
    {
        using SyntheticBoard board = new(1);
        string brief = board.Rectangle(1, 0, 0, 50, 10).WriteBrief("");
        string entries = string.Join(",", Enumerable.Range(0, 20_000).Select(i => $$"""{"Path":"missing{{i}}.gbr","FileFunction":"Copper,L1,Top"}"""));
        File.WriteAllText(Path.Combine(board.Folder, "board.gbrjob"), $$"""{"GeneralSpecs":{},"FilesAttributes":[{{entries}}]}""");
        File.Delete(brief);

        Analysis.Survey(board.Folder).Board.Diagnostics.Count.ShouldBeInRange(RemarkBudget.ListedPerKind, RemarkBudget.ListedPerKind + 10);
    }

    private static Diagnostic Remark(string code, string file, int line) =>
        new(code, Severity.Note, new SourcePosition(file, line, 1), "this", "that");
}
