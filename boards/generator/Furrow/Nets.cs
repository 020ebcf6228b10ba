namespace CopperPath.DemoBoards.Furrow;

/// <summary>Net names of the Furrow compute card.</summary>
public static class Nets
{
    public const string SupplyIn = "12V_IN";
    public const string SupplyFused = "12V_FUSED";
    public const string Supply = "12V";
    public const string ReturnIn = "GND_IN";
    public const string Ground = "GND";
    public const string Core = "VCORE";
    public const string FiveVolt = "5V";
    public const string FiveVoltSwitch = "SW5";

    public static string Switch(int phase) => $"SW{phase}";

    public static string HighGate(int phase) => $"GH{phase}";

    public static string LowGate(int phase) => $"GL{phase}";
}
