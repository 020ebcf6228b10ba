using System.Globalization;
using CopperPath.Benchmarks;

const string Usage = """
    Measures the polygon engine. Commands:
      race BOARDS [LAYERS [TURNS]]    against NetTopologySuite on the largest layers of real boards
      alone BOARDS [LAYERS [TURNS]]   the same without NetTopologySuite, to compare two builds
      growth BOARD [TURNS]            from 1 to 16 copies of a board side by side
      memory BOARDS [LAYERS]          most live memory while the largest layers are painted
      boards BOARDS NAME...           copper and nets of whole boards
      fingerprints BOARDS             pieces, areas and a hash of the copper of all layers, to compare two builds
      areas BOARDS                    areas of all layers by NetTopologySuite, as the tests keep them (slow)
    BOARDS is a folder with a folder for each board, BOARD the fabrication files of one.
    """;

switch (args)
{
    case ["race", string boards, ..]:
        Race.Run(boards, Number(2, 3), Number(3, 3));
        return 0;
    case ["alone", string boards, ..]:
        Race.RunAlone(boards, Number(2, 3), Number(3, 9));
        return 0;
    case ["growth", string board, ..]:
        Growth.Run(board, Number(2, 9));
        return 0;
    case ["memory", string boards, ..]:
        PeakMemory.Run(boards, Number(2, 3));
        return 0;
    case ["boards", string boards, .. string[] names]:
        Rebuilding.Run(boards, names, turns: 5);
        return 0;
    case ["fingerprints", string boards]:
        Fingerprints.Run(boards);
        return 0;
    case ["areas", string boards]:
        OracleAreas.Run(boards);
        return 0;
    default:
        Console.Error.WriteLine(Usage);
        return 2;
}

int Number(int place, int otherwise) =>
    args.Length > place ? int.Parse(args[place], CultureInfo.InvariantCulture) : otherwise;
