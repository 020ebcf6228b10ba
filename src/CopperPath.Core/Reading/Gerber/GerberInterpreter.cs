using CopperPath.Artwork;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Gerber;

/// <summary>
/// Executes commands in file order: keeps the graphics state and adds draw operations to the image, or to the block
/// or repeat being recorded. This part holds the state and the file's frame; words, extended commands and drawing
/// have a part each.
/// </summary>
internal sealed partial class GerberInterpreter
{
    private readonly GerberReadOptions _options;
    private readonly GerberLog _log;
    private readonly AttributeDictionary _attributes;
    private readonly ApertureDictionary _apertures;
    private readonly Drawing _image = new();
    private bool _sawCommand;
    private bool _limitMet;

    public GerberInterpreter(string file, GerberReadOptions options)
    {
        _options = options;
        _log = new GerberLog(file);
        _attributes = new AttributeDictionary(_log);
        _apertures = new ApertureDictionary(_log);
        _drawing = _image;
    }

    /// <summary>True after M02, and after a limit was met: nothing more is read.</summary>
    public bool HasEnded
    {
        get => field || _apertures.IsFull;
        private set;
    }

    private string File => _log.File;

    public void Take(in Piece piece)
    {
        if (piece.Flaw != PieceFlaw.None && !TakeFlaw(piece))
        {
            return;
        }

        switch (piece.Kind)
        {
            case PieceKind.Word:
                TakeWord(piece);
                break;
            case PieceKind.Comment:
                TakeComment(piece);
                break;
            case PieceKind.Extended:
                TakeExtended(piece);
                break;
            default:
                _sawCommand = true;
                _apertures.DefineMacro(piece);
                break;
        }
    }

    public ParsedGerber Finish((int Line, int Column) openPercent)
    {
        if (openPercent.Line > 0 && !HasEnded)
        {
            _log.Reject(
                GerberCode.Unterminated,
                new SourcePosition(File, openPercent.Line, openPercent.Column),
                "'%' that is never closed",
                "'%' after the last '*'");
        }

        if (!_sawCommand)
        {
            _log.Reject(
                GerberCode.NotGerber, SourcePosition.WholeFile(File), "no Gerber command", "a Gerber RS-274X file");
            return new ParsedGerber(_image, _attributes.File, _options, _log);
        }

        if (!_limitMet && !_apertures.IsFull)
        {
            CloseWhatIsOpen();
        }

        if (!HasEnded)
        {
            // Cut off between two commands a file reads like a whole one, so the missing end is all that tells.
            _log.Warn(
                GerberCode.NoEnd, SourcePosition.WholeFile(File), "no M02", "M02 at the end; the file may be cut off",
                affectsCopper: _options.PurposeIsCopper);
        }

        RemarkOnNegativeCopper();
        return new ParsedGerber(_image, _attributes.File, _options, _log);
    }

    /// <summary>
    /// Says what stands behind the end. The format has nothing there, so the end may be misplaced or two files may have
    /// been joined; comments and a second end change nothing.
    /// </summary>
    /// <returns>False when no more of it need be looked at.</returns>
    public bool TakeAfterEnd(in Piece piece)
    {
        if (_limitMet || _apertures.IsFull)
        {
            return false;
        }

        if (piece.Kind == PieceKind.Comment
            || piece.Text.Trim(" \t\r\n\u001A\0"u8) is [] or [(byte)'M', (byte)'0', (byte)'0' or (byte)'2'])
        {
            return true;
        }

        _log.Warn(
            GerberCode.AfterEnd, piece.Position(File), $"{GerberLog.Quote(piece.Text)} after the end of the file",
            "nothing after M02; the rest is not read", affectsCopper: _options.PurposeIsCopper);
        return false;
    }

    /// <summary>Deals with wrong delimiters; true when the command is still clear.</summary>
    private bool TakeFlaw(in Piece piece)
    {
        bool isEndOfFile = piece.Flaw == PieceFlaw.EndOfFile;
        if (piece.Kind == PieceKind.Comment)
        {
            return false;
        }

        if (piece.Kind == PieceKind.Extended && !isEndOfFile)
        {
            _log.Warn(
                GerberCode.Unterminated,
                piece.PositionAt(File, piece.Text.Length),
                $"'%' after {GerberLog.Quote(piece.Text)}",
                "'*' before '%'");
            return true;
        }

        if (piece.Kind == PieceKind.Word)
        {
            if (isEndOfFile && piece.Text.TrimEnd(" \t\r\n\u001A\0"u8).SequenceEqual("M02"u8))
            {
                _log.Warn(GerberCode.Unterminated, piece.Position(File), "M02 without '*'", "M02*");
                HasEnded = true;
                return false;
            }

            _log.Reject(
                GerberCode.Unterminated,
                piece.PositionAt(File, piece.Text.Length),
                $"{(isEndOfFile ? "the end of the file" : "'%'")} after {GerberLog.Quote(piece.Text)}",
                "'*'");
        }

        return false;
    }

    private void TakeComment(in Piece piece)
    {
        _sawCommand = true;
        int text = piece.Text.IndexOf((byte)'4') + 1;
        if (AttributeText.TryFindInComment(piece.Text[text..], out int attribute))
        {
            _attributes.Take(piece.Text[(text + attribute)..], piece.Position(File));
            ForgetStyles();
        }
    }

    private void CloseWhatIsOpen()
    {
        if (_inRegion)
        {
            _log.Reject(GerberCode.RegionPairing, _regionPosition, "G36 that no G37 closes", "G37 before the end");
        }

        if (_openBlocks.Count > 0)
        {
            _log.Reject(
                GerberCode.BlockPairing, _openBlocks.Peek().Position, "a block that no AB closes", "%AB*% before the end");
        }
        else if (_repeat is { } repeat)
        {
            _log.Warn(
                GerberCode.StepAndRepeat,
                repeat.Position,
                "step and repeat left open at the end",
                "%SR*%; it is repeated as if closed there");
            CloseRepeat();
        }
    }

    /// <summary>
    /// Negative is normal for a solder mask; on copper the drawing shows where there is none. The image is kept as
    /// drawn: only where copper is built is the board outline known, inside which it can be inverted.
    /// </summary>
    private void RemarkOnNegativeCopper()
    {
        bool saysOtherwise = _attributes.File.TryGetValue(".FileFunction", out IReadOnlyList<string>? function)
            && function is [not "Copper", ..];
        if (_options.PurposeIsCopper
            && !saysOtherwise
            && _attributes.File.TryGetValue(".FilePolarity", out IReadOnlyList<string>? polarity)
            && polarity.Count > 0
            && polarity[0].Equals("Negative", StringComparison.OrdinalIgnoreCase))
        {
            _log.Add(new Diagnostic(
                GerberCode.NegativeCopper,
                Severity.Note,
                SourcePosition.WholeFile(File),
                "file polarity Negative",
                "Positive; the image shows where there is no copper, and copper is what it leaves inside the board outline"));
        }
    }
}
