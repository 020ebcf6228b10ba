using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>One value of everything a brief may state a range for.</summary>
/// <param name="CopperM">Finished thickness of each layer, metres.</param>
/// <param name="PlatingM">Copper on hole walls, metres.</param>
/// <param name="AmbientK">Air around the board, kelvin.</param>
/// <param name="FilmScale">Factor on the film coefficients.</param>
/// <param name="CurrentScale">Factor on all currents.</param>
internal sealed record BuildState(
    IReadOnlyList<double> CopperM, double PlatingM, double AmbientK, double FilmScale, double CurrentScale)
{
    public static BuildState Nominal(ReviewBrief brief, Stackup stack) => new(stack.ThicknessM, stack.PlatingM, brief.AmbientK, 1, 1);

    /// <summary>The stack as built so, at the copper's temperature under this ambient.</summary>
    public Stackup StackOf(ReviewBrief brief, Stackup nominal) => nominal with
    {
        ThicknessM = CopperM,
        PlatingM = PlatingM,
        WallOutsideToolM = nominal.WallOutsideToolM == 0 ? 0 : PlatingM,
        ResistivityOhmM = CopperMaterial.Iacs.ResistivityOhmM(
            brief.ConductorFollowsAmbient ? brief.ConductorK + AmbientK - brief.AmbientK : brief.ConductorK),
    };

    public HeatConditions ConditionsOf(ReviewBrief brief, Stackup nominal) =>
        new(StackOf(brief, nominal), AmbientK, FilmScale, CurrentScale);
}

/// <summary>Something with a range, at either end of it.</summary>
/// <param name="Name">How reports call it.</param>
/// <param name="Usual">A state with this one thing at the end that is usually the worse one.</param>
/// <param name="Other">A state with it at the other end.</param>
internal sealed record ToleranceItem(string Name, Func<BuildState, BuildState> Usual, Func<BuildState, BuildState> Other)
{
    /// <summary>The items of a brief, in the order of its keys.</summary>
    public static IReadOnlyList<ToleranceItem> Of(ToleranceSection section)
    {
        List<ToleranceItem> items = [];
        for (int layer = 1; layer <= (section.CopperM?.Count ?? 0); layer++)
        {
            (int index, ValueRange range) = (layer - 1, section.CopperM![layer - 1]);
            items.Add(new ToleranceItem(
                FormattableString.Invariant($"copper of layer {layer}"), state => WithCopper(state, index, range.Least), state => WithCopper(state, index, range.Most)));
        }

        Add("plating", section.PlatingM, (state, value) => state with { PlatingM = value }, isMostWorse: false);
        Add("ambient", section.AmbientK, (state, value) => state with { AmbientK = value }, isMostWorse: true);
        Add("film", section.Film, (state, value) => state with { FilmScale = value }, isMostWorse: false);
        Add("current", section.Current, (state, value) => state with { CurrentScale = value }, isMostWorse: true);
        return items;

        void Add(string name, ValueRange? range, Func<BuildState, double, BuildState> with, bool isMostWorse)
        {
            if (range is { } ends)
            {
                (double usual, double other) = isMostWorse ? (ends.Most, ends.Least) : (ends.Least, ends.Most);
                items.Add(new ToleranceItem(name, state => with(state, usual), state => with(state, other)));
            }
        }

        static BuildState WithCopper(BuildState state, int index, double thicknessM) =>
            state with { CopperM = [.. state.CopperM.Select((own, k) => k == index ? thicknessM : own)] };
    }
}
