namespace CopperPath.Electrical;

/// <summary>What the ends of a solve are called in machine output.</summary>
public static class ConductionStatusWords
{
    public static string Word(this ConductionStatus status) => status switch
    {
        ConductionStatus.Solved => "solved",
        ConductionStatus.NotConnected => "not connected",
        ConductionStatus.ContactOffCopper => "contact off copper",
        ConductionStatus.ContactsTouch => "contacts touch",
        ConductionStatus.MeshFailed => "not meshed",
        ConductionStatus.SolverFailed => "not solved",
        ConductionStatus.CurrentsUnbalanced => "currents unbalanced",
        ConductionStatus.BooksDoNotBalance => "books do not balance",
        ConductionStatus.AccuracyNotReached => "accuracy not reached",
        _ => throw new ArgumentOutOfRangeException(nameof(status)),
    };
}
