namespace CopperPath.Thermal;

/// <summary>The heat put into a board as a load profile changes it.</summary>
internal sealed class LoadedSources
{
    private readonly HeatModel _model;
    private readonly HeatConditions _conditions;
    private readonly LoadCase _load;
    private readonly bool _hasCopperLoss;
    private readonly double[] _componentW;
    private LoadPiece _piece;
    private (double[] Squares, double Parts)? _set;

    /// <param name="model">The board on cells.</param>
    /// <param name="conditions">As stated.</param>
    /// <param name="load">Factors against time.</param>
    /// <param name="hasCopperLoss">False to leave out the loss of copper.</param>
    public LoadedSources(HeatModel model, HeatConditions conditions, LoadCase load, bool hasCopperLoss)
    {
        (_model, _conditions, _load, _hasCopperLoss) = (model, conditions, load, hasCopperLoss);
        HeatSources stated = model.Loss.SourcesAt(conditions);
        model.AddComponents(stated);
        _componentW = stated.ComponentW;
        _piece = load.Pieces[0];
        Sources = model.Loss.SourcesAt(conditions);
    }

    public HeatSources Sources { get; }

    /// <summary>From now on times are those of a piece.</summary>
    public void Enter(LoadPiece piece) => _piece = piece;

    /// <summary>The heat at a time of the piece, seconds.</summary>
    public void SetTo(double timeS)
    {
        double[] squares = [.. _load.OfStretches.Select((_, s) => _load.SquareOf(s, timeS, _piece))];
        double parts = _load.OfPartsAt(timeS, _piece);
        if (_set is { } set && set.Parts == parts && set.Squares.AsSpan().SequenceEqual(squares))
        {
            return;
        }

        _set = (squares, parts);
        if (_hasCopperLoss)
        {
            _model.Loss.Fill(Sources.JouleAtAmbientW, _conditions, s => squares[s]);
        }

        for (int n = 0; n < _componentW.Length; n++)
        {
            Sources.ComponentW[n] = parts * _componentW[n];
        }
    }

    /// <summary>The heat before the profile begins: what its first points say, whatever step follows at once.</summary>
    public void SetToBefore()
    {
        Enter(new LoadPiece(-1, 0, true));
        SetTo(0);
    }

    /// <summary>The mean heat over the profile: by Simpson's rule, exact for currents that are straight lines.</summary>
    public void SetToMean()
    {
        double[] jouleW = new double[_componentW.Length];
        double[] componentW = new double[_componentW.Length];
        foreach (LoadPiece piece in _load.Pieces)
        {
            Enter(piece);
            foreach ((double timeS, double weight) in new[] { (piece.FromS, 1.0 / 6), (piece.MiddleS, 4.0 / 6), (piece.ToS, 1.0 / 6) })
            {
                SetTo(timeS);
                double share = weight * (piece.ToS - piece.FromS) / _load.DurationS;
                for (int n = 0; n < jouleW.Length; n++)
                {
                    jouleW[n] += share * Sources.JouleAtAmbientW[n];
                    componentW[n] += share * Sources.ComponentW[n];
                }
            }
        }

        jouleW.CopyTo(Sources.JouleAtAmbientW, 0);
        componentW.CopyTo(Sources.ComponentW, 0);
        _set = null;
    }
}
