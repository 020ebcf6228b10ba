using System.Text;

namespace CopperPath.Reading.Gerber;

/// <summary>One block of a macro that does something.</summary>
internal abstract record MacroStatement(long Weight);

internal sealed record MacroAssignment(int Variable, MacroExpression Value) : MacroStatement(Value.Weight + 1);

/// <param name="Code">Primitive code, e.g. 1 for a circle.</param>
/// <param name="Parameters">Everything after the code.</param>
internal sealed record MacroPrimitive(int Code, IReadOnlyList<MacroExpression> Parameters)
    : MacroStatement(Parameters.Sum(parameter => parameter.Weight) + 1);

/// <summary>A syntax fault inside a macro's text.</summary>
internal readonly record struct MacroFault(int Index, string Found, string Expected);

/// <summary>
/// An aperture macro as defined by AM, read once and evaluated for every aperture made of it.
/// <code>
/// AM name * { block * }
/// block = "0" comment | "$" n "=" expression | code { "," expression }
/// </code>
/// </summary>
internal sealed record MacroProgram(string Name, IReadOnlyList<MacroStatement> Statements)
{
    /// <summary>Numbers, variables and operators of all its statements: what one aperture made of it costs.</summary>
    public long Weight { get; } = Statements.Sum(statement => statement.Weight);

    /// <summary>Reads the text between <c>%</c> signs, <c>AM</c> included.</summary>
    public static MacroProgram? Parse(ReadOnlySpan<byte> text, out MacroFault? fault)
    {
        fault = null;
        int nameEnd = text.IndexOf((byte)'*');
        string name = nameEnd < 0 ? "" : NameOf(text[2..nameEnd]);
        if (name.Length == 0)
        {
            fault = new MacroFault(2, GerberLog.Quote(text), "AM, a name and '*'");
            return null;
        }

        var statements = new List<MacroStatement>();
        int start = nameEnd + 1;
        while (start < text.Length)
        {
            int length = text[start..].IndexOf((byte)'*');
            ReadOnlySpan<byte> block = length < 0 ? text[start..] : text.Slice(start, length);
            if (!Blocks.IsBlank(block))
            {
                if (length < 0)
                {
                    fault = new MacroFault(start, GerberLog.Quote(block) + " without '*'", "'*' after each macro block");
                    return null;
                }

                if (!TryParseBlock(block, statements, out MacroFault inBlock))
                {
                    fault = inBlock with { Index = start + inBlock.Index };
                    return null;
                }
            }

            start += block.Length + 1;
        }

        return new MacroProgram(name, statements);
    }

    /// <summary>The name as text, blanks and line breaks left out.</summary>
    public static string NameOf(ReadOnlySpan<byte> text) =>
        string.Concat(Encoding.UTF8.GetString(text).Where(c => c > ' '));

    private static bool TryParseBlock(ReadOnlySpan<byte> block, List<MacroStatement> statements, out MacroFault fault)
    {
        fault = default;
        var cursor = new WordCursor(block);
        if (cursor.Peek() == (byte)'$')
        {
            cursor.Take();
            MacroExpression? value = null;
            if (MacroExpressionParser.TryTakeVariable(ref cursor, out int variable) && cursor.TryTake((byte)'='))
            {
                value = MacroExpressionParser.Parse(ref cursor);
            }

            if (value is null || !cursor.AtEnd)
            {
                fault = new MacroFault(cursor.Index, Rest(cursor), "$n=expression");
                return false;
            }

            statements.Add(new MacroAssignment(variable, value));
            return true;
        }

        DigitString code = cursor.TakeDigits();
        if (code is { Count: > 0, Value: 0, Signed: false })
        {
            return true;
        }

        if (code.Count is 0 or > 3 || code.Signed)
        {
            fault = new MacroFault(0, Rest(new WordCursor(block)), "a primitive code, '$' or '0'");
            return false;
        }

        var parameters = new List<MacroExpression>();
        while (cursor.TryTake((byte)','))
        {
            if (MacroExpressionParser.Parse(ref cursor) is not { } parameter)
            {
                fault = new MacroFault(cursor.Index, Rest(cursor), "a number, a variable or a parenthesis");
                return false;
            }

            parameters.Add(parameter);
        }

        if (!cursor.AtEnd)
        {
            fault = new MacroFault(cursor.Index, Rest(cursor), "',' or '*'");
            return false;
        }

        statements.Add(new MacroPrimitive((int)code.Value, parameters));
        return true;
    }

    private static string Rest(WordCursor cursor) => cursor.AtEnd ? "the end of the block" : GerberLog.Quote(cursor.Rest);
}

/// <summary>Small questions about raw text.</summary>
internal static class Blocks
{
    public static bool IsBlank(ReadOnlySpan<byte> text)
    {
        foreach (byte b in text)
        {
            if (b > (byte)' ')
            {
                return false;
            }
        }

        return true;
    }
}
