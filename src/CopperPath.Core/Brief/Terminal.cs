using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>How a terminal's contacts share its current.</summary>
public enum ContactMode
{
    /// <summary>All contacts are at one potential, bonded by the part; the copper decides how they share.</summary>
    Joined,

    /// <summary>The current divides in equal parts among the contacts.</summary>
    Spread,
}

/// <summary>A part or place through which current enters or leaves the copper of a net.</summary>
/// <param name="Name">The reader's name of it, unique within the net.</param>
/// <param name="Contacts">Where it touches the copper; at least one, in the order of the brief.</param>
/// <param name="Mode">How the contacts share the current.</param>
/// <param name="CurrentA">
/// Current entering the copper here, amperes: negative when it leaves. The terminals of a net sum to zero.
/// </param>
/// <param name="TakesRest">True when the current was not stated but balances the others.</param>
/// <param name="Position">Where the brief describes it.</param>
public sealed record Terminal(
    string Name,
    IReadOnlyList<Contact> Contacts,
    ContactMode Mode,
    double CurrentA,
    bool TakesRest,
    SourcePosition Position)
{
    /// <summary>Where the current comes from when it follows from a converter; null when it was stated.</summary>
    public DerivedCurrent? Derived { get; init; }

    /// <summary>What each contact may carry, amperes, positive; null when not stated.</summary>
    public double? ContactRatingA { get; init; }
}
