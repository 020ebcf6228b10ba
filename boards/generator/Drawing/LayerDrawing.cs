namespace CopperPath.DemoBoards.Drawing;

/// <summary>The artwork of one file.</summary>
public enum Subject
{
    Copper,
    Mask,
    Paste,
    Legend,
    Profile,
}

/// <summary>One file of artwork.</summary>
/// <param name="Subject">What the file shows.</param>
/// <param name="Layer">Copper layer it is of or beside; 0 for the profile.</param>
/// <param name="Objects">In drawing order.</param>
public sealed record LayerDrawing(Subject Subject, int Layer, IReadOnlyList<DrawnObject> Objects);

/// <summary>One hole to be drilled.</summary>
public sealed record DrawnHole(Kit.PointMm At, double DiameterMm, bool IsPlated, string Function);
