namespace CopperPath.Reading.Gerber;

/// <summary>
/// Bounds that keep a hostile or mistaken file from filling memory or running without end. Each is far beyond real
/// files, and a file beyond one is refused with its number; docs/readers-limits.md lists them. How large a finished
/// image may be is up to the caller: <see cref="GerberReadOptions"/>.
/// </summary>
internal static class GerberLimits
{
    /// <summary>Deepest nesting of blocks, opened or flashed within each other.</summary>
    public const int DeepestBlocks = 32;

    /// <summary>Apertures of a file.</summary>
    public const int MostApertures = 100_000;

    /// <summary>Characters of all macros of a file together.</summary>
    public const int MostMacroCharacters = 4 << 20;

    /// <summary>Numbers, variables and operators evaluated for all apertures made of macros.</summary>
    public const long MostMacroEvaluations = 20_000_000;

    /// <summary>Deepest nesting of parentheses and signs in a macro expression.</summary>
    public const int DeepestExpression = 64;

    /// <summary>Rings of one moire primitive; more would mean vanishing thickness and gap.</summary>
    public const int MostMoireRings = 1_000;
}
