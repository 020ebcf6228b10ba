using System.Globalization;
using System.Text;
using CopperPath.DemoBoards.Drawing;
using CopperPath.DemoBoards.Kit;
using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Writing;

/// <summary>Writes one layer's artwork as a Gerber file in a dialect.</summary>
public sealed class GerberFile
{
    private readonly GerberDialect _dialect;
    private readonly StringBuilder _body = new();
    private readonly ApertureList _apertures;
    private int _selected;
    private string _objectAttributes = "";
    private string _regionFunction = "";

    private GerberFile(GerberDialect dialect)
    {
        _dialect = dialect;
        _apertures = new ApertureList(dialect);
    }

    /// <summary>The file's text.</summary>
    /// <param name="drawing">What to draw.</param>
    /// <param name="dialect">How to write it.</param>
    /// <param name="fileAttributes">Values of file attributes, name first; left out in a dialect without attributes.</param>
    public static string Write(LayerDrawing drawing, GerberDialect dialect, IEnumerable<string> fileAttributes)
    {
        var file = new GerberFile(dialect);
        foreach (var drawn in drawing.Objects)
        {
            file.Draw(drawn);
        }

        var head = new StringBuilder();
        if (dialect.HasAttributes)
        {
            foreach (var attribute in fileAttributes)
            {
                Line(head, $"%TF.{attribute}*%");
            }
        }

        Line(head, $"%{dialect.Format}*%");
        Line(head, $"%{dialect.Unit}*%");
        file._apertures.WriteTo(head);
        Line(head, "G01*");
        Line(head, "G75*");
        Line(head, "%LPD*%");
        return head.Append(file._body).Append("M02*\n").ToString();
    }

    private static void Line(StringBuilder to, string text) => to.Append(text).Append('\n');

    private void Draw(DrawnObject drawn)
    {
        SetObjectAttributes(drawn);
        switch (drawn)
        {
            case Flash flash:
                Select(_apertures.NumberOf(flash.Shape, flash.Function));
                Operate(flash.At, "D03");
                break;
            case Stroke stroke:
                Select(_apertures.NumberOf(PadShape.Disc(stroke.WidthMm), stroke.Function));
                Operate(stroke.Path[0], "D02");
                foreach (var point in stroke.Path.Skip(1))
                {
                    Operate(point, "D01");
                }

                break;
            case QuarterArc arc:
                Select(_apertures.NumberOf(PadShape.Disc(arc.WidthMm), arc.Function));
                Operate(arc.Start, "D02");
                Line(_body, "G03*");
                var (i, j) = (_dialect.Steps(arc.Centre.X) - _dialect.Steps(arc.Start.X), _dialect.Steps(arc.Centre.Y) - _dialect.Steps(arc.Start.Y));
                Line(_body, Invariant($"X{_dialect.Steps(arc.End.X)}Y{_dialect.Steps(arc.End.Y)}I{i}J{j}D01*"));
                Line(_body, "G01*");
                break;
            case Region region:
                Fill(region);
                break;
        }
    }

    private void Fill(Region region)
    {
        if (_dialect.HasAttributes && _regionFunction != region.Function)
        {
            Line(_body, $"%TA.AperFunction,{region.Function}*%");
            _regionFunction = region.Function;
        }

        var outer = Ring(region.Area.Shell, counterClockwise: true);
        var holes = region.Area.Holes.Select(hole => Ring((LinearRing)hole, counterClockwise: false)).Where(ring => ring.Count > 2).ToList();
        if (!_dialect.ClearsHoles)
        {
            Contours([CutIn.Join(outer, holes)]);
        }
        else
        {
            Contours([outer]);
            if (holes.Count > 0)
            {
                Line(_body, "%LPC*%");
                Contours(holes);
                Line(_body, "%LPD*%");
            }
        }
    }

    private void Contours(IEnumerable<IReadOnlyList<(long X, long Y)>> contours)
    {
        Line(_body, "G36*");
        foreach (var contour in contours)
        {
            var operation = "D02";
            foreach (var (x, y) in contour.Append(contour[0]))
            {
                Line(_body, Invariant($"X{x}Y{y}{operation}*"));
                operation = "D01";
            }
        }

        Line(_body, "G37*");
    }

    private List<(long X, long Y)> Ring(LinearRing ring, bool counterClockwise)
    {
        var points = new List<(long X, long Y)>();
        foreach (var corner in ring.Coordinates)
        {
            var point = (_dialect.Steps(corner.X), _dialect.Steps(corner.Y));
            if (points.Count == 0 || points[^1] != point)
            {
                points.Add(point);
            }
        }

        if (points.Count > 1 && points[^1] == points[0])
        {
            points.RemoveAt(points.Count - 1);
        }

        if (ring.IsCCW != counterClockwise)
        {
            points.Reverse();
        }

        return points;
    }

    private void Select(int aperture)
    {
        if (aperture != _selected)
        {
            Line(_body, Invariant($"D{aperture}*"));
            _selected = aperture;
        }
    }

    private void Operate(PointMm at, string operation) =>
        Line(_body, Invariant($"X{_dialect.Steps(at.X)}Y{_dialect.Steps(at.Y)}{operation}*"));

    private void SetObjectAttributes(DrawnObject drawn)
    {
        if (!_dialect.HasAttributes)
        {
            return;
        }

        var attributes = new StringBuilder();
        if (drawn.Net is not null)
        {
            Line(attributes, $"%TO.N,{drawn.Net}*%");
        }

        if (drawn is { Part: not null, Pin: not null })
        {
            Line(attributes, $"%TO.P,{drawn.Part},{drawn.Pin}*%");
        }

        if (drawn.Part is not null)
        {
            Line(attributes, $"%TO.C,{drawn.Part}*%");
        }

        var wanted = attributes.ToString();
        if (wanted != _objectAttributes)
        {
            if (_objectAttributes.Length > 0)
            {
                // Deleting all object attributes drops the aperture function meant for regions too.
                Line(_body, "%TD*%");
                _regionFunction = "";
            }

            _body.Append(wanted);
            _objectAttributes = wanted;
        }
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
