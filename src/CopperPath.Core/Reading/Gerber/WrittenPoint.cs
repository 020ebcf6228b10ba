namespace CopperPath.Reading.Gerber;

/// <summary>Which coordinates a word holds.</summary>
[Flags]
internal enum Given
{
    Nothing = 0,
    X = 1,
    Y = 2,
    I = 4,
    J = 8,
}

/// <summary>The coordinates of one word, nanometres; those not given are 0.</summary>
internal struct WrittenPoint
{
    public long X;
    public long Y;
    public long I;
    public long J;

    /// <summary>Which of the four stand in the word.</summary>
    public Given Given;

    /// <summary>I or J has a plus or minus sign.</summary>
    public bool OffsetSigned;

    public readonly bool Has(Given coordinates) => (Given & coordinates) == coordinates;

    public void Set(byte letter, long nm, bool signed)
    {
        switch (letter)
        {
            case (byte)'X':
                X = nm;
                Given |= Given.X;
                break;
            case (byte)'Y':
                Y = nm;
                Given |= Given.Y;
                break;
            case (byte)'I':
                I = nm;
                Given |= Given.I;
                OffsetSigned |= signed;
                break;
            default:
                J = nm;
                Given |= Given.J;
                OffsetSigned |= signed;
                break;
        }
    }
}
