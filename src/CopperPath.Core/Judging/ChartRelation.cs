namespace CopperPath.Judging;

/// <summary>A published relation between current, section and rise of one long isolated conductor in still air.</summary>
public enum ChartRelation
{
    /// <summary>The fit in the style of IPC-2152.</summary>
    Ipc2152,

    /// <summary>The relation of IPC-2221.</summary>
    Ipc2221,
}
