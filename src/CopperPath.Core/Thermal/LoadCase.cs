using CopperPath.Brief;

namespace CopperPath.Thermal;

/// <summary>Currents and heat of parts against time.</summary>
/// <param name="OfStretches">Curve of each stretch, in their order; null where its current stays as stated.</param>
/// <param name="OfParts">Factor that the heat of parts follows; null where it stays as stated.</param>
/// <param name="PartsExponent">Power of that factor; null for the larger of the first and the second.</param>
/// <param name="DurationS">Length, of one period where it repeats, seconds.</param>
/// <param name="IsPeriodic">True where it repeats for ever.</param>
/// <param name="Start">How warm the board is at the beginning.</param>
internal sealed record LoadCase(
    IReadOnlyList<LoadCurve?> OfStretches, LoadCurve? OfParts, double? PartsExponent, double DurationS, bool IsPeriodic, LoadStart Start)
{
    /// <summary>Stretches of time without a corner in any curve, in their order.</summary>
    public IReadOnlyList<LoadPiece> Pieces { get; } = PiecesOf([.. OfStretches.Append(OfParts).OfType<LoadCurve>().Distinct()], DurationS);

    /// <summary>Square of the factor on the current of a stretch.</summary>
    /// <param name="stretch">Its number.</param>
    /// <param name="timeS">Seconds.</param>
    /// <param name="piece">The piece the time is in, or at the edge of.</param>
    public double SquareOf(int stretch, double timeS, LoadPiece piece)
    {
        double factor = OfStretches[stretch]?.At(timeS, piece.MiddleS) ?? 1;
        return factor * factor;
    }

    /// <summary>Largest square of any factor, and of what the heat of parts is multiplied by.</summary>
    public double LargestSquare()
    {
        double largest = 0;
        foreach (LoadPiece piece in Pieces)
        {
            foreach (double timeS in new[] { piece.FromS, piece.ToS })
            {
                largest = Math.Max(largest, Math.Max(OfPartsAt(timeS, piece), OfStretches.Select((_, s) => SquareOf(s, timeS, piece)).Append(0).Max()));
            }
        }

        return largest;
    }

    /// <summary>Factor on the heat of parts, likewise.</summary>
    public double OfPartsAt(double timeS, LoadPiece piece)
    {
        double factor = OfParts?.At(timeS, piece.MiddleS) ?? 1;
        return PartsExponent is { } exponent ? Math.Pow(factor, exponent) : Math.Max(factor, factor * factor);
    }

    private static List<LoadPiece> PiecesOf(LoadCurve[] curves, double durationS)
    {
        double[] corners = [.. curves.SelectMany(curve => curve.Points).Select(point => point.TimeS)
            .Where(timeS => timeS > 0 && timeS < durationS).Append(0).Append(durationS).Distinct().Order()];
        List<LoadPiece> pieces = [];
        for (int k = 0; k + 1 < corners.Length; k++)
        {
            LoadPiece piece = new(corners[k], corners[k + 1], k == 0);
            bool jumps = k == 0 || curves.Any(curve => curve.At(piece.FromS, pieces[^1].MiddleS) != curve.At(piece.FromS, piece.MiddleS));
            pieces.Add(piece with { Jumps = jumps });
        }

        return pieces;
    }
}
