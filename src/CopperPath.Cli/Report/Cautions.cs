namespace CopperPath.Cli.Report;

/// <summary>What must be said wherever current and heat can hurt.</summary>
public static class Cautions
{
    public static void Write(TextWriter writer)
    {
        foreach (string line in Text.Split('\n'))
        {
            writer.WriteLine(line);
        }
    }

    public const string Text =
        "Caution: these are estimates, not a certification. High-current supplies can start fires and burn skin even at low\n"
        + "voltage: limit the current, fuse it, and stay with it while testing. Capacitor banks stay charged: discharge and\n"
        + "measure first. Mains work belongs to qualified people. Follow local codes and confirm critical results by measurement.";
}
