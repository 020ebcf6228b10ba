using CopperPath.Artwork;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Gerber;

/// <summary>What stands between two delimiters of a Gerber file.</summary>
internal enum PieceKind
{
    /// <summary>A word command, its <c>*</c> cut off.</summary>
    Word,

    /// <summary>The text of a <c>G04</c> comment.</summary>
    Comment,

    /// <summary>One block between <c>%</c> signs, its <c>*</c> cut off.</summary>
    Extended,

    /// <summary>A whole <c>AM</c> command up to the closing <c>%</c>, inner <c>*</c> kept.</summary>
    Macro,
}

/// <summary>What was wrong with the delimiters of a piece.</summary>
internal enum PieceFlaw
{
    None,

    /// <summary>The file ended before the closing sign.</summary>
    EndOfFile,

    /// <summary>A <c>%</c> stood where <c>*</c> was due.</summary>
    PercentInsteadOfStar,
}

/// <summary>One command, with the place of its first character.</summary>
internal readonly ref struct Piece(
    PieceKind kind, PieceFlaw flaw, ReadOnlySpan<byte> text, int line, int column)
{
    public PieceKind Kind { get; } = kind;

    public PieceFlaw Flaw { get; } = flaw;

    public ReadOnlySpan<byte> Text { get; } = text;

    public int Line { get; } = line;

    public int Column { get; } = column;

    /// <summary>The place of a character of the text, line breaks inside the command counted.</summary>
    public SourcePosition PositionAt(string file, int index)
    {
        int line = Line;
        int column = Column;
        ReadOnlySpan<byte> before = Text[..Math.Min(index, Text.Length)];
        for (int i = 0; i < before.Length; i++)
        {
            if (LineBreaks.EndsLine(Text, i))
            {
                line++;
                column = 1;
            }
            else
            {
                column++;
            }
        }

        return new SourcePosition(file, line, column);
    }

    public SourcePosition Position(string file) => new(file, Line, Column);

    public DrawSpot Spot => new(Line, Column);
}

/// <summary>LF, CR and CR LF each end one line.</summary>
internal static class LineBreaks
{
    public static bool EndsLine(ReadOnlySpan<byte> text, int index) => text[index] switch
    {
        (byte)'\n' => true,
        (byte)'\r' => index + 1 == text.Length || text[index + 1] != (byte)'\n',
        _ => false,
    };
}

/// <summary>Cuts a Gerber file into commands without copying.</summary>
internal ref struct GerberLexer
{
    private readonly ReadOnlySpan<byte> _bytes;
    private int _index;
    private int _line = 1;
    private int _lineStart;
    private bool _inPercent;
    private int _percentLine;
    private int _percentColumn;

    public GerberLexer(ReadOnlySpan<byte> bytes)
    {
        _bytes = bytes;
        if (bytes.StartsWith("\uFEFF"u8))
        {
            _index = _lineStart = 3;
        }
    }

    /// <summary>The place of the <c>%</c> that was never closed, once the file has ended; else line 0.</summary>
    public readonly (int Line, int Column) OpenPercent => _inPercent ? (_percentLine, _percentColumn) : (0, 0);

    /// <summary>True where an extended command comes next.</summary>
    public readonly bool InPercent => _inPercent;

    /// <summary>What was not taken yet.</summary>
    public readonly ReadOnlySpan<byte> Rest => _bytes[_index..];

    /// <summary>Passes over blanks, line breaks and percent signs to the next command; false at the end.</summary>
    public bool TryFindNext()
    {
        while (_index < _bytes.Length)
        {
            byte b = _bytes[_index];
            if (b == (byte)'%')
            {
                _inPercent = !_inPercent;
                (_percentLine, _percentColumn) = (_line, Column);
                _index++;
            }
            else if (b <= (byte)' ')
            {
                SkipCounting();
            }
            else
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Takes the command found.</summary>
    public Piece Next() => _inPercent ? NextExtended() : NextWord();

    /// <summary>Takes a word of known length, without its <c>*</c>, that holds no line break.</summary>
    public Piece TakePlain(int length)
    {
        var piece = new Piece(PieceKind.Word, PieceFlaw.None, _bytes.Slice(_index, length), _line, Column);
        _index += length + 1;
        return piece;
    }

    private readonly int Column => _index - _lineStart + 1;

    private Piece NextWord()
    {
        bool isComment = IsComment(_bytes[_index..]);
        return isComment
            ? Cut(PieceKind.Comment, (byte)'*', (byte)'*')
            : Cut(PieceKind.Word, (byte)'*', (byte)'%');
    }

    private Piece NextExtended() => _bytes[_index..].StartsWith("AM"u8)
        ? Cut(PieceKind.Macro, (byte)'%', (byte)'%')
        : Cut(PieceKind.Extended, (byte)'*', (byte)'%');

    /// <summary>Takes text up to <paramref name="end"/>; stops early, with a flaw, at <paramref name="wrong"/>.</summary>
    private Piece Cut(PieceKind kind, byte end, byte wrong)
    {
        int start = _index;
        int line = _line;
        int column = Column;
        PieceFlaw flaw = PieceFlaw.EndOfFile;
        while (_index < _bytes.Length)
        {
            int length = _bytes[_index..].IndexOfAny([end, wrong, (byte)'\n', (byte)'\r']);
            if (length < 0)
            {
                _index = _bytes.Length;
                break;
            }

            _index += length;
            byte b = _bytes[_index];
            if (b == end || b == wrong)
            {
                flaw = b == end ? PieceFlaw.None : PieceFlaw.PercentInsteadOfStar;
                break;
            }

            SkipCounting();
        }

        ReadOnlySpan<byte> text = _bytes[start.._index];
        if (flaw == PieceFlaw.None && end != (byte)'%')
        {
            _index++;
        }

        return new Piece(kind, flaw, text, line, column);
    }

    private void SkipCounting()
    {
        bool endsLine = LineBreaks.EndsLine(_bytes, _index);
        _index++;
        if (endsLine)
        {
            _line++;
            _lineStart = _index;
        }
    }

    /// <summary>G04, also written G4 or G004, not followed by a further digit.</summary>
    private static bool IsComment(ReadOnlySpan<byte> text)
    {
        if (text[0] != (byte)'G')
        {
            return false;
        }

        int i = 1;
        while (i < text.Length && text[i] == (byte)'0')
        {
            i++;
        }

        return i < text.Length && text[i] == (byte)'4'
            && (i + 1 == text.Length || !char.IsAsciiDigit((char)text[i + 1]));
    }
}
