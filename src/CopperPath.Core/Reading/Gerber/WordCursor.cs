namespace CopperPath.Reading.Gerber;

/// <summary>Reads letters and numbers of one command; blanks and line breaks between characters mean nothing.</summary>
internal ref struct WordCursor(ReadOnlySpan<byte> text)
{
    private readonly ReadOnlySpan<byte> _text = text;
    private int _index;

    /// <summary>Index of the next unread character.</summary>
    public readonly int Index => _index;

    public readonly ReadOnlySpan<byte> Rest => _text[_index..];

    public bool AtEnd
    {
        get
        {
            SkipBlanks();
            return _index == _text.Length;
        }
    }

    /// <summary>The next character without taking it; 0 at the end.</summary>
    public byte Peek() => AtEnd ? (byte)0 : _text[_index];

    public byte Take()
    {
        byte b = Peek();
        _index += b == 0 ? 0 : 1;
        return b;
    }

    /// <summary>The next character that is no blank; false at the end.</summary>
    public bool TryTakeLetter(out byte letter)
    {
        ReadOnlySpan<byte> text = _text;
        int index = _index;
        while (index < text.Length)
        {
            letter = text[index++];
            if (letter > (byte)' ')
            {
                _index = index;
                return true;
            }
        }

        _index = index;
        letter = 0;
        return false;
    }

    public bool TryTake(byte wanted)
    {
        if (Peek() != wanted)
        {
            return false;
        }

        _index++;
        return true;
    }

    /// <summary>Sign and digits. Values of more than 18 digits come back with the digit count only.</summary>
    public DigitString TakeDigits()
    {
        ReadOnlySpan<byte> text = _text;
        int index = _index;
        while (index < text.Length && text[index] <= (byte)' ')
        {
            index++;
        }

        bool negative = false;
        bool signed = false;
        if (index < text.Length && text[index] is (byte)'+' or (byte)'-')
        {
            signed = true;
            negative = text[index++] == (byte)'-';
        }

        long value = 0;
        int count = 0;
        for (; index < text.Length; index++)
        {
            uint digit = text[index] - (uint)'0';
            if (digit <= 9)
            {
                value = (value * 10) + digit;
                if (++count > 18)
                {
                    value = 0;
                }
            }
            else if (text[index] > (byte)' ')
            {
                break;
            }
        }

        _index = index;
        return new DigitString(negative ? -value : value, count, signed);
    }

    /// <summary>A decimal number such as <c>-1.5</c>, <c>.25</c> or <c>3.</c>; false takes nothing.</summary>
    public bool TryTakeDecimal(out double value)
    {
        int before = _index;
        Span<byte> kept = stackalloc byte[64];
        int length = 0;
        int digits = 0;
        int points = 0;
        for (byte b = Peek(); b != 0 && IsPartOfDecimal(b, length); b = Peek())
        {
            digits += char.IsAsciiDigit((char)b) ? 1 : 0;
            points += b == (byte)'.' ? 1 : 0;
            if (length == kept.Length)
            {
                break;
            }

            kept[length++] = b;
            _index++;
        }

        if (digits > 0 && points <= 1 && length < kept.Length && double.TryParse(
            kept[..length],
            System.Globalization.NumberStyles.AllowLeadingSign | System.Globalization.NumberStyles.AllowDecimalPoint,
            System.Globalization.CultureInfo.InvariantCulture,
            out value))
        {
            return true;
        }

        _index = before;
        value = 0;
        return false;
    }

    private static bool IsPartOfDecimal(byte b, int taken) =>
        char.IsAsciiDigit((char)b) || b == (byte)'.' || (taken == 0 && b is (byte)'+' or (byte)'-');

    private void SkipBlanks()
    {
        while (_index < _text.Length && _text[_index] <= (byte)' ')
        {
            _index++;
        }
    }
}

/// <summary>A run of digits as it stood in the file.</summary>
/// <param name="Value">Value with its sign; meaningless when <paramref name="Count"/> exceeds 18.</param>
/// <param name="Count">Number of digits, leading zeros included; 0 means no number stood there.</param>
/// <param name="Signed">A plus or minus stood before it.</param>
internal readonly record struct DigitString(long Value, int Count, bool Signed);
