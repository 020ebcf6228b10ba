using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Brief;

/// <summary>A finding that a named person accepts, with the reason.</summary>
/// <param name="Rule">Identifier of the rule.</param>
/// <param name="Net">Name of the stretch (or converter) the finding is about.</param>
/// <param name="Near">Place the finding is near to, or null for any.</param>
/// <param name="Reason">Why it is accepted.</param>
/// <param name="By">Who accepts it.</param>
/// <param name="Fingerprint">Of the board's files it was given for ; null where the brief does not say.</param>
/// <param name="Position">Where the brief says so.</param>
public sealed record Waiver(string Rule, string Net, PointNm? Near, string Reason, string By, string? Fingerprint, SourcePosition Position);
