namespace CopperPath.Reading.Gerber;

/// <summary>Reads letters and numbers of one command; blanks and line breaks between characters mean nothing.</summary>
internal ref struct WordCursor(ReadOnlySpan<byte> text)
{
    private readonly ReadOnlySpan<byte> _text = text;

    /// <summary>Index of the next unread character.</summary>
    public int Index { get; private set; }

    public readonly ReadOnlySpan<byte> Rest => _text[Index..];

    public bool AtEnd
    {
        get
        {
            SkipBlanks();
            return Index == _text.Length;
        }
    }

    /// <summary>The next character without taking it; 0 at the end.</summary>
    public byte Peek() => AtEnd ? (byte)0 : _text[Index];

    public byte Take()
    {
        byte b = Peek();
        Index += b == 0 ? 0 : 1;
        return b;
    }

    public bool TryTake(byte wanted)
    {
        if (Peek() != wanted)
        {
            return false;
        }

        Index++;
        return true;
    }

    /// <summary>Sign and digits. Values of more than 18 digits come back with the digit count only.</summary>
    public DigitString TakeDigits()
    {
        byte sign = Peek();
        bool signed = sign is (byte)'+' or (byte)'-';
        if (signed)
        {
            Index++;
        }

        long value = 0;
        int count = 0;
        while (Index < _text.Length)
        {
            int digit = _text[Index] - '0';
            if ((uint)digit <= 9)
            {
                value = count < 18 ? (value * 10) + digit : 0;
                count++;
                Index++;
            }
            else if (_text[Index] <= (byte)' ')
            {
                Index++;
            }
            else
            {
                break;
            }
        }

        return new DigitString(sign == (byte)'-' ? -value : value, count, signed, sign == (byte)'-');
    }

    /// <summary>A decimal number such as <c>-1.5</c>, <c>.25</c> or <c>3.</c>; false takes nothing.</summary>
    public bool TryTakeDecimal(out double value)
    {
        int before = Index;
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
            Index++;
        }

        if (digits > 0 && points <= 1 && length < kept.Length && double.TryParse(
            kept[..length],
            System.Globalization.NumberStyles.AllowLeadingSign | System.Globalization.NumberStyles.AllowDecimalPoint,
            System.Globalization.CultureInfo.InvariantCulture,
            out value))
        {
            return true;
        }

        Index = before;
        value = 0;
        return false;
    }

    private static bool IsPartOfDecimal(byte b, int taken) =>
        char.IsAsciiDigit((char)b) || b == (byte)'.' || (taken == 0 && b is (byte)'+' or (byte)'-');

    private void SkipBlanks()
    {
        while (Index < _text.Length && _text[Index] <= (byte)' ')
        {
            Index++;
        }
    }
}

/// <summary>A run of digits as it stood in the file.</summary>
/// <param name="Value">Value with its sign; meaningless when <paramref name="Count"/> exceeds 18.</param>
/// <param name="Count">Number of digits, leading zeros included; 0 means no number stood there.</param>
/// <param name="Signed">A plus or minus stood before it.</param>
/// <param name="Negative">The sign was a minus.</param>
internal readonly record struct DigitString(long Value, int Count, bool Signed, bool Negative);
