namespace CopperPath.Electrical;

/// <summary>At which potentials a stretch is cut; a count of levels, not time, bounds the work.</summary>
internal static class LevelChoice
{
    /// <summary>Levels at equal steps of potential (most where it falls most), and at equal numbers of vertices (most where meshes are fine).</summary>
    private const int EvenLevels = 128, RankedLevels = 128;

    /// <summary>The rims that are passed most densely, and the densest cuts of single layers, have levels of their own.</summary>
    private const int RimLevels = 48, SectionLevels = 48;

    /// <summary>A line this share of the whole drop off a rim lies on the rim.</summary>
    private const double BesideRim = 1e-6;

    /// <summary>Sections nearer than this share of the drop to one before them show the same.</summary>
    private const double NextSection = 1e-3;

    /// <returns>Potentials, rising, each once.</returns>
    public static double[] Of(ConductionResult result, EquipotentialRims rims, IReadOnlyList<Section> sections)
    {
        double[] potentialsV = [.. result.Sheets.SelectMany(sheet => sheet.PotentialV).Where(double.IsFinite)];
        Array.Sort(potentialsV);
        double dropV = potentialsV.Length == 0 ? 0 : potentialsV[^1] - potentialsV[0];
        if (!(dropV > 0))
        {
            return [];
        }

        List<double> levelsV = [];
        for (int k = 0; k < EvenLevels; k++)
        {
            levelsV.Add(potentialsV[0] + (dropV * (k + 0.5) / EvenLevels));
        }

        for (int k = 0; k < RankedLevels; k++)
        {
            levelsV.Add(potentialsV[(int)((k + 0.5) / RankedLevels * potentialsV.Length)]);
        }

        levelsV.AddRange(rims.Densest.Take(RimLevels).Select(rim => rim.PotentialV - (Math.Sign(rim.OutA) * BesideRim * dropV)));
        levelsV.AddRange(OfSections(result, sections, NextSection * dropV));
        return [.. levelsV.Where(levelV => levelV > potentialsV[0] && levelV < potentialsV[^1]).Distinct().Order()];
    }

    private static List<double> OfSections(ConductionResult result, IReadOnlyList<Section> sections, double apartV)
    {
        List<double> levelsV = [];
        foreach (Section section in sections.Where(section => section.WidthM > 0).OrderByDescending(section => section.CurrentA / section.WidthM))
        {
            SheetField sheet = result.Sheets.First(sheet => sheet.Layer == section.Layer);
            double levelV = sheet.PotentialAt(section.Triangle, section.AtXM, section.AtYM);
            if (!levelsV.Exists(known => Math.Abs(known - levelV) < apartV))
            {
                levelsV.Add(levelV);
                if (levelsV.Count == SectionLevels)
                {
                    break;
                }
            }
        }

        return levelsV;
    }
}
