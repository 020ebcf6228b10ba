using System.Globalization;
using System.Text;

namespace CopperPath.Core.Tests.Gallery;

/// <summary>An IPC-D-356A netlist in micrometres, its records aligned to the columns of the format digest.</summary>
public sealed class NetlistText
{
    private readonly StringBuilder _text = new("P  UNITS SI\n");

    /// <summary>A plated through hole, reached from both sides.</summary>
    public NetlistText Hole(string net, double xMm, double yMm, int diameterUm, char plated = 'P', string pin = "") =>
        Record("317", net, pin, string.Create(CultureInfo.InvariantCulture, $"D{diameterUm:0000}{plated}"), 0, xMm, yMm);

    /// <summary>A surface pad on a layer; layer 0 means both sides.</summary>
    public NetlistText Pad(string net, int layer, double xMm, double yMm, string pin = "") =>
        Record("327", net, pin, "", layer, xMm, yMm);

    public void WriteTo(string folder, string name = "board.ipc") =>
        File.WriteAllText(Path.Combine(folder, name), _text + "999\n");

    private NetlistText Record(string kind, string net, string pin, string hole, int layer, double xMm, double yMm)
    {
        string[] reference = [.. pin.Split('.'), ""];
        string component = reference[0].Length == 0 ? new string(' ', 11) : $"{reference[0],-6}-{reference[1],-4}";
        _text.Append(CultureInfo.InvariantCulture,
            $"{kind}{net,-14}   {component} {hole,-6}A{layer:00}X{Signed(xMm)}Y{Signed(yMm)}X0000Y0000R000 S0\n");
        return this;
    }

    private static string Signed(double mm) => ((int)Math.Round(mm * 1000)).ToString("+000000;-000000", CultureInfo.InvariantCulture);
}
