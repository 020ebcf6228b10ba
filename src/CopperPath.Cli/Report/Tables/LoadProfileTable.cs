using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report.Tables;

/// <summary>Rises over the load profile: what each stretch adds to its own copper, and the hottest place of the board.</summary>
internal static class LoadProfileTable
{
    public const string FileName = LoadProfileFiles.Name + ".csv";

    /// <summary>The table, where there is a profile that was solved.</summary>
    public static IReadOnlyList<OutputFile> Of(Review review)
    {
        if (review.InTime is not { Failure: null } heat)
        {
            return [];
        }

        CsvTable table = new("name", "rise", "time_s", "rise_K");
        Add("", "hottest place of the board, all heat", heat.TimesS, heat.HottestK);
        foreach ((SolvedNet net, StretchInTime inTime) in LoadText.Stretches(review, heat))
        {
            Add(net.Bound.Review.Name, "hottest copper, own current", inTime.TimesS, inTime.RiseK);
        }

        return [new OutputFile(FileName, table.ToBytes())];

        void Add(string name, string what, IReadOnlyList<double> timesS, IReadOnlyList<double> risesK)
        {
            for (int k = 0; k < timesS.Count; k++)
            {
                table.Add(name, what, timesS[k], risesK[k]);
            }
        }
    }
}
