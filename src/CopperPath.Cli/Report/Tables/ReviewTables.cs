using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Tables;

/// <summary>The numbers of a review as tables for a spreadsheet.</summary>
internal static class ReviewTables
{
    public static IReadOnlyList<OutputFile> Of(Review review, IReadOnlyList<Stretch> stretches)
    {
        ConductorRating rating = ConductorRating.Shown(review.Brief!.Limits.JudgeBy, review.Stack!);
        Stretch[] solved = [.. stretches.Where(stretch => stretch.IsSolved)];
        return
        [
            new OutputFile("nets.csv", Nets(solved).ToBytes()),
            new OutputFile("terminals.csv", Terminals(solved).ToBytes()),
            new OutputFile("plated-holes.csv", PlatedHoles(solved, rating).ToBytes()),
            new OutputFile("sections.csv", Sections(solved).ToBytes()),
            new OutputFile("findings.csv", Findings(review.Findings).ToBytes()),
            .. LoadProfileTable.Of(review),
        ];
    }

    private static CsvTable Nets(Stretch[] stretches)
    {
        CsvTable table = new("name", "net", "current_A", "resistance_ohm", "drop_V", "drop_least_V", "drop_greatest_V",
            "loss_W", "loss_least_W", "loss_greatest_W", "hottest_section_K", "hottest_hole_K", "area_m2");
        foreach (Stretch stretch in stretches)
        {
            ConductionResult result = stretch.Conduction;
            table.Add(
                stretch.Name, stretch.Solved.Bound.Net.Name, stretch.EnteringA,
                result.ResistanceOhm, result.DropV, result.DropBoundsV.Least, result.DropBoundsV.Greatest,
                result.LossW, result.LossBoundsW.Least, result.LossBoundsW.Greatest,
                stretch.SectionRiseK, stretch.HoleRiseK, stretch.Solved.Bound.Net.AreaM2);
        }

        return table;
    }

    private static CsvTable Terminals(Stretch[] stretches)
    {
        CsvTable table = new("name", "terminal", "contact", "current_A", "terminal_potential_V", "accuracy_A");
        foreach (Stretch stretch in stretches)
        {
            foreach (TerminalResult result in stretch.Conduction.Terminals)
            {
                for (int c = 0; c < result.ContactCurrentsA.Count; c++)
                {
                    table.Add(stretch.Name, result.Terminal.Name, result.Terminal.Contacts[c].Name,
                        result.ContactCurrentsA[c], result.PotentialV, result.ContactAccuracyA[c]);
                }
            }
        }

        return table;
    }

    private static CsvTable PlatedHoles(Stretch[] stretches, ConductorRating rating)
    {
        CsvTable table = new("name", "x_m", "y_m", "diameter_m", "upper_layer", "lower_layer", "current_A", "resistance_ohm", "rise_K", "accuracy_A");
        foreach (Stretch stretch in stretches)
        {
            foreach (BarrelCurrent barrel in stretch.Conduction.Barrels)
            {
                table.Add(stretch.Name, Units.MetresFromNm(barrel.Barrel.Centre.X), Units.MetresFromNm(barrel.Barrel.Centre.Y),
                    Units.MetresFromNm(barrel.Barrel.Feature.ToolDiameterNm), barrel.UpperLayer, barrel.LowerLayer,
                    barrel.CurrentA, barrel.ResistanceOhm, rating.BarrelRiseK(barrel), barrel.AccuracyA);
            }
        }

        return table;
    }

    private static CsvTable Sections(Stretch[] stretches)
    {
        CsvTable table = new("name", "layer", "x_m", "y_m", "width_m", "current_A", "peak_A_per_m", "rise_K");
        foreach (Stretch stretch in stretches)
        {
            foreach ((Section section, double riseK) in stretch.HottestSections)
            {
                table.Add(stretch.Name, section.Layer, section.AtXM, section.AtYM, section.WidthM, section.CurrentA,
                    section.PeakSheetCurrentAPerM, riseK);
            }
        }

        return table;
    }

    private static CsvTable Findings(IReadOnlyList<Finding> findings)
    {
        CsvTable table = new("rule", "level", "subject", "layer", "x_m", "y_m", "quantity", "unit", "value", "worst", "limit", "sentence", "advice", "waived_by", "waived_because");
        foreach (Finding finding in findings)
        {
            table.Add(finding.Rule, finding.Level.Word(), finding.Subject, finding.Layer, finding.XM, finding.YM,
                finding.Measure?.Name, finding.Measure?.Unit, finding.Measure?.Value, finding.Measure?.Worst, finding.Measure?.Limit,
                finding.Sentence, finding.Advice, finding.Waiver?.By, finding.Waiver?.Reason);
        }

        return table;
    }
}
