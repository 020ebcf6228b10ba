namespace CopperPath.Diagnostics;

/// <summary>How much a diagnostic matters to the copper.</summary>
public enum Severity
{
    /// <summary>No effect on the image; listed on request.</summary>
    Note,

    /// <summary>The meaning was settled, but the input is unusual or deprecated, or something was inferred.</summary>
    Warning,

    /// <summary>The input was not understood; the file gives no result, or the run can not end in a pass.</summary>
    Error,
}
