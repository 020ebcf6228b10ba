using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Judging;

/// <summary>Every state has a word of its own, in plain letters; none is the name it has in the program.</summary>
public sealed class JudgingWordsTests
{
    [Fact]
    public void EveryStateHasItsWord()
    {
        Check<FindingLevel>(level => level.Word());
        Check<Verdict>(verdict => verdict.Word());
        Check<ConductionStatus>(status => status.Word());
        Check<ThermalStatus>(status => status.Word());

        static void Check<T>(Func<T, string> word)
            where T : struct, Enum
        {
            string[] words = [.. Enum.GetValues<T>().Select(word)];
            words.ShouldBeUnique();
            words.ShouldAllBe(text => text.All(letter => letter == ' ' || char.IsAsciiLetterLower(letter)));
        }
    }
}
