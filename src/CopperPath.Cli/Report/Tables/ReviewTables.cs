using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Tables;

/// <summary>The numbers of a review as tables for a spreadsheet.</summary>
public static class ReviewTables
{
    /// <summary>Rows of a net in the table of sections: the worst ones, tens of thousands of mild ones left out.</summary>
    private const int SectionsPerNet = 500;

    public static IReadOnlyList<OutputFile> Of(Review review)
    {
        ConductorRating rating = new(review.Brief!.Limits.JudgeBy, review.Stack!);
        SolvedNet[] solved = [.. review.Nets.Where(net => net.Conduction.Status == ConductionStatus.Solved)];
        return
        [
            new OutputFile("nets.csv", Nets(solved, rating).ToBytes()),
            new OutputFile("terminals.csv", Terminals(solved).ToBytes()),
            new OutputFile("plated-holes.csv", PlatedHoles(solved, rating).ToBytes()),
            new OutputFile("sections.csv", Sections(solved, rating).ToBytes()),
            new OutputFile("findings.csv", Findings(review.Findings).ToBytes()),
        ];
    }

    private static CsvTable Nets(SolvedNet[] nets, ConductorRating rating)
    {
        CsvTable table = new("name", "net", "current_A", "resistance_ohm", "drop_V", "drop_least_V", "drop_greatest_V",
            "loss_W", "loss_least_W", "loss_greatest_W", "hottest_section_K", "hottest_hole_K", "area_m2");
        foreach (SolvedNet net in nets)
        {
            ConductionResult result = net.Conduction;
            table.Add(
                net.Bound.Review.Name, net.Bound.Net.Name,
                net.Bound.Terminals.Where(terminal => terminal.CurrentA > 0).Sum(terminal => terminal.CurrentA),
                result.ResistanceOhm, result.DropV, result.DropBoundsV.Least, result.DropBoundsV.Greatest,
                result.LossW, result.LossBoundsW.Least, result.LossBoundsW.Greatest,
                net.Sections.Count == 0 ? null : net.Sections.Max(rating.TraceRiseK),
                result.Barrels.Count == 0 ? null : result.Barrels.Max(rating.BarrelRiseK),
                net.Bound.Net.AreaM2);
        }

        return table;
    }

    private static CsvTable Terminals(SolvedNet[] nets)
    {
        CsvTable table = new("name", "terminal", "contact", "current_A", "terminal_potential_V");
        foreach (SolvedNet net in nets)
        {
            foreach (TerminalResult result in net.Conduction.Terminals)
            {
                for (int c = 0; c < result.ContactCurrentsA.Count; c++)
                {
                    table.Add(net.Bound.Review.Name, result.Terminal.Name, result.Terminal.Contacts[c].Name,
                        result.ContactCurrentsA[c], result.PotentialV);
                }
            }
        }

        return table;
    }

    private static CsvTable PlatedHoles(SolvedNet[] nets, ConductorRating rating)
    {
        CsvTable table = new("name", "x_m", "y_m", "diameter_m", "upper_layer", "lower_layer", "current_A", "resistance_ohm", "rise_K");
        foreach (SolvedNet net in nets)
        {
            foreach (BarrelCurrent barrel in net.Conduction.Barrels)
            {
                table.Add(net.Bound.Review.Name, Units.MetresFromNm(barrel.Barrel.Centre.X), Units.MetresFromNm(barrel.Barrel.Centre.Y),
                    Units.MetresFromNm(barrel.Barrel.Feature.ToolDiameterNm), barrel.UpperLayer, barrel.LowerLayer,
                    barrel.CurrentA, barrel.ResistanceOhm, rating.BarrelRiseK(barrel));
            }
        }

        return table;
    }

    private static CsvTable Sections(SolvedNet[] nets, ConductorRating rating)
    {
        CsvTable table = new("name", "layer", "x_m", "y_m", "width_m", "current_A", "peak_A_per_m", "rise_K");
        foreach (SolvedNet net in nets)
        {
            foreach (Section section in net.Sections.OrderByDescending(rating.TraceRiseK).Take(SectionsPerNet))
            {
                table.Add(net.Bound.Review.Name, section.Layer, section.AtXM, section.AtYM, section.WidthM, section.CurrentA,
                    section.PeakSheetCurrentAPerM, rating.TraceRiseK(section));
            }
        }

        return table;
    }

    private static CsvTable Findings(IReadOnlyList<Finding> findings)
    {
        CsvTable table = new("rule", "level", "subject", "layer", "x_m", "y_m", "quantity", "unit", "value", "limit", "sentence", "advice");
        foreach (Finding finding in findings)
        {
            table.Add(finding.Rule, finding.Level.ToString(), finding.Subject, finding.Layer, finding.XM, finding.YM,
                finding.Measure?.Name, finding.Measure?.Unit, finding.Measure?.Value, finding.Measure?.Limit,
                finding.Sentence, finding.Advice);
        }

        return table;
    }
}
