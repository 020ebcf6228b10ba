namespace CopperPath.Electrical;

/// <summary>Two bounds of one number, in the unit of the number; whoever gives them says of which shape they hold.</summary>
/// <param name="Least">The true value is at least this.</param>
/// <param name="Greatest">And at most this.</param>
public sealed record Bracket(double Least, double Greatest)
{
    public double Middle => (Least + Greatest) / 2;

    /// <summary>Distance of the bounds over the magnitude of their middle.</summary>
    public double RelativeWidth => Middle == 0 ? 0 : (Greatest - Least) / Math.Abs(Middle);

    /// <summary>What both brackets allow; each must hold the same true value.</summary>
    public Bracket And(Bracket other) => new(Math.Max(Least, other.Least), Math.Min(Greatest, other.Greatest));

    public static Bracket operator *(Bracket bracket, double positive) =>
        new(bracket.Least * positive, bracket.Greatest * positive);
}
