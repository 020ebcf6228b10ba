using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.Electrical;

/// <summary>An area on a layer that a part touches.</summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="Outline">Counter-clockwise ring in nanometres; what lies on the net's copper counts.</param>
public sealed record ContactArea(int Layer, PointNm[] Outline);

/// <summary>One contact of a terminal: everything in it is at one potential.</summary>
/// <param name="Name">How findings call it, e.g. <c>J1.2</c>.</param>
/// <param name="Areas">Areas on layers.</param>
/// <param name="Barrels">Plated holes a pin is soldered into, held at the contact's potential on every layer.</param>
public sealed record Contact(string Name, IReadOnlyList<ContactArea> Areas, IReadOnlyList<Barrel> Barrels);

/// <summary>Where current enters or leaves a net.</summary>
/// <param name="Name">Name from the brief.</param>
/// <param name="Contacts">Its contacts, at least one.</param>
/// <param name="IsJoined">
/// True: the part bonds all contacts to one potential and they share the current as the copper asks.
/// False: the current divides into equal parts among the contacts.
/// </param>
/// <param name="CurrentA">Current into the net, amperes; negative where it leaves.</param>
public sealed record BoundTerminal(string Name, IReadOnlyList<Contact> Contacts, bool IsJoined, double CurrentA);
