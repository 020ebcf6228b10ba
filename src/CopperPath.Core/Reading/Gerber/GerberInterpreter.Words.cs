using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Gerber;

/// <summary>Word commands: G, M and D codes and coordinates.</summary>
internal sealed partial class GerberInterpreter
{
    private CoordinateFormat? _format;
    private long _unitNm;
    private AxisScale _xScale;
    private AxisScale _yScale;
    private bool _incremental;

    private Turn? _interpolation;
    private QuadrantMode _quadrants;
    private int _lastOperation;

    /// <summary>Coordinates of the word being read; null where the word has none.</summary>
    private long? _x, _y, _i, _j;
    private bool _offsetSigned;

    private bool CanReadCoordinates => _format is not null && _unitNm != 0;

    private void TakeWord(in Piece piece)
    {
        var cursor = new WordCursor(piece.Text);
        _x = _y = _i = _j = null;
        _offsetSigned = false;
        bool pending = false;
        while (!cursor.AtEnd)
        {
            int at = cursor.Index;
            byte letter = cursor.Take();
            switch (letter)
            {
                case (byte)'X' or (byte)'Y' or (byte)'I' or (byte)'J':
                    if (!TakeCoordinate(letter, at, ref cursor, piece))
                    {
                        return;
                    }

                    pending = true;
                    break;
                case (byte)'D':
                    if (!TryTakeCode(ref cursor, piece, at, out int d))
                    {
                        return;
                    }

                    if (d is >= 1 and <= 3)
                    {
                        Operate(d, piece);
                        _x = _y = _i = _j = null;
                        pending = false;
                    }
                    else
                    {
                        Select(d, piece, at);
                    }

                    break;
                case (byte)'G':
                    if (!TryTakeCode(ref cursor, piece, at, out int g))
                    {
                        return;
                    }

                    TakeGCode(g, piece, at);
                    break;
                case (byte)'M':
                    if (!TryTakeCode(ref cursor, piece, at, out int m))
                    {
                        return;
                    }

                    TakeMCode(m, piece, at);
                    break;
                case (byte)'N':
                    cursor.TakeDigits();
                    _log.NoteOnce("N", GerberCode.Deprecated, piece.Position(File), "a line number", "none");
                    break;
                default:
                    Unknown(piece.PositionAt(File, at), GerberLog.Quote(piece.Text));
                    return;
            }

            _sawCommand = true;
        }

        if (pending)
        {
            OperateAgain(piece);
        }
    }

    private bool TryTakeCode(ref WordCursor cursor, in Piece piece, int at, out int code)
    {
        DigitString digits = cursor.TakeDigits();
        code = (int)Math.Clamp(digits.Value, 0, int.MaxValue);
        if (digits.Signed || digits.Count is 0 or > 10 || digits.Value > int.MaxValue)
        {
            _log.Reject(
                GerberCode.BadNumber,
                piece.PositionAt(File, at),
                GerberLog.Quote(piece.Text[at..]),
                $"a code number after {(char)piece.Text[at]}");
            return false;
        }

        return true;
    }

    private bool TakeCoordinate(byte letter, int at, ref WordCursor cursor, in Piece piece)
    {
        DigitString digits = cursor.TakeDigits();
        if (digits.Count == 0 || cursor.Peek() == (byte)'.')
        {
            _log.Reject(
                GerberCode.BadNumber,
                piece.PositionAt(File, cursor.Index),
                GerberLog.Quote(piece.Text[at..]),
                $"digits without a decimal point after {(char)letter}");
            return false;
        }

        if (!CanReadCoordinates)
        {
            RejectForMissingFormat(piece.PositionAt(File, at));
            return false;
        }

        bool isX = letter is (byte)'X' or (byte)'I';
        CoordinateFlaw flaw = (isX ? _xScale : _yScale).ToNm(digits, out long nm);
        if (flaw != CoordinateFlaw.None && !TakeCoordinateFlaw(flaw, digits, piece.PositionAt(File, at)))
        {
            return false;
        }

        switch (letter)
        {
            case (byte)'X':
                _x = nm;
                break;
            case (byte)'Y':
                _y = nm;
                break;
            case (byte)'I':
                _i = nm;
                _offsetSigned |= digits.Signed;
                break;
            default:
                _j = nm;
                _offsetSigned |= digits.Signed;
                break;
        }

        return true;
    }

    private bool TakeCoordinateFlaw(CoordinateFlaw flaw, in DigitString digits, SourcePosition position)
    {
        if (flaw == CoordinateFlaw.OutOfRange)
        {
            _log.Reject(GerberCode.OutOfRange, position, "a coordinate beyond 10 m", "coordinates within 10 m");
            return false;
        }

        string found = string.Create(CultureInfo.InvariantCulture, $"a coordinate of {digits.Count} digits");
        if (flaw == CoordinateFlaw.Ambiguous)
        {
            _log.Reject(GerberCode.ExtraDigits, position, found, "no more digits than FS states");
            return false;
        }

        _log.WarnOnce("", GerberCode.ExtraDigits, position, found, "no more digits than FS states");
        return true;
    }

    private void RejectForMissingFormat(SourcePosition position)
    {
        if (_format is null)
        {
            _log.RejectOnce("", GerberCode.FormatMissing, position, "a coordinate before FS", "FS before it");
        }

        if (_unitNm == 0)
        {
            _log.RejectOnce("", GerberCode.UnitMissing, position, "a length before MO", "MOMM or MOIN before it");
        }
    }

    private void TakeGCode(int code, in Piece piece, int at)
    {
        switch (code)
        {
            case 1:
                _interpolation = Turn.Straight;
                break;
            case 2:
                _interpolation = Turn.Clockwise;
                break;
            case 3:
                _interpolation = Turn.CounterClockwise;
                break;
            case 36:
                BeginRegion(piece.Position(File));
                break;
            case 37:
                EndRegion(piece.Position(File));
                break;
            case 54 or 55:
                Deprecated(code, piece, code == 54 ? "D and the aperture alone" : "D03 alone");
                break;
            case 70:
                Deprecated(code, piece, "MOIN");
                SetUnit(LengthUnit.InchNm, piece.Position(File));
                break;
            case 71:
                Deprecated(code, piece, "MOMM");
                SetUnit(LengthUnit.MillimetreNm, piece.Position(File));
                break;
            case 74:
                _quadrants = QuadrantMode.Single;
                break;
            case 75:
                _quadrants = QuadrantMode.Multi;
                break;
            case 90 or 91:
                Deprecated(code, piece, "A or I in FS");
                _incremental = code == 91;
                break;
            default:
                Unknown(
                    piece.PositionAt(File, at), string.Create(CultureInfo.InvariantCulture, $"G{code:00}"));
                break;
        }
    }

    private void TakeMCode(int code, in Piece piece, int at)
    {
        switch (code)
        {
            case 0 or 2:
                HasEnded = true;
                if (code == 0)
                {
                    _log.NoteOnce("M00", GerberCode.Deprecated, piece.Position(File), "M00", "M02");
                }

                break;
            case 1:
                _log.NoteOnce("M01", GerberCode.Deprecated, piece.Position(File), "M01", "no such command");
                break;
            default:
                Unknown(
                    piece.PositionAt(File, at), string.Create(CultureInfo.InvariantCulture, $"M{code:00}"));
                break;
        }
    }

    private void Deprecated(int code, in Piece piece, string expected)
    {
        string name = string.Create(CultureInfo.InvariantCulture, $"G{code:00}");
        _log.NoteOnce(name, GerberCode.Deprecated, piece.Position(File), name, expected);
    }

    /// <summary>An unknown command may change anything after it: copper can not be trusted any more.</summary>
    private void Unknown(SourcePosition position, string found)
    {
        if (_options.PurposeIsCopper)
        {
            _log.Reject(GerberCode.UnknownCommand, position, found, "a Gerber command");
        }
        else
        {
            _log.Warn(GerberCode.UnknownCommand, position, found, "a Gerber command; it is passed over");
        }
    }

    private void SetUnit(long unitNm, SourcePosition position)
    {
        if (_unitNm != 0 && _unitNm != unitNm)
        {
            _log.Warn(
                GerberCode.MixedFormat, position, "another unit than before", "one unit; it counts from here on");
        }

        _unitNm = unitNm;
        UpdateScales();
    }

    private void SetFormat(CoordinateFormat format)
    {
        _format = format;
        _incremental = format.Incremental;
        UpdateScales();
    }

    private void UpdateScales()
    {
        if (CanReadCoordinates)
        {
            _xScale = new AxisScale(_format!.XIntegers, _format.XDecimals, _format.Zeros, _unitNm);
            _yScale = new AxisScale(_format.YIntegers, _format.YDecimals, _format.Zeros, _unitNm);
        }
    }
}
