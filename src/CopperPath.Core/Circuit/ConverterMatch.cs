using CopperPath.Brief;
using CopperPath.Converter;
using CopperPath.PowerPath;

namespace CopperPath.Circuit;

/// <summary>Which converter of the copper a converter of the brief speaks of.</summary>
public static class ConverterMatch
{
    /// <summary>Currents agree to 5 %: briefs round.</summary>
    private const double CurrentTolerance = 0.05;

    /// <summary>
    /// The one whose output the brief reviews with that load current, or the only one there is. Null where the copper
    /// does not tell.
    /// </summary>
    /// <param name="facts">The brief's converter.</param>
    /// <param name="converterCount">Converters in the brief.</param>
    /// <param name="nets">Stretches of the brief.</param>
    /// <param name="path">The power path as the copper suggests it.</param>
    public static ConverterProposal? Of(ConverterFacts facts, int converterCount, IEnumerable<BoundNet> nets, PathProposal path)
    {
        ConverterProposal? byLoad = path.Converters.FirstOrDefault(proposal => nets.Any(net =>
            net.Review.Role == NetRole.Output && ReferenceEquals(net.Net, proposal.Output) && IsLoad(net.EnteringA, facts.Stage.OutputA)));
        return byLoad ?? (converterCount == 1 && path.Converters.Count == 1 ? path.Converters[0] : null);
    }

    private static bool IsLoad(double enteringA, double loadA) => Math.Abs(enteringA - loadA) <= CurrentTolerance * loadA;
}
