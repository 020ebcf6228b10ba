using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Reading.Gerber;

/// <summary>Extended commands: the blocks between percent signs.</summary>
internal sealed partial class GerberInterpreter
{
    private readonly Stack<(BlockAperture Block, int Code, SourcePosition Position)> _openBlocks = [];

    /// <summary>Where operations go: the image, the body of a repeat or the innermost open block.</summary>
    private Drawing _drawing;
    private StepAndRepeat? _repeat;

    private Polarity _polarity = Polarity.Dark;
    private (bool FlipX, bool FlipY) _mirror;
    private double _rotationDeg;
    private double _scale = 1;
    private Similarity _similarity = Similarity.Identity;

    /// <summary>A step-and-repeat that is open, and what was drawn in it.</summary>
    private sealed record StepAndRepeat(int CountX, int CountY, PointNm Step, SourcePosition Position)
    {
        public Drawing Body { get; } = new();
    }

    private void TakeExtended(in Piece piece)
    {
        SourcePosition position = piece.Position(File);
        ReadOnlySpan<byte> code = piece.Text[..Math.Min(2, piece.Text.Length)];
        if (_inRegion && IsForbiddenInRegion(code))
        {
            _log.Reject(GerberCode.NotInRegion, position, $"{GerberLog.Quote(piece.Text)} in a region", "G37 before it");
        }
        else if (_inRegion && code is [(byte)'A', (byte)'D'])
        {
            _log.Warn(
                GerberCode.NotInRegion, position, $"{GerberLog.Quote(piece.Text)} in a region", "apertures defined outside regions");
        }

        bool known = code switch
        {
            [(byte)'F', (byte)'S'] => Format(piece, position),
            [(byte)'M', (byte)'O'] => Unit(piece, position),
            [(byte)'A', (byte)'D'] => Aperture(piece, position),
            [(byte)'A', (byte)'B'] => Block(piece, position),
            [(byte)'L', (byte)'P' or (byte)'M' or (byte)'R' or (byte)'S'] => Graphics(piece, position),
            [(byte)'S', (byte)'R'] => Repeat(piece, position),
            [(byte)'T', (byte)'F' or (byte)'A' or (byte)'O' or (byte)'D'] => Attribute(piece, position),
            [(byte)'I', (byte)'P'] => ImagePolarity(piece, position),
            [(byte)'I' or (byte)'L', (byte)'N'] => Name(position),
            _ => OldImageCommand(code, piece, position),
        };
        if (!known)
        {
            Unknown(position, GerberLog.Quote(piece.Text));
        }

        _sawCommand |= known;
    }

    private static bool IsForbiddenInRegion(ReadOnlySpan<byte> code) => code switch
    {
        [(byte)'L', (byte)'P' or (byte)'M' or (byte)'R' or (byte)'S'] => true,
        [(byte)'S', (byte)'R'] or [(byte)'A', (byte)'B'] => true,
        _ => false,
    };

    /// <summary>FS (L|T|D)(A|I) X nm Y nm; old N, G, D and M fields are passed over.</summary>
    private bool Format(in Piece piece, SourcePosition position)
    {
        var cursor = new WordCursor(piece.Text[2..]);
        byte zeros = cursor.Take();
        byte notation = cursor.Take();
        int x = -1;
        int y = -1;
        bool fits = zeros is (byte)'L' or (byte)'T' or (byte)'D' && notation is (byte)'A' or (byte)'I';
        while (fits && !cursor.AtEnd)
        {
            byte field = cursor.Take();
            DigitString digits = cursor.TakeDigits();
            switch (field)
            {
                case (byte)'X' when digits is { Count: 2, Signed: false }:
                    x = (int)digits.Value;
                    break;
                case (byte)'Y' when digits is { Count: 2, Signed: false }:
                    y = (int)digits.Value;
                    break;
                default:
                    fits = field is (byte)'N' or (byte)'G' or (byte)'D' or (byte)'M' && digits.Count > 0;
                    break;
            }
        }

        if (!fits || !IsPlaces(x) || !IsPlaces(y))
        {
            Bad(piece, position, "FSLAXnmYnm with n and m from 0 to 7");
            return true;
        }

        if (zeros != (byte)'L' || notation != (byte)'A')
        {
            _log.NoteOnce("FS", GerberCode.Deprecated, position, GerberLog.Quote(piece.Text), "FSLA");
        }

        var format = new CoordinateFormat(
            zeros == (byte)'T' ? ZeroOmission.Trailing : ZeroOmission.Leading,
            notation == (byte)'I',
            x / 10,
            x % 10,
            y / 10,
            y % 10);
        if (x != y)
        {
            _log.Warn(GerberCode.MixedFormat, position, "different formats of x and y", "one; each is used as stated");
        }

        if (_format is not null && _format != format)
        {
            _log.Warn(GerberCode.MixedFormat, position, "another FS than before", "one FS; it counts from here on");
        }

        SetFormat(format);
        return true;
    }

    private static bool IsPlaces(int places) => places > 0 && places / 10 <= 7 && places % 10 <= 7;

    private bool Unit(in Piece piece, SourcePosition position)
    {
        string unit = MacroProgram.NameOf(piece.Text[2..]);
        if (unit is "MM" or "IN")
        {
            SetUnit(unit == "MM" ? LengthUnit.MillimetreNm : LengthUnit.InchNm, position);
        }
        else
        {
            Bad(piece, position, "MOMM or MOIN");
        }

        return true;
    }

    private bool Aperture(in Piece piece, SourcePosition position)
    {
        if (_unitNm == 0)
        {
            _log.RejectOnce("", GerberCode.UnitMissing, position, "an aperture before MO", "MOMM or MOIN before it");
            return true;
        }

        _apertures.DefineStamp(piece, _unitNm, _attributes.ApertureFunction);
        return true;
    }

    /// <summary>AB Dnn opens a block; AB alone closes the innermost.</summary>
    private bool Block(in Piece piece, SourcePosition position)
    {
        var cursor = new WordCursor(piece.Text[2..]);
        if (cursor.AtEnd)
        {
            CloseBlock(position);
        }
        else if (!ApertureDictionary.TryTakeCode(ref cursor, out int code) || !cursor.AtEnd)
        {
            Bad(piece, position, "ABDnn with nn of 10 or more, or AB");
        }
        else if (_openBlocks.Count == GerberLimits.DeepestBlocks)
        {
            RefuseDeepBlocks(position);
        }
        else
        {
            var block = new BlockAperture(_attributes.ApertureFunction);
            _openBlocks.Push((block, code, position));
            _drawing = block.Drawing;
        }

        return true;
    }

    private void CloseBlock(SourcePosition position)
    {
        if (!_openBlocks.TryPop(out (BlockAperture Block, int Code, SourcePosition) open))
        {
            _log.Reject(GerberCode.BlockPairing, position, "AB with no block open", "ABDnn before it");
            return;
        }

        _drawing = _openBlocks.TryPeek(out (BlockAperture Block, int, SourcePosition) outer)
            ? outer.Block.Drawing
            : _repeat?.Body ?? _image;
        _apertures.Define(open.Code, open.Block, position);
        _pointKnown = false;
    }

    private bool Graphics(in Piece piece, SourcePosition position)
    {
        string value = MacroProgram.NameOf(piece.Text[2..]);
        var cursor = new WordCursor(piece.Text[2..]);
        switch ((char)piece.Text[1], value)
        {
            case ('P', "D"):
                _polarity = Polarity.Dark;
                break;
            case ('P', "C"):
                _polarity = Polarity.Clear;
                break;
            case ('M', "N" or "X" or "Y" or "XY"):
                _mirror = (value.Contains('X', StringComparison.Ordinal), value.Contains('Y', StringComparison.Ordinal));
                break;
            case ('R', _) when cursor.TryTakeDecimal(out double degrees) && cursor.AtEnd:
                _rotationDeg = degrees;
                break;
            case ('S', _) when cursor.TryTakeDecimal(out double factor) && cursor.AtEnd && factor is > 0 and < 1e9:
                _scale = factor;
                break;
            default:
                Bad(piece, position, "LPD, LPC, LMN, LMX, LMY, LMXY, LR with an angle or LS with a factor above 0");
                break;
        }

        _similarity = Similarity.Of(_mirror.FlipX, _mirror.FlipY, _rotationDeg, _scale);
        ForgetStyles();
        return true;
    }

    /// <summary>SR X n Y n I step J step opens; SR alone, or a new SR, closes the one before.</summary>
    private bool Repeat(in Piece piece, SourcePosition position)
    {
        if (_openBlocks.Count > 0)
        {
            _log.Reject(GerberCode.StepAndRepeat, position, "SR inside a block", "SR outside AB only");
            return true;
        }

        if (_repeat is not null)
        {
            CloseRepeat();
        }

        var cursor = new WordCursor(piece.Text[2..]);
        double countX = 1, countY = 1, stepX = 0, stepY = 0;
        while (!cursor.AtEnd)
        {
            byte field = cursor.Take();
            bool isNumber = cursor.TryTakeDecimal(out double value);
            switch (field)
            {
                case (byte)'X' when isNumber:
                    countX = value;
                    break;
                case (byte)'Y' when isNumber:
                    countY = value;
                    break;
                case (byte)'I' when isNumber:
                    stepX = value;
                    break;
                case (byte)'J' when isNumber:
                    stepY = value;
                    break;
                default:
                    Bad(piece, position, "SRXnYnInJn or SR");
                    return true;
            }
        }

        OpenRepeat(piece, position, countX, countY, stepX, stepY);
        return true;
    }

    private void OpenRepeat(
        in Piece piece, SourcePosition position, double countX, double countY, double stepX, double stepY)
    {
        if (!IsCount(countX) || !IsCount(countY) || stepX < 0 || stepY < 0)
        {
            Bad(piece, position, "whole counts from 1 to 1e9 and steps of 0 or more");
            return;
        }

        if (countX == 1 && countY == 1)
        {
            return;
        }

        if (_unitNm == 0)
        {
            RejectForMissingFormat(position);
            return;
        }

        if (stepX * _unitNm > PointNm.LimitNm || stepY * _unitNm > PointNm.LimitNm)
        {
            _log.Reject(GerberCode.OutOfRange, position, "a step beyond 10 m", "steps within 10 m");
            return;
        }

        PointNm step = (_unitNm * new Vector(stepX, stepY)).Rounded();
        _repeat = new StepAndRepeat((int)countX, (int)countY, step, position);
        _drawing = _repeat.Body;
    }

    private static bool IsCount(double value) => value is >= 1 and <= 1e9 && value == Math.Floor(value);

    /// <summary>Puts the copies down: y runs first, then x; each copy is the whole body in order.</summary>
    private void CloseRepeat()
    {
        StepAndRepeat repeat = _repeat!;
        _repeat = null;
        _drawing = _image;
        _pointKnown = false;
        var body = new RepeatedBody(repeat.Body, repeat.CountX, repeat.CountY, repeat.Step);
        if (body.Drawing.ObjectCount == 0)
        {
            return;
        }

        if ((double)body.Copies * body.Drawing.ObjectCount > _options.MaximumObjects)
        {
            Refuse(
                repeat.Position,
                string.Create(CultureInfo.InvariantCulture, $"{body.Copies} copies of {body.Drawing.ObjectCount} objects"),
                string.Create(CultureInfo.InvariantCulture, $"at most {_options.MaximumObjects} objects"));
            return;
        }

        var style = new DrawStyle(body, Similarity.Identity, Polarity.Dark, ObjectLabels.None);
        _image.AddFlash(style, default, new DrawSpot(repeat.Position.Line, repeat.Position.Column));
        RefuseTooManyObjects(repeat.Position);
    }

    private bool Attribute(in Piece piece, SourcePosition position)
    {
        _attributes.Take(piece.Text, position);
        ForgetStyles();
        return true;
    }

    private bool ImagePolarity(in Piece piece, SourcePosition position)
    {
        switch (MacroProgram.NameOf(piece.Text[2..]))
        {
            case "POS":
                _log.NoteOnce("IP", GerberCode.Deprecated, position, "IPPOS", "no such command");
                break;
            case "NEG" when _options.PurposeIsCopper:
                _log.Reject(GerberCode.NegativeImage, position, "IPNEG", "a positive image: the area to invert is not stated");
                break;
            case "NEG":
                _log.Warn(GerberCode.NegativeImage, position, "IPNEG", "a positive image; it is not inverted here");
                break;
            default:
                Bad(piece, position, "IPPOS or IPNEG");
                break;
        }

        return true;
    }

    private bool Name(SourcePosition position)
    {
        _log.NoteOnce("IN", GerberCode.Deprecated, position, "an image or layer name", "no such command");
        return true;
    }

    /// <summary>
    /// Commands of old files that move, turn or replace the whole image. Their neutral forms are passed over with a
    /// note; any other form would need a guess and is refused.
    /// </summary>
    private bool OldImageCommand(ReadOnlySpan<byte> code, in Piece piece, SourcePosition position)
    {
        string text = MacroProgram.NameOf(piece.Text);
        bool? neutral = text[..Math.Min(2, text.Length)] switch
        {
            "AS" => text == "ASAXBY",
            "IC" => text == "ICAS",
            "IR" or "MI" or "OF" => IsNeutral(piece.Text[2..], 0),
            "SF" => IsNeutral(piece.Text[2..], 1),
            "IF" or "IJ" or "IO" or "KO" or "RO" or "PF" => false,
            _ => null,
        };
        if (neutral == true)
        {
            _log.NoteOnce(text[..2], GerberCode.Deprecated, position, text, "no such command");
        }
        else if (neutral == false)
        {
            _log.Reject(
                GerberCode.UnsupportedCommand, position, GerberLog.Quote(piece.Text), $"no {text[..2]} that changes the image");
        }

        return neutral is not null;
    }

    /// <summary>True when every number of the text, with or without a letter before it, has the given value.</summary>
    private static bool IsNeutral(ReadOnlySpan<byte> text, double neutral)
    {
        var cursor = new WordCursor(text);
        while (!cursor.AtEnd)
        {
            if (cursor.Peek() is (byte)'A' or (byte)'B')
            {
                cursor.Take();
            }

            if (!cursor.TryTakeDecimal(out double value) || value != neutral)
            {
                return false;
            }
        }

        return true;
    }

    private void Bad(in Piece piece, SourcePosition position, string expected) =>
        _log.Reject(GerberCode.BadCommand, position, GerberLog.Quote(piece.Text), expected);

    private void RefuseDeepBlocks(SourcePosition position) => Refuse(
        position,
        string.Create(CultureInfo.InvariantCulture, $"blocks nested more than {GerberLimits.DeepestBlocks} deep"),
        string.Create(CultureInfo.InvariantCulture, $"at most {GerberLimits.DeepestBlocks}"));

    /// <summary>A limit was met: the file is refused and reading stops.</summary>
    private void Refuse(SourcePosition position, string found, string expected)
    {
        _log.Reject(GerberCode.TooMuch, position, found, expected);
        HasEnded = _limitMet = true;
    }
}
