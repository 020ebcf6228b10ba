using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Quantities;
using CopperPath.Reading.BoardFiles;

namespace CopperPath.CrossCheck;

/// <summary>What the job file says of the set, against the set.</summary>
internal static class JobFileAgreement
{
    /// <summary>Job files round the size, and some count the pen of the outline.</summary>
    private const double AllowedM = 0.5e-3;

    public static IEnumerable<Diagnostic> Run(FabricationSet set)
    {
        if (set.Identified.Job is not { } job)
        {
            yield break;
        }

        string file = set.Identified.OfRole(FileRole.JobFile).Select(found => found.File.Name).FirstOrDefault(set.Path);
        int? stated = job.CopperLayerCount ?? (job.CopperLayers.Any() ? job.CopperLayers.Count() : null);
        if (stated is { } layers && layers != set.Layers.Count)
        {
            yield return SetRemark.Doubt(SetCode.JobLayers, file,
                $"{Counted.Of(layers, "copper layer")} stated, and files of {set.Layers.Count}", "one file for each layer of the job file");
        }

        BoxNm board = BoxNm.Around(set.Profile.Select(piece => piece.Bounds));
        if (!board.IsEmpty && job is { WidthM: { } widthM, HeightM: { } heightM }
            && (IsOff(widthM, board.WidthNm) || IsOff(heightM, board.HeightNm)))
        {
            yield return SetRemark.Doubt(SetCode.JobSize, file,
                $"a board of {1000 * widthM:0.##} by {1000 * heightM:0.##} mm stated, and an outline of {board.WidthNm / 1e6:0.##} by {board.HeightNm / 1e6:0.##} mm",
                "one size: the outline may be in another unit, or be cut short");
        }
    }

    private static bool IsOff(double statedM, long foundNm) => Math.Abs(statedM - Units.MetresFromNm(foundNm)) > AllowedM;
}
