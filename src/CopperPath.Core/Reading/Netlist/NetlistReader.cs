using System.Text;

namespace CopperPath.Reading.Netlist;

/// <summary>
/// Reads IPC-D-356A netlists: records of 80 columns, one to a line.
/// <code>
/// P  UNITS CUST 0
/// P  NNAME1  A_LONG_NET_NAME
/// 317NET1             U1    -1    D0300PA00X+012000Y+005500X0600Y0600R000 S0
/// 327NET1             U2    -14        A01X+022000Y-005500X0600Y0200R000 S0
/// 999
/// </code>
/// A damaged record is dropped with a warning: names are lost with it, never copper.
/// </summary>
public static class NetlistReader
{
    /// <summary>Reads one file. Never throws.</summary>
    public static NetlistReading Read(string file, ReadOnlyMemory<byte> bytes)
    {
        NetlistParser parser = new(file);
        if (bytes.Length == 0 || bytes.Span.Contains((byte)0))
        {
            parser.Reject(NetlistCode.NotText, 0, bytes.Length == 0 ? "an empty file" : "bytes that are not text", "a netlist in plain text");
        }
        else
        {
            parser.Run(Encoding.UTF8.GetString(bytes.Span));
        }

        return parser.ToReading();
    }
}
