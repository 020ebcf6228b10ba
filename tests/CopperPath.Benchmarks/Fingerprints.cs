using System.Globalization;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using CopperPath.Geometry;

namespace CopperPath.Benchmarks;

/// <summary>
/// Every copper layer of all real boards in one line: pieces, area and a hash of every corner, so that two builds can be
/// told apart, or not, by comparing texts.
/// </summary>
internal static class Fingerprints
{
    public static void Run(string boards)
    {
        Console.WriteLine("board;file;pieces;corners;area nm2;SHA-256 of the corners");
        foreach (RealLayer layer in RealLayer.Of(boards))
        {
            using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
            int corners = 0;
            foreach (PointNm[] ring in layer.Copper.Islands.SelectMany(island => island.Rings))
            {
                corners += ring.Length;
                hash.AppendData(BitConverter.GetBytes(ring.Length));
                hash.AppendData(MemoryMarshal.AsBytes<PointNm>(ring));
            }

            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{layer.Board};{layer.Copper.File};{layer.Copper.Islands.Count};{corners};{layer.Copper.Islands.Sum(island => island.AreaNm2):R};{Convert.ToHexStringLower(hash.GetHashAndReset())}"));
        }
    }
}
