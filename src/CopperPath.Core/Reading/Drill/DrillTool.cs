using CopperPath.Artwork;
using CopperPath.Quantities;

namespace CopperPath.Reading.Drill;

/// <summary>A tool as the file defines it.</summary>
/// <param name="Number">Tool number, 1 or more.</param>
/// <param name="Diameter">Diameter as written.</param>
/// <param name="Unit">Unit in force at the definition, or null when none was yet declared.</param>
/// <param name="Plating">Plating stated for the holes of the tool.</param>
/// <param name="Function">Drill function attribute, or null.</param>
internal sealed record DrillTool(
    int Number,
    DrillNumber Diameter,
    DrillUnit? Unit,
    Plating Plating,
    string? Function)
{
    /// <summary>Largest tool taken as real: 100 mm.</summary>
    public const long LargestNm = 100 * Units.NmPerMm;
}
