namespace CopperPath.Quantities;

/// <summary>What a quantity measures; it decides which units are understood.</summary>
public enum Dimension
{
    /// <summary>Metres inside.</summary>
    Length,

    /// <summary>Metres inside; a length that may also be written in ounces of copper per square foot.</summary>
    CopperThickness,

    /// <summary>Amperes inside.</summary>
    Current,

    /// <summary>Volts inside.</summary>
    Voltage,

    /// <summary>Kelvin inside, absolute; written in degrees Celsius or kelvin.</summary>
    Temperature,

    /// <summary>Kelvin inside; a rise, so written in kelvin only: "30 degC" could be read as an absolute temperature.</summary>
    TemperatureDifference,

    /// <summary>Hertz inside.</summary>
    Frequency,

    /// <summary>Henries inside.</summary>
    Inductance,

    /// <summary>Farads inside.</summary>
    Capacitance,

    /// <summary>Ohms inside.</summary>
    Resistance,

    /// <summary>Watts inside.</summary>
    Power,

    /// <summary>Seconds inside.</summary>
    Time,

    /// <summary>Watts per square metre and kelvin inside.</summary>
    FilmCoefficient,

    /// <summary>Watts per metre and kelvin inside.</summary>
    ThermalConductivity,

    /// <summary>Kelvin per watt inside.</summary>
    ThermalResistance,
}
