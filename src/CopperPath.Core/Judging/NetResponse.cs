using CopperPath.Brief;
using CopperPath.Electrical;

namespace CopperPath.Judging;

/// <summary>
/// How loss and drop of a solved net answer to other thicknesses, temperature and current, from the one solution.
/// </summary>
/// <remarks>
/// The nominal current is one way for the current to divide in the other build, and by Thomson's principle no way makes
/// less heat than the true one: the parts of the nominal loss, each by its resistance's factor, are an upper bound. The
/// nominal potentials bound it from below in the same way (Dirichlet's principle): the square of the power the terminals bring
/// at them, over their own loss by part, each divided by its factor. Both are
/// exact where all factors are alike, and where all current passes every part. (Maxwell, A Treatise on Electricity and
/// Magnetism, 1873, articles 98 and 306; from memory.)
/// </remarks>
internal sealed class NetResponse(SolvedNet net, ReviewBrief brief, Stackup nominal, BoardRanges ranges)
{
    private readonly IReadOnlyList<ToleranceItem> _items = ToleranceItem.OfResistance(ranges);

    private readonly ConductionResult _result = net.Conduction;

    /// <summary>The spread of a value of this net.</summary>
    public Spread SpreadOf(Func<BuildState, double> value, Func<BuildState, Bracket>? bounds = null) =>
        Spread.Of(BuildState.Nominal(brief, nominal), _items, value, bounds);

    public double LossW(BuildState state) => _result.LossW * LossBoundsW(state).Middle / LossBoundsW(BuildState.Nominal(brief, nominal)).Middle;

    public Bracket LossBoundsW(BuildState state)
    {
        Stackup stack = state.StackOf(brief, nominal);
        double sourceOverFactor = 0;
        double balanced = 0;
        foreach (ConductorPart part in _result.Parts)
        {
            double factor = FactorOf(part, stack);
            sourceOverFactor += part.LossW.Least / factor;
            balanced += part.LossW.Greatest * factor;
        }

        foreach (BarrelCurrent barrel in _result.Barrels)
        {
            double lossW = barrel.CurrentA * barrel.CurrentA * barrel.ResistanceOhm;
            double factor = FactorOf(barrel, stack);
            sourceOverFactor += lossW / factor;
            balanced += lossW * factor;
        }

        double powerW = _result.Terminals.Sum(terminal => terminal.Terminal.CurrentA * terminal.PotentialV);
        return new Bracket(powerW * powerW / sourceOverFactor, balanced) * (state.CurrentScale * state.CurrentScale);
    }

    /// <summary>Largest drop: with two terminals loss over current, else of first order in the resistances of the parts.</summary>
    public double DropV(BuildState state)
    {
        if (IsTwoTerminal)
        {
            return _result.DropV * LossW(state) / (_result.LossW * state.CurrentScale);
        }

        Stackup stack = state.StackOf(brief, nominal);
        double parts = 0;
        double changed = 0;
        foreach (ConductorPart part in _result.Parts)
        {
            parts += part.DropV;
            changed += part.DropV * FactorOf(part, stack);
        }

        foreach (BarrelCurrent barrel in _result.Barrels)
        {
            double dropV = barrel.CurrentA * barrel.UnitCurrentA * barrel.ResistanceOhm;
            parts += dropV;
            changed += dropV * FactorOf(barrel, stack);
        }

        return _result.DropV * state.CurrentScale * changed / parts;
    }

    /// <summary>Null with more than two terminals: what is proven of loss holds of the drop only between two.</summary>
    public Func<BuildState, Bracket>? DropBoundsV => !IsTwoTerminal ? null
        : state => LossBoundsW(state) * (1 / (Math.Abs(_result.Terminals[0].Terminal.CurrentA) * state.CurrentScale));

    /// <summary>Largest screening rise of the net's sections, kelvin; the share each layer has of the current is held.</summary>
    public double SectionRiseK(BuildState state)
    {
        ConductorRating rating = On(Shown, state);
        return net.Sections.Max(section => rating.TraceRiseK(section with { CurrentA = section.CurrentA * state.CurrentScale }));
    }

    /// <summary>Largest screening rise of the net's plated holes, kelvin; likewise.</summary>
    public double HoleRiseK(BuildState state)
    {
        ConductorRating rating = On(Shown, state);
        return _result.Barrels.Max(barrel => rating.BarrelRiseK(barrel with { CurrentA = barrel.CurrentA * state.CurrentScale }));
    }

    /// <summary>The rise of one cut by a relation, with the share its layer has of the current held.</summary>
    public Spread OfCut(Section section, ConductorRating rating) =>
        SpreadOf(state => On(rating, state).TraceRiseK(section with { CurrentA = section.CurrentA * state.CurrentScale }));

    /// <summary>The same of a cut through copper that carries a current together.</summary>
    public Spread OfCut(JointSection section, ConductorRating rating) =>
        SpreadOf(state => On(rating, state).JointRiseK(section.Scaled(state.CurrentScale)));

    /// <summary>The same of one plated hole.</summary>
    public Spread OfHole(BarrelCurrent barrel, ConductorRating rating) =>
        SpreadOf(state => On(rating, state).BarrelRiseK(barrel with { CurrentA = barrel.CurrentA * state.CurrentScale }));

    private ConductorRating Shown => ConductorRating.Shown(brief.Limits.JudgeBy, nominal);

    private ConductorRating On(ConductorRating rating, BuildState state) => rating.On(state.StackOf(brief, nominal));

    private bool IsTwoTerminal => _result.Terminals.Count == 2;

    private double FactorOf(ConductorPart part, Stackup stack) => part.IsSolder ? 1
        : nominal.SheetConductanceS(part.Layer) / stack.SheetConductanceS(part.Layer);

    /// <summary>A hole's length is held: what thinner layers take off it is left out.</summary>
    private double FactorOf(BarrelCurrent barrel, Stackup stack) =>
        stack.ResistivityOhmM * BarrelSection.AreaM2(barrel.Barrel.Feature, nominal)
        / (nominal.ResistivityOhmM * BarrelSection.AreaM2(barrel.Barrel.Feature, stack));
}
