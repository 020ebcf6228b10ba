using System.Globalization;

namespace CopperPath.Core.Tests.Copper;

/// <summary>A row of <c>oracle-areas.csv</c>: a copper layer of a real board as NetTopologySuite painted it, once.</summary>
/// <param name="Board">Folder of the board.</param>
/// <param name="File">File of the layer.</param>
/// <param name="Objects">Drawn objects.</param>
/// <param name="Vertices">Corners of all their outlines.</param>
/// <param name="Runs">Runs of objects of one polarity.</param>
/// <param name="NotSimple">Objects of which the library was given the faces that their outlines wind around.</param>
/// <param name="AreaNm2">Copper, square nanometres.</param>
/// <param name="Pieces">Polygons the copper came in.</param>
internal sealed record OracleArea(
    string Board, string File, int Objects, int Vertices, int Runs, int NotSimple, double AreaNm2, int Pieces)
{
    private static readonly string s_path = Path.Combine(
        SharedData.ProjectRoot, "tests", "CopperPath.Core.Tests", "Copper", "oracle-areas.csv");

    /// <summary>All rows, by board and layer.</summary>
    public static IReadOnlyList<OracleArea> All { get; } = [.. System.IO.File.ReadLines(s_path)
        .Where(line => !line.StartsWith('#')).Skip(1).Select(line => Of(line.Split(';')))];

    private static OracleArea Of(string[] fields) => new(
        fields[0], fields[1], Number(fields[2]), Number(fields[3]), Number(fields[4]), Number(fields[5]),
        double.Parse(fields[6], CultureInfo.InvariantCulture), Number(fields[7]));

    private static int Number(string field) => int.Parse(field, CultureInfo.InvariantCulture);
}
