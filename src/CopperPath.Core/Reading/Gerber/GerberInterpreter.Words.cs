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

    /// <summary>True once both format and unit are known.</summary>
    private bool _canReadCoordinates;

    /// <summary>Coordinates of the word being read.</summary>
    private WrittenPoint _written;

    /// <summary>Takes the next word when it is a plain operation; false leaves it to <see cref="Take"/>.</summary>
    public bool TryTakeOperation(ref GerberLexer lexer)
    {
        if (!_canReadCoordinates
            || !PlainOperation.TryRead(lexer.Rest, _xScale, _yScale, out _written, out int code, out int length))
        {
            return false;
        }

        _sawCommand = true;
        Operate(code, lexer.TakePlain(length));
        return true;
    }

    private void TakeWord(in Piece piece)
    {
        var cursor = new WordCursor(piece.Text);
        _written = default;
        bool pending = false;
        while (cursor.TryTakeLetter(out byte letter))
        {
            int at = cursor.Index - 1;
            DigitString digits = cursor.TakeDigits();
            switch (letter)
            {
                case (byte)'X' or (byte)'Y' or (byte)'I' or (byte)'J':
                    if (!TakeCoordinate(letter, digits, at, cursor, piece))
                    {
                        return;
                    }

                    pending = true;
                    break;
                case (byte)'D' or (byte)'G' or (byte)'M':
                    if (!IsCode(digits, at, piece))
                    {
                        return;
                    }

                    pending &= !TakeCode(letter, (int)digits.Value, at, piece);
                    break;
                case (byte)'N':
                    NoteDeprecated('N', 0, piece, "a line number", "none");
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

    private bool IsCode(in DigitString digits, int at, in Piece piece)
    {
        if (!digits.Signed && digits.Count is > 0 and <= 10 && digits.Value <= int.MaxValue)
        {
            return true;
        }

        _log.Reject(
            GerberCode.BadNumber,
            piece.PositionAt(File, at),
            GerberLog.Quote(piece.Text[at..]),
            $"a code number after {(char)piece.Text[at]}");
        return false;
    }

    /// <summary>Executes a D, G or M code; true when it used up the coordinates before it.</summary>
    private bool TakeCode(byte letter, int code, int at, in Piece piece)
    {
        switch (letter)
        {
            case (byte)'D' when code is >= 1 and <= 3:
                Operate(code, piece);
                _written = default;
                return true;
            case (byte)'D':
                Select(code, piece, at);
                return false;
            case (byte)'G':
                TakeGCode(code, piece, at);
                return false;
            default:
                TakeMCode(code, piece, at);
                return false;
        }
    }

    private bool TakeCoordinate(byte letter, in DigitString digits, int at, WordCursor cursor, in Piece piece)
    {
        if (digits.Count == 0 || cursor.Peek() == (byte)'.')
        {
            _log.Reject(
                GerberCode.BadNumber,
                piece.PositionAt(File, cursor.Index),
                GerberLog.Quote(piece.Text[at..]),
                $"digits without a decimal point after {(char)letter}");
            return false;
        }

        if (!_canReadCoordinates)
        {
            RejectForMissingFormat(piece.PositionAt(File, at));
            return false;
        }

        bool isX = letter is (byte)'X' or (byte)'I';
        CoordinateFlaw flaw = (isX ? ref _xScale : ref _yScale).ToNm(digits, out long nm);
        if (flaw != CoordinateFlaw.None && !TakeCoordinateFlaw(flaw, digits, at, piece))
        {
            return false;
        }

        _written.Set(letter, nm, digits.Signed);
        return true;
    }

    private bool TakeCoordinateFlaw(CoordinateFlaw flaw, in DigitString digits, int at, in Piece piece)
    {
        if (flaw == CoordinateFlaw.ExtraDigits && !_log.IsFirst(GerberCode.ExtraDigits))
        {
            return true;
        }

        SourcePosition position = piece.PositionAt(File, at);
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

        _log.Warn(GerberCode.ExtraDigits, position, found, "no more digits than FS states");
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
                NoteDeprecated('G', code, piece, null, code == 54 ? "D and the aperture alone" : "D03 alone");
                break;
            case 70:
                NoteDeprecated('G', code, piece, null, "MOIN");
                SetUnit(LengthUnit.InchNm, piece.Position(File));
                break;
            case 71:
                NoteDeprecated('G', code, piece, null, "MOMM");
                SetUnit(LengthUnit.MillimetreNm, piece.Position(File));
                break;
            case 74:
                _quadrants = QuadrantMode.Single;
                break;
            case 75:
                _quadrants = QuadrantMode.Multi;
                break;
            case 90 or 91:
                NoteDeprecated('G', code, piece, null, "A or I in FS");
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
                    NoteDeprecated('M', 0, piece, null, "M02");
                }

                break;
            case 1:
                NoteDeprecated('M', 1, piece, null, "no such command");
                break;
            default:
                Unknown(
                    piece.PositionAt(File, at), string.Create(CultureInfo.InvariantCulture, $"M{code:00}"));
                break;
        }
    }

    /// <summary>Notes a deprecated word the first time it is met; some files hold one in every line.</summary>
    private void NoteDeprecated(char letter, int code, in Piece piece, string? found, string expected)
    {
        if (_log.IsFirst(GerberCode.Deprecated, (letter << 16) + code))
        {
            found ??= string.Create(CultureInfo.InvariantCulture, $"{letter}{code:00}");
            _log.Note(GerberCode.Deprecated, piece.Position(File), found, expected);
        }
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
        _canReadCoordinates = _format is not null && _unitNm != 0;
        if (_canReadCoordinates)
        {
            _xScale = new AxisScale(_format!.XIntegers, _format.XDecimals, _format.Zeros, _unitNm);
            _yScale = new AxisScale(_format.YIntegers, _format.YDecimals, _format.Zeros, _unitNm);
        }
    }
}
