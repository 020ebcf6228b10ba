using CopperPath.Geometry;
using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>From board coordinates to picture pixels: one scale, ordinates turned over, abscissas too when seen from below.</summary>
public sealed class ViewTransform
{
    private readonly double _originXNm;
    private readonly double _originYNm;
    private readonly double _leftPx;
    private readonly double _topPx;
    private readonly double _signX;

    /// <summary>Fits <paramref name="viewNm"/> into the picture with its top left corner at the given pixel.</summary>
    public ViewTransform(BoxNm viewNm, double leftPx, double topPx, double pixelsPerNm, bool seenFromBelow)
    {
        PixelsPerNm = pixelsPerNm;
        _signX = seenFromBelow ? -1 : 1;
        _originXNm = seenFromBelow ? viewNm.MaxX : viewNm.MinX;
        _originYNm = viewNm.MaxY;
        _leftPx = leftPx;
        _topPx = topPx;
    }

    public double PixelsPerNm { get; }

    public double XPx(double xNm) => _leftPx + (_signX * (xNm - _originXNm) * PixelsPerNm);

    public double YPx(double yNm) => _topPx + ((_originYNm - yNm) * PixelsPerNm);

    public SKPoint Map(PointNm point) => new((float)XPx(point.X), (float)YPx(point.Y));
}
