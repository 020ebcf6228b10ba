using CopperPath.Converter;
using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>A converter of the brief.</summary>
/// <param name="Facts">What is known about it.</param>
/// <param name="Position">Where the brief describes it.</param>
public sealed record ConverterSection(ConverterFacts Facts, SourcePosition Position);
