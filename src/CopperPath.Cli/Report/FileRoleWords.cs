using CopperPath.Reading.BoardFiles;

namespace CopperPath.Cli.Report;

/// <summary>What people call the parts that files play; where a brief can give a file its part, in the brief's words.</summary>
internal static class FileRoleWords
{
    public static string Of(IdentifiedFile file) => file.Role switch
    {
        FileRole.Copper => FormattableString.Invariant($"copper {file.CopperLayer}"),
        FileRole.Drill => "drill",
        FileRole.Profile => "profile",
        FileRole.SolderMaskTop => "mask top",
        FileRole.SolderMaskBottom => "mask bottom",
        FileRole.PasteTop => "paste top",
        FileRole.PasteBottom => "paste bottom",
        FileRole.LegendTop => "legend top",
        FileRole.LegendBottom => "legend bottom",
        FileRole.Netlist => "netlist",
        FileRole.JobFile => "job file",
        FileRole.Placement => "placement",
        FileRole.Drawing => "drawing",
        _ => "other",
    };
}
