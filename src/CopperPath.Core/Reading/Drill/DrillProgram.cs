using System.Globalization;

namespace CopperPath.Reading.Drill;

/// <summary>
/// Reads the program line by line. The grammar, in short:
/// <code>
/// M48                        header starts
/// INCH|METRIC[,LZ|TZ][,000.000]
/// T01C0.8                    tool with diameter
/// %  or  M95                 header ends
/// T01                        tool select
/// X1.5Y2.0                   hole (drill mode)
/// X1.5Y2.0G85X3.0            slot
/// R3X2.0                     three more holes, 2.0 apart
/// G00X1Y1 M15 G01X2 M16      routed cut
/// M30                        end
/// </code>
/// </summary>
internal sealed class DrillProgram
{
    /// <summary>Header words that set up the machine and never move a hole.</summary>
    private static readonly HashSet<string> _harmlessWords =
    [
        "AFS", "ATC", "BLKD", "CCW", "CP", "DETECT", "DN", "DTMDIST", "EXDA", "FSB", "HPCK", "NCSL", "OSTOP",
        "OTCLMP", "PCKPARAM", "PF", "PPR", "PVS", "RC", "RCP", "RCR", "RD", "RH", "RSB", "SBK", "SG", "TCST", "VER", "ZA",
        "ZC", "ZS",
    ];

    private readonly DrillLog _log;
    private readonly DrillNumberRules _rules;
    private readonly DrillComment _comments;
    private readonly DrillToolTable _tools;
    private readonly DrillMachine _machine;
    private bool _inHeader;
    private bool _ended;
    private bool _afterEndSaid;

    /// <summary>After M97 or M98: the next coordinates are where the text starts.</summary>
    private bool _startsText;

    public DrillProgram(DrillLog log, DrillFormat? given)
    {
        _log = log;
        _rules = new DrillNumberRules(log, given);
        _comments = new DrillComment(log, _rules);
        _tools = new DrillToolTable(log, _rules);
        _machine = new DrillMachine(log, _rules, _tools);
    }

    public DrillNumberRules Rules => _rules;

    public DrillComment Comments => _comments;

    public DrillToolTable Tools => _tools;

    public DrillMachine Machine => _machine;

    public void Run(string text)
    {
        foreach (ReadOnlySpan<char> line in text.AsSpan().EnumerateLines())
        {
            _log.Line++;
            ReadLine(line.ToString());
            if (_log.TooManyErrors || _machine.IsFull)
            {
                _log.Reject(DrillCode.GaveUp, 1, "too many errors", "a drill file; reading stopped here");
                return;
            }
        }

        _machine.Finish(1);
        if (!_ended)
        {
            _log.Warn(DrillCode.NoEnd, 1, "end of file without M30", "M30 at the end; the file may be cut short", affectsCopper: true);
        }
    }

    private void ReadLine(string line)
    {
        int start = 0;
        while (start < line.Length && (char.IsWhiteSpace(line[start]) || line[start] == '\uFEFF'))
        {
            start++;
        }

        if (start == line.Length)
        {
            return;
        }

        if (_ended)
        {
            if (!_afterEndSaid && line[start] is not (';' or '%'))
            {
                _afterEndSaid = true;
                _log.Warn(DrillCode.AfterEnd, start + 1, "a line after the end of the program", "nothing after M30; the rest is not read", affectsCopper: true);
            }

            return;
        }

        if (line[start] == ';')
        {
            _comments.Read(line[start..], start + 1);
            return;
        }

        if (line[start] == '(' && line.TrimEnd().EndsWith(')'))
        {
            return;
        }

        int comment = line.IndexOf(';', StringComparison.Ordinal);
        int end = comment < 0 ? line.Length : comment;
        while (end > start && char.IsWhiteSpace(line[end - 1]))
        {
            end--;
        }

        ReadCommand(line, start, end);
    }

    private void ReadCommand(string line, int start, int end)
    {
        ReadOnlySpan<char> text = line.AsSpan(start, end - start);
        if (text is "%")
        {
            _inHeader = false;
        }
        else if (text.StartsWith("M47"))
        {
            _log.Note(DrillCode.TextIgnored, start + 1, $"'{text}'", "no text in the program; it makes no hole here");
        }
        else if (text.StartsWith("M97") || text.StartsWith("M98"))
        {
            _startsText = true;
            _log.Warn(
                DrillCode.DrilledText, start + 1, $"'{text}', text that the machine drills into the board",
                "holes written one by one; the holes of its letters are not known here", affectsCopper: true);
        }
        else if (text.Length > 1 && (char.IsAsciiLetterUpper(text[1]) || text[1] == ','))
        {
            ReadKeyword(text.ToString(), start + 1);
        }
        else
        {
            ReadWords(line, start, end);
        }
    }

    private void ReadKeyword(string text, int column)
    {
        string[] parts = text.Split(',', StringSplitOptions.TrimEntries);
        switch (parts[0])
        {
            case "INCH":
                ReadUnit(DrillUnit.Inch, parts, column);
                break;
            case "METRIC":
                ReadUnit(DrillUnit.Millimetre, parts, column);
                break;
            case "FMAT" when parts is [_, "2"]:
                break;
            case "FMAT" when parts is [_, "1"]:
                _log.Warn(DrillCode.OldGeneration, column, $"'{text}'", "FMAT,2; codes common to both generations are read alike");
                break;
            case "ICI" when parts is [_, "ON" or "OFF"]:
                _machine.IsIncremental = parts[1] == "ON";
                break;
            default:
                if (!_harmlessWords.Contains(parts[0]))
                {
                    _log.Reject(DrillCode.UnknownCode, column, $"'{text}'", "a command of the drill format");
                }

                break;
        }
    }

    /// <summary>Reads <c>METRIC,LZ,000.000</c>: zeros and digits may stand in any order or be absent.</summary>
    private void ReadUnit(DrillUnit unit, string[] parts, int column)
    {
        _rules.DeclareUnit(unit, column);
        _rules.HasUnitWord = true;
        foreach (string part in parts.AsSpan(1))
        {
            int point = part.IndexOf('.', StringComparison.Ordinal);
            if (part == "LZ")
            {
                _rules.DeclareZeros(OmittedZeros.Trailing, column);
            }
            else if (part == "TZ")
            {
                _rules.DeclareZeros(OmittedZeros.Leading, column);
            }
            else if (point > 0 && part.Replace(".", "", StringComparison.Ordinal).AsSpan().IndexOfAnyExcept('0') < 0)
            {
                _rules.DeclareDigits(point, part.Length - point - 1, column);
            }
            else
            {
                _log.Reject(DrillCode.UnknownCode, column, $"'{part}' after the unit", "LZ, TZ or digits such as 000.000");
            }
        }
    }

    private void ReadWords(string line, int start, int end)
    {
        List<DrillWord> words = DrillWord.Split(line, start, end, out int badColumn);
        if (badColumn > 0)
        {
            _log.Reject(DrillCode.UnknownCode, badColumn, $"'{Printable(line[badColumn - 1])}'", "a letter A to Z with its number");
            return;
        }

        DrillBlock block = new() { HasTool = words.Exists(w => w.Letter == 'T') };
        int retractColumn = 0;
        int endColumn = 0;
        foreach (DrillWord word in words)
        {
            switch (word.Letter)
            {
                case 'T':
                    ReadTool(word, words);
                    break;
                case 'G':
                    ReadPreparatory(word, block);
                    break;
                case 'M' when word.Number is "16" or "17":
                    retractColumn = word.Column;
                    break;
                case 'M' when word.Number is "00" or "0" or "30":
                    endColumn = word.Column;
                    break;
                case 'M':
                    ReadMiscellaneous(word, block);
                    break;
                default:
                    ReadAddress(word, block);
                    break;
            }
        }

        if (_inHeader && block.HasTarget)
        {
            _inHeader = false;
            _log.Warn(DrillCode.HeaderLeftOpen, block.Column, "coordinates in the header", "% or M95 before the first hole");
        }

        if (_startsText && block.HasTarget)
        {
            _startsText = false;
            _machine.PassOver(block);
        }
        else
        {
            _machine.Run(block);
        }

        // Retract and end act after the motion of their line.
        if (retractColumn > 0)
        {
            _machine.Retract(retractColumn);
        }

        if (endColumn > 0)
        {
            _machine.Finish(endColumn);
            _ended = true;
        }
    }

    private void ReadTool(DrillWord word, List<DrillWord> words)
    {
        if (_tools.NumberOf(word) is not { } number)
        {
            return;
        }

        int diameter = words.FindIndex(w => w.Letter == 'C');
        if (diameter >= 0)
        {
            _tools.Define(number, words[diameter], _comments.ToolPlating, _comments.ToolFunction);
        }

        // A definition in the body also puts the tool in the spindle.
        if (!_inHeader)
        {
            _tools.Select(number);
        }
    }

    private void ReadAddress(DrillWord word, DrillBlock block)
    {
        bool isSlotEnd = block.Slot is not null;
        switch (word.Letter)
        {
            case 'X' when isSlotEnd && block.SlotX is null:
                block.SlotX = word;
                break;
            case 'Y' when isSlotEnd && block.SlotY is null:
                block.SlotY = word;
                break;
            case 'X' when !isSlotEnd && block.X is null:
                block.X = word;
                break;
            case 'Y' when !isSlotEnd && block.Y is null:
                block.Y = word;
                break;
            case 'A':
                block.Radius = word;
                break;
            case 'I':
                block.CentreX = word;
                break;
            case 'J':
                block.CentreY = word;
                break;
            case 'R':
                block.Repeat = word;
                break;
            case 'N':
                break;
            case 'C' or 'F' or 'S' or 'B' or 'H' or 'Z' when block.HasTool:
                break;
            case 'F' or 'S' when word.Number.Length > 0:
                break;
            default:
                _log.Reject(DrillCode.UnknownCode, word.Column, $"'{word}'", "one X and one Y, or a command of the drill format");
                break;
        }
    }

    private void ReadPreparatory(DrillWord word, DrillBlock block)
    {
        switch (word.Number.TrimStart('0'))
        {
            case "" when word.Number.Length > 0:
                _machine.RoutMode(0, word.Column);
                break;
            case "1" or "2" or "3":
                _machine.RoutMode(word.Number[^1] - '0', word.Column);
                break;
            case "5" or "81":
                _machine.DrillMode(word.Column);
                break;
            case "7" or "40":
                break;
            case "85":
                block.Slot = word;
                break;
            case "90":
                _machine.IsIncremental = false;
                break;
            case "91":
                _machine.IsIncremental = true;
                break;
            case "92" or "93":
                block.ZeroSet = word;
                break;
            case "32" or "33" or "41" or "42" or "82" or "83" or "84" or "86" or "87":
                _log.Reject(DrillCode.Unsupported, word.Column, $"'{word}'", "plain holes, G85 slots and routing without cutter compensation");
                break;
            default:
                _log.Reject(DrillCode.UnknownCode, word.Column, $"'{word}'", "a command of the drill format");
                break;
        }
    }

    private void ReadMiscellaneous(DrillWord word, DrillBlock block)
    {
        switch (word.Number.TrimStart('0'))
        {
            case "1":
                _machine.PatternEnd(word.Column);
                break;
            case "2":
                block.PatternRepeat = word;
                break;
            case "8":
                _machine.PatternClose();
                break;
            case "6" or "9" or "18":
                break;
            case "14" or "15":
                _machine.Plunge();
                break;
            case "25":
                _machine.PatternStart(word.Column);
                break;
            case "48":
                _inHeader = true;
                break;
            case "95":
                _inHeader = false;
                break;
            case "71":
                _rules.DeclareUnit(DrillUnit.Millimetre, word.Column);
                break;
            case "72":
                _rules.DeclareUnit(DrillUnit.Inch, word.Column);
                break;
            case "70" or "80" or "90":
                _log.Reject(DrillCode.Unsupported, word.Column, $"'{word}'", "patterns repeated without swapping or mirroring axes");
                break;
            default:
                _log.Reject(DrillCode.UnknownCode, word.Column, $"'{word}'", "a command of the drill format");
                break;
        }
    }

    private static string Printable(char c) => char.IsControl(c)
        ? string.Create(CultureInfo.InvariantCulture, $"character {(int)c}")
        : c.ToString();
}
