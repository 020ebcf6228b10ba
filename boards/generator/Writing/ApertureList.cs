using System.Globalization;
using System.Text;
using CopperPath.DemoBoards.Kit;

namespace CopperPath.DemoBoards.Writing;

/// <summary>The apertures of one file, numbered from 10 in order of first use.</summary>
public sealed class ApertureList(GerberDialect dialect)
{
    private readonly List<(PadShape Shape, string Function)> _apertures = [];

    public int NumberOf(PadShape shape, string function)
    {
        var wanted = (shape, dialect.HasAttributes ? function : "");
        var found = _apertures.IndexOf(wanted);
        if (found < 0)
        {
            _apertures.Add(wanted);
            found = _apertures.Count - 1;
        }

        return 10 + found;
    }

    public void WriteTo(StringBuilder head)
    {
        if (_apertures.Any(aperture => IsRounded(aperture.Shape)))
        {
            // $1 width, $2 height, $3 corner radius: two bars and four discs.
            head.Append("%AMROUNDED*\n")
                .Append("0 rectangle with rounded corners: width, height, radius*\n")
                .Append("21,1,$1,$2-2x$3,0,0,0*\n")
                .Append("21,1,$1-2x$3,$2,0,0,0*\n")
                .Append("$4=$1/2-$3*\n")
                .Append("$5=$2/2-$3*\n")
                .Append("1,1,2x$3,$4,$5*\n")
                .Append("1,1,2x$3,-$4,$5*\n")
                .Append("1,1,2x$3,-$4,-$5*\n")
                .Append("1,1,2x$3,$4,-$5*%\n");
        }

        for (var i = 0; i < _apertures.Count; i++)
        {
            var (shape, function) = _apertures[i];
            if (function.Length > 0)
            {
                head.Append("%TA.AperFunction,").Append(function).Append("*%\n");
            }

            head.Append("%ADD").Append((10 + i).ToString(CultureInfo.InvariantCulture)).Append(Definition(shape)).Append("*%\n");
            if (function.Length > 0)
            {
                head.Append("%TD*%\n");
            }
        }
    }

    private static bool IsRounded(PadShape shape) => !shape.IsDisc && shape.CornerMm > 0;

    private string Definition(PadShape shape)
    {
        var (w, h) = (dialect.Size(shape.WidthMm), dialect.Size(shape.HeightMm));
        if (shape.IsDisc)
        {
            return $"C,{w}";
        }

        return IsRounded(shape) ? $"ROUNDED,{w}X{h}X{dialect.Size(shape.CornerMm)}" : $"R,{w}X{h}";
    }
}
