using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Judging;

/// <summary>A waiver holds for the files it was given for, and says so where it does not.</summary>
public sealed class WaiverTests
{
    private const string Own = "0123456789abcdef";

    [Theory]
    [InlineData(Own, true, null)]
    [InlineData("0123456789ABCDEF", true, null)]
    [InlineData("fedcba9876543210", false, "JDG004")]
    [InlineData(null, false, "JDG003")]
    public void IsAppliedToItsOwnFilesOnly(string? fingerprint, bool isApplied, string? code)
    {
        Finding neck = Beyond("neck", "Feed");
        (IReadOnlyList<Finding> findings, IReadOnlyList<Diagnostic> remarks) = Waivers.Apply([neck], [Given(fingerprint)], Own);

        findings[0].Counts.ShouldBe(!isApplied);
        findings[0].IsWaived.ShouldBe(isApplied);
        Judge.VerdictOf(findings, false).ShouldBe(isApplied ? Verdict.WithinLimits : Verdict.BeyondLimits);
        remarks.Select(remark => remark.Code).ShouldBe(code is null ? [] : [code]);
        remarks.ShouldAllBe(remark => remark.Position.Line == 7 && remark.Expected.Contains($"fingerprint: '{Own}'", StringComparison.Ordinal));
    }

    [Fact]
    public void AFingerprintChangesWithEveryNameAndByteAndNotWithTheOrder()
    {
        (string, ReadOnlyMemory<byte>) top = ("top.gbr", new byte[] { 1, 2, 3 });
        (string, ReadOnlyMemory<byte>) holes = ("holes.drl", new byte[] { 4 });
        string both = Fingerprint.Of([top, holes]);

        both.ShouldMatch("^[0-9a-f]{16}$");
        Fingerprint.Of([holes, top]).ShouldBe(both);
        Fingerprint.Of([top]).ShouldNotBe(both);
        Fingerprint.Of([top, ("holes.drl", new byte[] { 5 })]).ShouldNotBe(both);
        Fingerprint.Of([top, ("hole.drl", new byte[] { 4 })]).ShouldNotBe(both);
        Fingerprint.Of([("a", new byte[] { (byte)'b', (byte)'c' })]).ShouldNotBe(Fingerprint.Of([("ab", new byte[] { (byte)'c' })]));
    }

    private static Waiver Given(string? fingerprint) =>
        new("neck", "Feed", null, "short pulses only", "lead engineer", fingerprint, new SourcePosition("b.yaml", 7, 3));

    private static Finding Beyond(string rule, string subject) =>
        new(rule, FindingLevel.BeyondLimit, subject, 1, 0, 0, null, "It is narrow.", "Widen it.", "none");
}
