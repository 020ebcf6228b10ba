namespace CopperPath.Brief;

/// <summary>Performance class of a rigid board after IPC-6012.</summary>
public enum BoardClass
{
    Class1,
    Class2,
    Class3,
}
