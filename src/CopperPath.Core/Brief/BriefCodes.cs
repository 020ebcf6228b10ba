namespace CopperPath.Brief;

/// <summary>Stable codes of the diagnostics a brief can cause; docs/brief.md explains each.</summary>
public static class BriefCodes
{
    public const string YamlSyntax = "BRF001";
    public const string NotOneMap = "BRF002";
    public const string YamlFeature = "BRF003";
    public const string FormatVersion = "BRF004";

    public const string UnknownKey = "BRF010";
    public const string DuplicateKey = "BRF011";
    public const string MissingKey = "BRF012";
    public const string WrongShape = "BRF013";
    public const string Empty = "BRF014";

    public const string Quantity = "BRF020";
    public const string OutOfRange = "BRF021";
    public const string Choice = "BRF022";
    public const string Number = "BRF023";
    public const string Pin = "BRF024";
    public const string Layer = "BRF025";

    public const string NetSelector = "BRF030";
    public const string TerminalCurrent = "BRF031";
    public const string SecondRest = "BRF032";
    public const string CurrentBalance = "BRF033";
    public const string NoCurrent = "BRF034";
    public const string NoContact = "BRF035";
    public const string RepeatedName = "BRF036";
    public const string TooFewTerminals = "BRF037";
    public const string RestTakesNothing = "BRF038";

    public const string StackupCount = "BRF040";
    public const string NoSuchLayer = "BRF041";
    public const string LayerConflict = "BRF042";
    public const string EmptyBox = "BRF043";
    public const string Range = "BRF044";

    public const string StageCurrent = "BRF050";
    public const string NotABuck = "BRF051";
    public const string HeatPlace = "BRF052";
    public const string FaultCurrent = "BRF053";
    public const string FaultStretch = "BRF054";
    public const string LossShares = "BRF055";
    public const string LoadProfile = "BRF056";
    public const string LoadTable = "BRF057";

    public const string Unconfirmed = "BRF060";
}
