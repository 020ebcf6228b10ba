using System.Text;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>Reads Gerber text given in a test.</summary>
internal static class GerberText
{
    /// <summary>Format 3.4, millimetres: 10000 is 1 mm. Lines 1 and 2 of the file.</summary>
    public const string Head = "%FSLAX34Y34*%\n%MOMM*%\n";

    public static GerberReading Read(string text, GerberReadOptions? options = null) =>
        GerberReader.Read("layer.gbr", Encoding.UTF8.GetBytes(text), options);
}
