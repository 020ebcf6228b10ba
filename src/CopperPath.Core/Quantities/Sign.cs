namespace CopperPath.Quantities;

/// <summary>Which numbers make sense for a quantity.</summary>
public enum Sign
{
    /// <summary>Any finite number.</summary>
    Any,

    /// <summary>Zero or more.</summary>
    NotNegative,

    /// <summary>More than zero.</summary>
    Positive,
}
