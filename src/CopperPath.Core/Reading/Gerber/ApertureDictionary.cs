using System.Globalization;
using System.Text;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Reading.Gerber;

/// <summary>Apertures by D code, and the macros they may be made of.</summary>
internal sealed class ApertureDictionary(GerberLog log)
{
    private readonly Dictionary<int, Aperture> _apertures = [];
    private readonly Dictionary<string, MacroProgram> _macros = new(StringComparer.Ordinal);

    /// <summary>Codes whose definition was refused: using them is no further error.</summary>
    private readonly HashSet<int> _refused = [];

    private long _macroCharacters;
    private long _macroEvaluations;

    /// <summary>True once a limit was met: nothing more should be read.</summary>
    public bool IsFull { get; private set; }

    public bool IsEmpty => _apertures.Count == 0 && _refused.Count == 0;

    public Aperture? Find(int code) => _apertures.GetValueOrDefault(code);

    public bool WasRefused(int code) => _refused.Contains(code);

    /// <summary>AM: the whole text between the percent signs.</summary>
    public void DefineMacro(in Piece piece)
    {
        _macroCharacters += piece.Text.Length;
        if (_macroCharacters > GerberLimits.MostMacroCharacters)
        {
            Refuse(piece.Position(log.File), "characters of macros", GerberLimits.MostMacroCharacters);
            return;
        }

        if (MacroProgram.Parse(piece.Text, out MacroFault? fault) is not { } program)
        {
            log.Reject(
                GerberCode.MacroSyntax,
                piece.PositionAt(log.File, fault!.Value.Index),
                fault.Value.Found,
                fault.Value.Expected);
            return;
        }

        if (!_macros.TryAdd(program.Name, program))
        {
            log.Warn(
                GerberCode.MacroRedefined, piece.Position(log.File), $"macro {program.Name} again", "one definition");
            _macros[program.Name] = program;
        }
    }

    /// <summary>AD: <c>ADDnn template [, number { X number }]</c>.</summary>
    public void DefineStamp(in Piece piece, double unitNm, string? function)
    {
        SourcePosition position = piece.Position(log.File);
        var cursor = new WordCursor(piece.Text[2..]);
        if (!TryTakeCode(ref cursor, out int code))
        {
            log.Reject(GerberCode.BadAperture, position, GerberLog.Quote(piece.Text), "ADD, a number of 10 or more");
            return;
        }

        ReadOnlySpan<byte> rest = cursor.Rest;
        int comma = rest.IndexOf((byte)',');
        string template = MacroProgram.NameOf(comma < 0 ? rest : rest[..comma]);
        Stamp? stamp = null;
        int parametersAt = 2 + cursor.Index + comma + 1;
        if (TryTakeParameters(piece, comma < 0 ? piece.Text.Length : parametersAt, out List<double> parameters))
        {
            stamp = Shape(template, parameters, unitNm, position);
        }

        if (stamp is null)
        {
            _refused.Add(code);
        }
        else
        {
            Define(code, new StampAperture(stamp, function), position);
        }
    }

    public void Define(int code, Aperture aperture, SourcePosition position)
    {
        if (_apertures.Count >= GerberLimits.MostApertures)
        {
            Refuse(position, "apertures", GerberLimits.MostApertures);
            return;
        }

        if (!_apertures.TryAdd(code, aperture))
        {
            log.Warn(
                GerberCode.ApertureRedefined,
                position,
                string.Create(CultureInfo.InvariantCulture, $"aperture D{code} again"),
                "one definition; the later one counts from here on");
            _apertures[code] = aperture;
        }
    }

    private void Refuse(SourcePosition position, string what, long most)
    {
        IsFull = true;
        log.Reject(
            GerberCode.TooMuch,
            position,
            string.Create(CultureInfo.InvariantCulture, $"more than {most} {what}"),
            string.Create(CultureInfo.InvariantCulture, $"at most {most}"));
    }

    /// <summary>A D code of 10 or more.</summary>
    public static bool TryTakeCode(ref WordCursor cursor, out int code)
    {
        code = 0;
        if (!cursor.TryTake((byte)'D'))
        {
            return false;
        }

        DigitString digits = cursor.TakeDigits();
        code = digits.Count <= 10 && !digits.Signed && digits.Value <= int.MaxValue ? (int)digits.Value : 0;
        return code >= 10;
    }

    private bool TryTakeParameters(in Piece piece, int at, out List<double> parameters)
    {
        parameters = [];
        var cursor = new WordCursor(piece.Text[at..]);
        if (cursor.AtEnd)
        {
            return true;
        }

        do
        {
            if (!cursor.TryTakeDecimal(out double value))
            {
                RejectNumber(piece, at + cursor.Index, cursor);
                return false;
            }

            parameters.Add(value);
        }
        while (cursor.TryTake((byte)'X'));

        if (!cursor.AtEnd)
        {
            RejectNumber(piece, at + cursor.Index, cursor);
            return false;
        }

        return true;
    }

    private void RejectNumber(in Piece piece, int index, WordCursor cursor)
    {
        string found = cursor.AtEnd ? "no number" : GerberLog.Quote(cursor.Rest);
        log.Reject(
            GerberCode.BadNumber, piece.PositionAt(log.File, index), found, "decimal numbers with 'X' between them");
    }

    private Stamp? Shape(string template, List<double> parameters, double unitNm, SourcePosition position)
    {
        Stamp? stamp;
        IReadOnlyList<ApertureRemark> remarks;
        if (template is "C" or "R" or "O" or "P")
        {
            var standard = new StandardApertures(unitNm);
            stamp = standard.Build(template[0], parameters);
            remarks = standard.Remarks;
        }
        else if (_macros.TryGetValue(template, out MacroProgram? program))
        {
            _macroEvaluations += program.Weight;
            if (_macroEvaluations > GerberLimits.MostMacroEvaluations)
            {
                Refuse(position, "numbers and operators to evaluate in macros", GerberLimits.MostMacroEvaluations);
                return null;
            }

            var evaluator = new MacroEvaluator(unitNm);
            stamp = evaluator.Run(program, parameters);
            remarks = evaluator.Remarks;
        }
        else
        {
            log.Reject(
                GerberCode.UnknownMacro,
                position,
                $"aperture template {GerberLog.Quote(Encoding.UTF8.GetBytes(template))}",
                "C, R, O, P or a macro defined above");
            return null;
        }

        foreach (ApertureRemark remark in remarks)
        {
            if (remark.Rejects)
            {
                log.Reject(remark.Code, position, remark.Found, remark.Expected);
            }
            else
            {
                log.Warn(remark.Code, position, remark.Found, remark.Expected);
            }
        }

        if (stamp is { ReachNm: > PointNm.LimitNm })
        {
            log.Reject(GerberCode.OutOfRange, position, "an aperture larger than 10 m", "sizes below 10 m");
            return null;
        }

        return stamp;
    }
}
