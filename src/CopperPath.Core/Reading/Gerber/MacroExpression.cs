namespace CopperPath.Reading.Gerber;

/// <summary>The values of a macro's variables while it is evaluated; a variable never set is 0.</summary>
internal sealed class MacroVariables
{
    private readonly Dictionary<int, double> _values = [];

    /// <summary>True once a division by zero was asked for.</summary>
    public bool DividedByZero { get; set; }

    public double this[int number]
    {
        get => _values.GetValueOrDefault(number);
        set => _values[number] = value;
    }
}

/// <summary>An arithmetic expression of a macro.</summary>
internal abstract record MacroExpression
{
    public abstract double Value(MacroVariables variables);

    /// <summary>Numbers, variables and operators in it: what evaluating it costs.</summary>
    public virtual long Weight => 1;
}

internal sealed record MacroNumber(double Number) : MacroExpression
{
    public override double Value(MacroVariables variables) => Number;
}

internal sealed record MacroVariable(int Number) : MacroExpression
{
    public override double Value(MacroVariables variables) => variables[Number];
}

internal sealed record MacroNegation(MacroExpression Inner) : MacroExpression
{
    public override double Value(MacroVariables variables) => -Inner.Value(variables);

    public override long Weight { get; } = Inner.Weight + 1;
}

/// <summary>A chain of operations of equal rank, applied from left to right: keeps long sums from nesting deep.</summary>
internal sealed record MacroChain(MacroExpression First, IReadOnlyList<(byte Operator, MacroExpression Right)> Rest)
    : MacroExpression
{
    public override long Weight { get; } = First.Weight + Rest.Sum(operation => operation.Right.Weight + 1);

    public override double Value(MacroVariables variables)
    {
        double value = First.Value(variables);
        foreach ((byte op, MacroExpression operand) in Rest)
        {
            double right = operand.Value(variables);
            switch (op)
            {
                case (byte)'+':
                    value += right;
                    break;
                case (byte)'-':
                    value -= right;
                    break;
                case (byte)'x':
                    value *= right;
                    break;
                default:
                    variables.DividedByZero |= right == 0;
                    value /= right;
                    break;
            }
        }

        return value;
    }
}

/// <summary>
/// Reads expressions by recursive descent:
/// <code>
/// sum     = product { ("+" | "-") product }
/// product = factor { ("x" | "X" | "/") factor }
/// factor  = ("+" | "-") factor | "(" sum ")" | "$" digits | decimal
/// </code>
/// </summary>
internal static class MacroExpressionParser
{
    /// <summary>The expression at the cursor, or null with the cursor at the character that does not fit.</summary>
    public static MacroExpression? Parse(ref WordCursor cursor) => Sum(ref cursor, 0);

    private static MacroExpression? Sum(ref WordCursor cursor, int depth)
    {
        MacroExpression? first = Product(ref cursor, depth);
        List<(byte, MacroExpression)>? rest = null;
        while (first is not null && cursor.Peek() is (byte)'+' or (byte)'-')
        {
            byte op = cursor.Take();
            if (Product(ref cursor, depth) is not { } right)
            {
                return null;
            }

            (rest ??= []).Add((op, right));
        }

        return rest is null ? first : new MacroChain(first!, rest);
    }

    private static MacroExpression? Product(ref WordCursor cursor, int depth)
    {
        MacroExpression? first = Factor(ref cursor, depth);
        List<(byte, MacroExpression)>? rest = null;
        while (first is not null && cursor.Peek() is (byte)'x' or (byte)'X' or (byte)'/')
        {
            byte op = cursor.Take() == (byte)'/' ? (byte)'/' : (byte)'x';
            if (Factor(ref cursor, depth) is not { } right)
            {
                return null;
            }

            (rest ??= []).Add((op, right));
        }

        return rest is null ? first : new MacroChain(first!, rest);
    }

    private static MacroExpression? Factor(ref WordCursor cursor, int depth)
    {
        if (depth > GerberLimits.DeepestExpression)
        {
            return null;
        }

        switch (cursor.Peek())
        {
            case (byte)'+':
                cursor.Take();
                return Factor(ref cursor, depth + 1);
            case (byte)'-':
                cursor.Take();
                return Factor(ref cursor, depth + 1) is { } inner ? new MacroNegation(inner) : null;
            case (byte)'(':
                cursor.Take();
                MacroExpression? sum = Sum(ref cursor, depth + 1);
                return sum is not null && cursor.TryTake((byte)')') ? sum : null;
            case (byte)'$':
                cursor.Take();
                return TryTakeVariable(ref cursor, out int number) ? new MacroVariable(number) : null;
            default:
                return cursor.TryTakeDecimal(out double value) ? new MacroNumber(value) : null;
        }
    }

    /// <summary>The number after a <c>$</c>: 1 or more.</summary>
    public static bool TryTakeVariable(ref WordCursor cursor, out int number)
    {
        DigitString digits = cursor.TakeDigits();
        number = (int)Math.Clamp(digits.Value, 0, int.MaxValue);
        return digits is { Signed: false, Count: > 0 and <= 9 } && number > 0;
    }
}
