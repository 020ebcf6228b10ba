namespace CopperPath.Reading.Gerber;

/// <summary>
/// The word that nearly all of a file is made of, read in one pass over its bytes:
/// <code>
/// { (X | Y | I | J) [ sign ] digit { digit } } D { 0 } (1 | 2 | 3) *
/// </code>
/// without blanks, line breaks or anything to remark on. Every other word is left to the interpreter's general way,
/// which would read this one with the same result, at three times the cost.
/// </summary>
internal static class PlainOperation
{
    /// <param name="bytes">The file from the word's first character on.</param>
    /// <param name="xScale">Meaning of the digits of X and I.</param>
    /// <param name="yScale">Meaning of the digits of Y and J.</param>
    /// <param name="point">The coordinates.</param>
    /// <param name="code">1, 2 or 3.</param>
    /// <param name="length">Length of the word without its <c>*</c>.</param>
    /// <returns>False when the word is of another form, or odd in any way.</returns>
    public static bool TryRead(
        ReadOnlySpan<byte> bytes, in AxisScale xScale, in AxisScale yScale, out WrittenPoint point, out int code, out int length)
    {
        point = default;
        code = length = 0;
        int i = 0;
        while (i < bytes.Length)
        {
            byte letter = bytes[i++];
            if (letter == (byte)'D')
            {
                return TryReadCode(bytes, i, out code, out length);
            }

            bool isX = letter is (byte)'X' or (byte)'I';
            if ((!isX && letter is not ((byte)'Y' or (byte)'J'))
                || !TryReadDigits(bytes, ref i, out DigitString digits)
                || (isX ? ref xScale : ref yScale).ToNm(digits, out long nm) != CoordinateFlaw.None)
            {
                return false;
            }

            point.Set(letter, nm, digits.Signed);
        }

        return false;
    }

    private static bool TryReadDigits(ReadOnlySpan<byte> bytes, ref int index, out DigitString digits)
    {
        int i = index;
        byte sign = i < bytes.Length ? bytes[i] : (byte)0;
        bool signed = sign is (byte)'-' or (byte)'+';
        if (signed)
        {
            i++;
        }

        int first = i;
        long value = 0;
        while (i < bytes.Length)
        {
            uint digit = bytes[i] - (uint)'0';
            if (digit > 9)
            {
                break;
            }

            value = (value * 10) + digit;
            i++;
        }

        index = i;
        digits = new DigitString(sign == (byte)'-' ? -value : value, i - first, signed);
        return digits.Count is > 0 and <= 18;
    }

    private static bool TryReadCode(ReadOnlySpan<byte> bytes, int i, out int code, out int length)
    {
        code = 0;
        while (i < bytes.Length && bytes[i] == (byte)'0')
        {
            i++;
        }

        length = i + 1;
        if (length >= bytes.Length || bytes[length] != (byte)'*')
        {
            return false;
        }

        code = bytes[i] - '0';
        return code is >= 1 and <= 3;
    }
}
