using CopperPath.Brief;

namespace CopperPath.Thermal;

/// <summary>Heat one face gives to air and surroundings.</summary>
internal sealed class FaceExchange
{
    /// <summary>Stefan-Boltzmann constant, W/(m2 K4), CODATA 2018 (from memory).</summary>
    private const double StefanBoltzmann = 5.670374419e-8;

    private readonly (int Node, double AreaM2)[] _cells;
    private readonly FaceCooling _face;
    private readonly FacePosture _posture;
    private readonly double _ambientK;
    private readonly double _filmScale;
    private readonly double _lengthM;
    private readonly double _areaM2;

    public FaceExchange(HeatNetwork network, Cooling cooling, bool isTop)
    {
        _face = isTop ? cooling.Top : cooling.Bottom;
        _posture = cooling.Posture == BoardPosture.Vertical ? FacePosture.Vertical : isTop ? FacePosture.Up : FacePosture.Down;
        (_ambientK, _filmScale) = (cooling.AmbientK, _face.FilmWPerM2K is null ? cooling.StillAirScale : cooling.StatedFilmScale);
        _lengthM = (cooling.Plate ?? SizeOf(network)).LengthM(_posture);
        int planes = network.Cells.Planes.Count;
        List<(int, double)> cells = [];
        for (int column = 0; column < network.Cells.Count; column++)
        {
            double areaM2 = network.BoardAreaM2(column);
            if (areaM2 > 0)
            {
                cells.Add(((column * planes) + (isTop ? 0 : planes - 1), areaM2));
                _areaM2 += areaM2;
            }
        }

        _cells = [.. cells];
    }

    /// <summary>Film coefficient at the last call of <see cref="Update"/>, watts per square metre and kelvin.</summary>
    public double FilmWPerM2K { get; private set; }

    /// <summary>The still air at that face then; null where a film is stated.</summary>
    public StillAir? StillAir { get; private set; }

    /// <summary>True for a face without film and without radiation.</summary>
    public bool GivesNothing => _face.FilmWPerM2K == 0 && _face.Emissivity == 0;

    /// <summary>
    /// Subtracts what the face gives away from the heat left over in each node, and adds its derivative to the diagonal.
    /// </summary>
    /// <returns>Heat convected and radiated, watts.</returns>
    public (double ConvectedW, double RadiatedW) Update(double[] riseK, double[] surplusW, double[] slopeWPerK)
    {
        double meanK = 0;
        foreach ((int node, double areaM2) in _cells)
        {
            meanK += areaM2 * riseK[node] / _areaM2;
        }

        FilmWPerM2K = FilmAt(meanK);
        StillAir = _face.FilmWPerM2K is null ? NaturalConvection.At(_posture, meanK, _ambientK, _lengthM) : null;
        double stepK = 1e-3 * Math.Max(1, Math.Abs(meanK));
        double slope = FilmWPerM2K + (meanK * (FilmAt(meanK + stepK) - FilmWPerM2K) / stepK);
        double ambient4 = Math.Pow(_ambientK, 4);
        double convectedW = 0;
        double radiatedW = 0;
        foreach ((int node, double areaM2) in _cells)
        {
            double surfaceK = _ambientK + riseK[node];
            double cubed = surfaceK * surfaceK * surfaceK;
            double convected = FilmWPerM2K * areaM2 * riseK[node];
            double radiated = _face.Emissivity * StefanBoltzmann * areaM2 * ((cubed * surfaceK) - ambient4);
            convectedW += convected;
            radiatedW += radiated;
            surplusW[node] -= convected + radiated;
            slopeWPerK[node] += areaM2 * (slope + (4 * _face.Emissivity * StefanBoltzmann * cubed));
        }

        return (convectedW, radiatedW);
    }

    private double FilmAt(double meanRiseK) => _filmScale
        * (_face.FilmWPerM2K ?? NaturalConvection.FilmWPerM2K(_posture, meanRiseK, _ambientK, _lengthM));

    /// <summary>The rectangle around the columns that hold board.</summary>
    private static PlateSize SizeOf(HeatNetwork network)
    {
        CellBox? extent = null;
        for (int column = 0; column < network.Cells.Count; column++)
        {
            if (network.BoardAreaM2(column) > 0)
            {
                CellBox box = network.Cells.BoxOf(column);
                extent = extent is { } sofar ? sofar.Around(box) : box;
            }
        }

        CellBox plate = extent ?? network.Cells.BoxOf(0);
        return PlateSize.OfRectangle(plate.WidthM, plate.HeightM);
    }
}
