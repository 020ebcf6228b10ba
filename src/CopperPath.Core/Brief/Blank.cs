using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>
/// A value of the brief that nobody has confirmed: it is worked with, and a review that rests on it can not end in a pass.
/// </summary>
/// <param name="Key">Where it stands, from the top of the brief down, such as <c>stackup: plating</c>.</param>
/// <param name="Guess">What is worked with, as written.</param>
/// <param name="Candidates">What it may as well be, as written; may be empty.</param>
/// <param name="Because">What speaks for the guess, or null.</param>
/// <param name="Position">Where the blank starts.</param>
public sealed record Blank(string Key, string Guess, IReadOnlyList<string> Candidates, string? Because, SourcePosition Position);
