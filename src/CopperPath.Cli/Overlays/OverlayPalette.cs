using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// Colours of a theme: warm greys for all that is not data, one vermilion accent for what breaks a limit, chosen
/// because it is far from every shade of the data map for all common kinds of colour vision.
/// </summary>
internal sealed record OverlayPalette(
    SKColor Page,
    SKColor Panel,
    SKColor Board,
    SKColor BoardEdge,
    SKColor QuietFill,
    SKColor QuietEdge,
    SKColor NetFill,
    SKColor NetEdge,
    SKColor Main,
    SKColor Muted,
    SKColor Rule,
    SKColor Accent,
    SKColor OnAccent,
    SKColor Plate,
    SKColor ViaGround)
{
    public static OverlayPalette Of(OverlayTheme theme) => theme == OverlayTheme.Dark ? Dark : Light;

    private static readonly OverlayPalette Light = new(
        Page: Colour(0xF5F3EE),
        Panel: Colour(0xECE9E2),
        Board: Colour(0xF8F6F2),
        BoardEdge: Colour(0x8C867B),
        QuietFill: Colour(0xE4E0D7),
        QuietEdge: Colour(0xC6C0B4),
        NetFill: Colour(0xC2BBAD),
        NetEdge: Colour(0x4A463F),
        Main: Colour(0x23211E),
        Muted: Colour(0x6A655C),
        Rule: Colour(0xCFCAC0),
        Accent: Colour(0xC2330B),
        OnAccent: Colour(0xFFFFFF),
        Plate: Colour(0xFFFEFB),
        ViaGround: Colour(0xFFFEFB));

    private static readonly OverlayPalette Dark = new(
        Page: Colour(0x1B1B1D),
        Panel: Colour(0x212124),
        Board: Colour(0x29292C),
        BoardEdge: Colour(0x87837B),
        QuietFill: Colour(0x37373A),
        QuietEdge: Colour(0x504F50),
        NetFill: Colour(0x5C5A57),
        NetEdge: Colour(0xB9B4A9),
        Main: Colour(0xECE8E0),
        Muted: Colour(0xA5A097),
        Rule: Colour(0x434246),
        Accent: Colour(0xFF7A4D),
        OnAccent: Colour(0x1B1B1D),
        Plate: Colour(0x2E2E31),
        ViaGround: Colour(0xECE8E0));

    private static SKColor Colour(uint rgb) => new(0xFF000000 | rgb);
}
