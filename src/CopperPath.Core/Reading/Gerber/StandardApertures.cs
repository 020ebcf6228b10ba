using System.Globalization;
using CopperPath.Artwork;

namespace CopperPath.Reading.Gerber;

/// <summary>
/// The four built-in apertures with their optional holes:
/// <code>
/// C, diameter [X hole]             circle
/// R, width X height [X hole]       rectangle
/// O, width X height [X hole]       obround: rectangle with half circles at its short ends
/// P, diameter X n [X rot [X hole]] regular polygon in a circle of that diameter
/// </code>
/// A second hole value makes the hole a rectangle (deprecated).
/// </summary>
internal sealed class StandardApertures(double unitNm)
{
    private readonly List<ApertureRemark> _remarks = [];

    public IReadOnlyList<ApertureRemark> Remarks => _remarks;

    /// <summary>The stamp, or null when a remark rejects it.</summary>
    public Stamp? Build(char template, IReadOnlyList<double> p)
    {
        (int least, int most) = template switch
        {
            'C' => (1, 3),
            'P' => (2, 5),
            _ => (2, 4),
        };
        if (p.Count < least || p.Count > most)
        {
            Reject(
                string.Create(CultureInfo.InvariantCulture, $"{p.Count} parameter{(p.Count == 1 ? "" : "s")} of aperture {template}"),
                string.Create(CultureInfo.InvariantCulture, $"{least} to {most - 1}"));
            return null;
        }

        int sizes = template is 'C' or 'P' ? 1 : 2;
        if (p.Take(sizes).Any(size => size < 0) || p.Skip(HoleIndex(template)).Any(size => size < 0))
        {
            Reject($"a negative size of aperture {template}", "0 or more");
            return null;
        }

        if (p.Take(sizes).Any(size => size == 0))
        {
            return Empty(template);
        }

        return template switch
        {
            'C' => Circle(p),
            'R' => WithHole(Rectangle(p[0], p[1]), p, 2, 0.5 * Math.Min(p[0], p[1]), p[0] / 2, p[1] / 2),
            'O' => WithHole(Obround(p[0], p[1]), p, 2, 0.5 * Math.Min(p[0], p[1]), 0, 0),
            _ => Polygon(p),
        };
    }

    private static int HoleIndex(char template) => template switch
    {
        'C' => 1,
        'P' => 3,
        _ => 2,
    };

    private Stamp Circle(IReadOnlyList<double> p)
    {
        double radius = p[0] / 2;
        var body = new CircleOutline(default, radius * unitNm);
        return p.Count == 1
            ? new Stamp([new StampPart(body)]) { SolidCircleRadiusNm = radius * unitNm }
            : WithHole(body, p, 1, radius, 0, 0);
    }

    private Stamp? Polygon(IReadOnlyList<double> p)
    {
        if (p[1] != Math.Floor(p[1]) || p[1] is < 3 or > 12)
        {
            Reject(
                string.Create(CultureInfo.InvariantCulture, $"{p[1]} vertices of aperture P"),
                "a whole number from 3 to 12");
            return null;
        }

        int count = (int)p[1];
        double rotationDeg = p.Count > 2 ? p[2] : 0;
        var body = PathOutline.Polygon(RegularPolygon.Corners(count, p[0], rotationDeg).Select(c => unitNm * c));
        return WithHole(body, p, 3, p[0] / 2 * Math.Cos(Math.PI / count), 0, 0);
    }

    private PathOutline Rectangle(double width, double height)
    {
        double x = width / 2 * unitNm;
        double y = height / 2 * unitNm;
        return PathOutline.Polygon(new Vector(-x, -y), new Vector(x, -y), new Vector(x, y), new Vector(-x, y));
    }

    private Outline Obround(double width, double height)
    {
        double x = width / 2 * unitNm;
        double y = height / 2 * unitNm;
        if (x == y)
        {
            return new CircleOutline(default, x);
        }

        if (x > y)
        {
            Vector right = new(x - y, 0);
            Vector left = new(y - x, 0);
            return new PathOutline(
            [
                Corner.Straight(right.X, -y),
                new Corner(new Vector(right.X, y), Turn.CounterClockwise, right),
                Corner.Straight(left.X, y),
                new Corner(new Vector(left.X, -y), Turn.CounterClockwise, left),
            ]);
        }

        Vector top = new(0, y - x);
        Vector bottom = new(0, x - y);
        return new PathOutline(
        [
            Corner.Straight(x, top.Y),
            new Corner(new Vector(-x, top.Y), Turn.CounterClockwise, top),
            Corner.Straight(-x, bottom.Y),
            new Corner(new Vector(x, bottom.Y), Turn.CounterClockwise, bottom),
        ]);
    }

    /// <summary>
    /// Body less hole. A hole surely inside the body is simply a second ring; any other is cut.
    /// </summary>
    /// <param name="body">The aperture without its hole.</param>
    /// <param name="p">All parameters.</param>
    /// <param name="at">Index of the first hole parameter.</param>
    /// <param name="roomRadius">Radius of a circle about the origin that lies in the body.</param>
    /// <param name="roomX">Half width of a rectangle about the origin that lies in the body.</param>
    /// <param name="roomY">Half height of that rectangle.</param>
    private Stamp WithHole(
        Outline body, IReadOnlyList<double> p, int at, double roomRadius, double roomX, double roomY)
    {
        if (p.Count <= at || p[at] == 0)
        {
            return new Stamp([new StampPart(body)]);
        }

        bool isRectangle = p.Count > at + 1 && p[at + 1] != 0;
        Outline hole = isRectangle
            ? Rectangle(p[at], p[at + 1])
            : new CircleOutline(default, p[at] / 2 * unitNm);
        double reach = isRectangle ? Math.Sqrt((p[at] * p[at]) + (p[at + 1] * p[at + 1])) / 2 : p[at] / 2;
        bool isInside = reach < roomRadius * 0.999
            || (isRectangle && p[at] / 2 < roomX * 0.999 && p[at + 1] / 2 < roomY * 0.999);
        if (isRectangle)
        {
            Warn("a rectangular aperture hole", "one hole diameter; the rectangle is cut");
        }

        if (!isInside)
        {
            Warn("an aperture hole that reaches the edge of its aperture", "a hole smaller than the aperture");
        }

        return isInside
            ? new Stamp([new StampPart(true, [body], [hole])])
            : new Stamp([new StampPart(body), new StampPart(false, [hole], [])]);
    }

    private Stamp Empty(char template)
    {
        if (template != 'C')
        {
            _remarks.Add(new ApertureRemark(
                GerberCode.EmptyAperture, $"aperture {template} of size 0", "a size above 0; it draws nothing", false));
        }

        return new Stamp([]) { SolidCircleRadiusNm = 0 };
    }

    private void Warn(string found, string expected) =>
        _remarks.Add(new ApertureRemark(GerberCode.UnusualHole, found, expected, false));

    private void Reject(string found, string expected) =>
        _remarks.Add(new ApertureRemark(GerberCode.BadAperture, found, expected, true));
}
