namespace CopperPath.Thermal;

/// <summary>The hottest place of a board: copper or laminate, of reviewed nets or not.</summary>
/// <param name="RiseK">Rise above ambient, kelvin.</param>
/// <param name="Layer">The copper layer it lies on, or the nearest above.</param>
/// <param name="XM">Place, metres.</param>
/// <param name="YM">Place, metres.</param>
public sealed record HottestPlace(double RiseK, int Layer, double XM, double YM)
{
    /// <param name="field">A solved board.</param>
    public static HottestPlace Of(TemperatureField field)
    {
        double[] rises = field.Result.RiseK;
        HeatGrid grid = field.Network.Grid;
        int hottest = Array.IndexOf(rises, rises.Max());
        int column = hottest / grid.Planes.Count;
        int layer = grid.Planes.Take((hottest % grid.Planes.Count) + 1).Max(plane => plane.CopperLayer);
        return new HottestPlace(rises[hottest], layer, grid.X.CentreM(column % grid.X.Count), grid.Y.CentreM(column / grid.X.Count));
    }
}
