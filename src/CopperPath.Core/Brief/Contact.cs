using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Brief;

/// <summary>A place where a terminal touches the copper of its net.</summary>
/// <param name="Position">Where the brief says so.</param>
public abstract record Contact(SourcePosition Position);

/// <summary>The pads of one pin, found by the pin attributes in the files.</summary>
public sealed record PinContact(string Component, string Pin, SourcePosition Position) : Contact(Position);

/// <summary>All pads of a component on this net, found by the pin attributes in the files.</summary>
public sealed record ComponentContact(string Component, SourcePosition Position) : Contact(Position);

/// <summary>The pad flashed at a point of a layer.</summary>
public sealed record PadContact(LayerReference Layer, PointNm At, SourcePosition Position) : Contact(Position);

/// <summary>Every pad of the net flashed inside a box on a layer.</summary>
public sealed record PadsInContact(LayerReference Layer, BoxNm Box, SourcePosition Position) : Contact(Position);

/// <summary>The barrel of the plated hole at a point.</summary>
public sealed record HoleContact(PointNm At, SourcePosition Position) : Contact(Position);

/// <summary>The copper inside a box on a layer.</summary>
public sealed record RectangleContact(LayerReference Layer, BoxNm Box, SourcePosition Position) : Contact(Position);

/// <summary>The copper inside a circle on a layer.</summary>
public sealed record CircleContact(LayerReference Layer, PointNm Centre, long DiameterNm, SourcePosition Position)
    : Contact(Position);
