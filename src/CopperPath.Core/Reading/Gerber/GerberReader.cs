using CopperPath.Artwork;

namespace CopperPath.Reading.Gerber;

/// <summary>
/// Reads Gerber RS-274X and X2 files.
/// </summary>
/// <remarks>
/// The grammar in short; line breaks mean nothing anywhere.
/// <code>
/// file      = { word "*" | "%" extended "*" { extended "*" } "%" } M02 "*"
///
/// word      = { G code } [ X int ] [ Y int ] [ I int ] [ J int ] [ D code ]
///             G01 line, G02 clockwise, G03 counter-clockwise, G74/G75 quadrant mode
///             G36 ... G37 region, G04 comment (may hold an attribute after #@!)
///             D01 draw, D02 move, D03 flash, D10 and above select an aperture
///
/// extended  = FS (L|T|D)(A|I) X nm Y nm           digits of coordinates
///           | MO (MM|IN)                          unit
///           | AM name "*" { block "*" }           aperture macro        (MacroProgram)
///           | AD D nn template [ "," n { X n } ]  aperture              (ApertureDictionary)
///           | AB [ D nn ]                         block aperture, opens and closes
///           | LP (D|C) | LM (N|X|Y|XY) | LR deg | LS factor
///           | SR [ X n Y n I step J step ]        step and repeat, opens and closes
///           | (TF|TA|TO|TD) [ name { "," value } ]  attributes          (AttributeDictionary)
/// </code>
/// From memory of the published layer format; deprecated commands are taken with a remark. The file is cut by
/// <see cref="GerberLexer"/> and executed by <see cref="GerberInterpreter"/>, which leaves exact primitives; only then are
/// these flattened, by the painter in Artwork.
/// </remarks>
public static class GerberReader
{
    /// <summary>Reads one file. Never throws on account of its content.</summary>
    /// <param name="file">Name for positions and for <see cref="LayerArtwork.File"/>.</param>
    /// <param name="bytes">The whole file.</param>
    /// <param name="options">Null for <see cref="GerberReadOptions.Default"/>. Once its budget is spent nothing is read and nothing said.</param>
    public static GerberReading Read(string file, ReadOnlyMemory<byte> bytes, GerberReadOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(file);
        options ??= GerberReadOptions.Default;
        return options.Budget is { IsSpent: true } ? new GerberReading(null, []) : Parse(file, bytes.Span, options).Flatten();
    }

    /// <summary>Reads one file as far as its exact primitives.</summary>
    internal static ParsedGerber Parse(string file, ReadOnlySpan<byte> bytes, GerberReadOptions options)
    {
        var interpreter = new GerberInterpreter(file, options);
        var lexer = new GerberLexer(bytes);
        while (!interpreter.HasEnded && lexer.TryFindNext())
        {
            if (lexer.InPercent || !interpreter.TryTakeOperation(ref lexer))
            {
                interpreter.Take(lexer.Next());
            }
        }

        while (interpreter.HasEnded && lexer.TryFindNext() && interpreter.TakeAfterEnd(lexer.Next()))
        {
        }

        return interpreter.Finish(lexer.OpenPercent);
    }
}
