namespace CopperPath.Cli.Tests;

/// <summary>Faults in words: one cause, the same one whatever the thread count.</summary>
public sealed class FaultTests
{
    [Fact]
    public void TooLittleMemoryIsFoundHoweverDeepItLies() => Fault.LineOf(new AggregateException(
        new InvalidOperationException("x"), new AggregateException(new TypeInitializationException("T", new InsufficientMemoryException()))))
        .ShouldBe("CopperPath: error RUN002: found too little memory for this board; expected more of it; the run was given up");

    [Fact]
    public void OfSeveralCausesTheFirstByItsWordsIsNamed()
    {
        (Exception one, Exception other) = (new InvalidOperationException("b"), new InvalidOperationException("a"));

        Fault.WordsOf(new AggregateException(one, other)).ShouldBe("InvalidOperationException: a");
        Fault.WordsOf(new AggregateException(other, one)).ShouldBe("InvalidOperationException: a");
    }

    [Fact]
    public void CalledOffIsNoFault()
    {
        Fault.IsCancellation(new AggregateException(new OperationCanceledException())).ShouldBeTrue();
        Fault.IsCancellation(new AggregateException()).ShouldBeFalse();
    }
}
