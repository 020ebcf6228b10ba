using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.CrossCheck;

/// <summary>
/// Lays the points of one file on those of another, and when they do not meet finds the move, mirror image, turn or
/// scale with which they do: every pair of points votes for the move that would join it, and the move with the most
/// votes is tried on all points.
/// </summary>
internal static class RegistrationSearch
{
    /// <summary>
    /// Points this near are one place: a drill format of one mil rounds by 18 um at most along both axes.
    /// </summary>
    public const long SamePlaceNm = 25_000;

    /// <summary>Points a rough guess is refined with.</summary>
    private const long RoughPlaceNm = 200_000;

    /// <summary>Votes of this many points settle a guess; more cost time and add nothing.</summary>
    private const int VotersTried = 120;
    private const int TargetsTried = 2_000;

    private const long ShiftCellNm = 50_000;
    private const double LogScaleCell = 4e-4;
    private const double SameRatio = 2e-3;

    /// <summary>Guesses tried of each kind.</summary>
    private const int GuessesTried = 3;

    /// <summary>Share of the points that a misfit must explain to be named, and its least lead over the files as they stand.</summary>
    private const double LeastExplained = 0.6;
    private const double LeastLead = 0.3;

    /// <summary>A misfit that explains nearly all needs less of a lead: drawings that look much alike in the mirror.</summary>
    private const double NearlyAll = 0.95;
    private const double LeadOfNearlyAll = 0.1;

    private static readonly Misfit[] _attitudes =
    [
        .. from mirrored in new[] { false, true } from turns in Enumerable.Range(0, 4) select new Misfit(mirrored, turns, 1, default),
    ];

    /// <param name="from">Points of the file that is taken to be right.</param>
    /// <param name="to">Points of the other.</param>
    /// <param name="leastInPlace">Share of points from which the files fit as they stand and no misfit is looked for.</param>
    public static Registration Of(IReadOnlyList<PointNm> from, IReadOnlyList<PointNm> to, double leastInPlace)
    {
        PointNm[] targets = [.. to.Distinct()];
        PointNm[] points = [.. from.Distinct()];
        PointIndex index = new(targets, SamePlaceNm);
        int inPlace = points.Count(index.HasNear);
        Registration registration = new(Math.Min(points.Length, targets.Length), Math.Min(inPlace, targets.Length));
        if (!registration.CanTell || registration.IsInPlace(leastInPlace))
        {
            return registration;
        }

        PointIndex rough = new(targets, RoughPlaceNm);
        PointNm[] voters = Thinned(points, VotersTried), wanted = Thinned(targets, TargetsTried);
        IEnumerable<Misfit> Guesses() => [.. ShiftGuesses(_attitudes[0], voters, wanted), .. ScaleGuesses(voters, wanted),
            .. _attitudes.Skip(1).SelectMany(attitude => ShiftGuesses(attitude, voters, wanted))];
        (Misfit? best, int explained) = (null, 0);
        foreach (Misfit guess in Guesses())
        {
            Misfit refined = Refined(Refined(guess, points, targets, rough), points, targets, rough);
            int count = Math.Min(points.Count(point => index.HasNear(refined.Apply(point))), targets.Length);
            (best, explained) = count > explained || (count == explained && refined.IsNearerThan(best)) ? (refined, count) : (best, explained);
        }

        double leastLead = explained >= NearlyAll * registration.Possible ? LeadOfNearlyAll : LeastLead;
        bool isClear = explained >= Registration.FewestPoints && explained >= LeastExplained * registration.Possible
            && explained - registration.InPlace >= leastLead * registration.Possible;
        return isClear ? registration with { Misfit = best, Explained = explained } : registration;
    }

    private static PointNm[] Thinned(PointNm[] points, int most) => points.Length <= most ? points
        : [.. Enumerable.Range(0, most).Select(i => points[(long)i * points.Length / most])];

    private static IEnumerable<Misfit> ShiftGuesses(Misfit attitude, PointNm[] points, PointNm[] targets)
    {
        List<(long, long)> votes = [];
        foreach (PointNm point in points)
        {
            PointNm turned = attitude.Turned(point);
            votes.AddRange(targets.Select(target => (Cell(target.X - turned.X), Cell(target.Y - turned.Y))));
        }

        return MostVoted(votes).Select(cell => attitude with
        {
            Shift = new PointNm((cell.Item1 * ShiftCellNm) + (ShiftCellNm / 2), (cell.Item2 * ShiftCellNm) + (ShiftCellNm / 2)),
        });
    }

    private static IEnumerable<Misfit> ScaleGuesses(PointNm[] points, PointNm[] targets)
    {
        // Ratios of small coordinates are all rounding.
        static bool IsFar(PointNm p) => Math.Min(Math.Abs(p.X), Math.Abs(p.Y)) > Units.NmPerMm / 10;
        List<long> votes = [];
        foreach (PointNm point in points.Where(IsFar))
        {
            foreach (PointNm target in targets)
            {
                double alongX = (double)target.X / point.X, alongY = (double)target.Y / point.Y;
                if (alongX > 0 && Math.Abs((alongY / alongX) - 1) < SameRatio)
                {
                    votes.Add((long)Math.Floor(Math.Log((alongX + alongY) / 2) / LogScaleCell));
                }
            }
        }

        return MostVoted(votes).Select(cell => Misfit.None with { Scale = Math.Exp((cell + 0.5) * LogScaleCell) });
    }

    private static IEnumerable<T> MostVoted<T>(List<T> votes)
        where T : IComparable<T>
    {
        votes.Sort();
        List<(T Cell, int Count)> counted = [];
        for (int i = 0, first = 0; i < votes.Count; i++)
        {
            if (i + 1 == votes.Count || votes[i + 1].CompareTo(votes[i]) != 0)
            {
                counted.Add((votes[i], i + 1 - first));
                first = i + 1;
            }
        }

        return counted.OrderByDescending(entry => entry.Count).ThenBy(entry => entry.Cell).Take(GuessesTried).Select(entry => entry.Cell);
    }

    /// <summary>The guess brought to the least squares of the points it joins; its scale only where it has one.</summary>
    private static Misfit Refined(Misfit guess, PointNm[] points, PointNm[] targets, PointIndex rough)
    {
        (PointNm From, PointNm To)[] pairs = [.. points
            .Select(point => (From: guess.Turned(point), Nearest: rough.Nearest(guess.Apply(point))))
            .Where(pair => pair.Nearest >= 0).Select(pair => (pair.From, targets[pair.Nearest]))];
        if (pairs.Length < Registration.FewestPoints)
        {
            return guess;
        }

        double fromX = pairs.Average(pair => (double)pair.From.X), fromY = pairs.Average(pair => (double)pair.From.Y);
        double toX = pairs.Average(pair => (double)pair.To.X), toY = pairs.Average(pair => (double)pair.To.Y);
        double scale = 1;
        if (guess.Scale != 1)
        {
            double spread = pairs.Sum(pair => Square(pair.From.X - fromX) + Square(pair.From.Y - fromY));
            double common = pairs.Sum(pair => ((pair.From.X - fromX) * (pair.To.X - toX)) + ((pair.From.Y - fromY) * (pair.To.Y - toY)));
            scale = spread > 0 && common > 0 ? common / spread : guess.Scale;
        }

        return guess with { Scale = scale, Shift = new PointNm((long)Math.Round(toX - (scale * fromX)), (long)Math.Round(toY - (scale * fromY))) };
    }

    private static double Square(double value) => value * value;

    private static long Cell(long valueNm) => (long)Math.Floor((double)valueNm / ShiftCellNm);
}
