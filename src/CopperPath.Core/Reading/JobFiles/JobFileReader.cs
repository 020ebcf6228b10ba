using System.Globalization;
using System.Text.Json;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.JobFiles;

/// <summary>
/// Reads the Gerber job format (JSON; lengths in millimetres). All it says is a claim to be compared with the files
/// themselves; a damaged job file is set aside with a warning.
/// </summary>
public static class JobFileReader
{
    /// <summary>Millimetres to metres.</summary>
    private const double MPerMm = 1e-3;

    /// <summary>Largest difference between the sum of thicknesses and the stated board thickness that goes unremarked.</summary>
    private const double ThicknessTolerance = 0.10;

    private static readonly JsonDocumentOptions _options = new()
    {
        MaxDepth = 32,
        AllowTrailingCommas = true,
        CommentHandling = JsonCommentHandling.Skip,
    };

    /// <summary>Reads one job file. Never throws.</summary>
    public static JobFileReading Read(string file, ReadOnlyMemory<byte> bytes)
    {
        List<Diagnostic> remarks = [];
        try
        {
            using JsonDocument document = JsonDocument.Parse(WithoutByteOrderMark(bytes), _options);
            if (document.RootElement.ValueKind != JsonValueKind.Object)
            {
                remarks.Add(Remark("JOB001", SourcePosition.WholeFile(file), "JSON that is not an object", "a job file, starting with {"));
                return new JobFileReading(null, remarks);
            }

            JobFile job = ReadJob(file, document.RootElement, remarks);
            Check(file, job, remarks);
            return new JobFileReading(job, remarks);
        }
        catch (JsonException e)
        {
            SourcePosition position = new(file, (int)(e.LineNumber ?? -1) + 1, (int)(e.BytePositionInLine ?? -1) + 1);
            remarks.Add(Remark("JOB001", position, "text that is not JSON", "a job file in JSON; it is set aside"));
            return new JobFileReading(null, remarks);
        }
    }

    private static JobFile ReadJob(string file, JsonElement root, List<Diagnostic> remarks)
    {
        JsonElement specs = Child(root, "GeneralSpecs");
        JsonElement size = Child(specs, "Size");
        double? layers = Number(specs, "LayerNumber", file, remarks);
        return new JobFile(
            layers is >= 1 and <= 128 && double.IsInteger(layers.Value) ? (int)layers : null,
            Number(specs, "BoardThickness", file, remarks) * MPerMm,
            Number(size, "X", file, remarks) * MPerMm,
            Number(size, "Y", file, remarks) * MPerMm,
            [.. Files(file, Child(root, "FilesAttributes"), remarks)],
            [.. Items(Child(root, "MaterialStackup")).Select(item => Material(file, item, remarks))]);
    }

    private static IEnumerable<JobFileEntry> Files(string file, JsonElement list, List<Diagnostic> remarks)
    {
        foreach (JsonElement item in Items(list))
        {
            string? path = Text(item, "Path");
            string? function = Text(item, "FileFunction");
            if (path is null || function is null)
            {
                remarks.Add(Remark("JOB002", SourcePosition.WholeFile(file), "a file entry without Path or FileFunction", "both"));
                continue;
            }

            if (path.AsSpan().IndexOfAny('/', '\\', ':') >= 0 || path is "." or "..")
            {
                remarks.Add(Remark("JOB003", SourcePosition.WholeFile(file), $"the path '{path}'", "a plain file name beside the job file; the entry is dropped"));
                continue;
            }

            yield return new JobFileEntry(path, function, Text(item, "FilePolarity"));
        }
    }

    private static StackupMaterial Material(string file, JsonElement item, List<Diagnostic> remarks)
    {
        StackupKind kind = Text(item, "Type") switch
        {
            "Legend" => StackupKind.Legend,
            "SolderPaste" => StackupKind.SolderPaste,
            "SolderMask" => StackupKind.SolderMask,
            "Copper" => StackupKind.Copper,
            "Dielectric" => StackupKind.Dielectric,
            _ => StackupKind.Other,
        };
        double? thicknessM = Number(item, "Thickness", file, remarks) * MPerMm;
        if (thicknessM < 0)
        {
            remarks.Add(Remark("JOB004", SourcePosition.WholeFile(file), "a negative thickness", "a length in millimetres; taken as not given"));
            thicknessM = null;
        }

        return new StackupMaterial(
            kind, Text(item, "Name"), thicknessM, Text(item, "Material"), Number(item, "DielectricConstant", file, remarks));
    }

    private static void Check(string file, JobFile job, List<Diagnostic> remarks)
    {
        int copper = job.CopperLayers.Count();
        if (copper > 0 && job.CopperLayerCount is { } stated && stated != copper)
        {
            remarks.Add(Remark(
                "JOB005",
                SourcePosition.WholeFile(file),
                string.Create(CultureInfo.InvariantCulture, $"{copper} copper layers in the stack-up and LayerNumber {stated}"),
                "the two to be equal"));
        }

        StackupMaterial[] body = [.. job.Stackup.Where(m => m.Kind is StackupKind.Copper or StackupKind.Dielectric or StackupKind.SolderMask)];
        double sumM = body.Sum(m => m.ThicknessM ?? 0);
        bool isComplete = body.Length > 0 && body.All(m => m.ThicknessM is not null || m.Kind == StackupKind.SolderMask);
        if (isComplete && job.BoardThicknessM is > 0 and { } boardM && Math.Abs(sumM - boardM) > ThicknessTolerance * boardM)
        {
            remarks.Add(Remark(
                "JOB006",
                SourcePosition.WholeFile(file),
                string.Create(CultureInfo.InvariantCulture, $"layers that add up to {sumM / MPerMm:0.###} mm in a board of {boardM / MPerMm:0.###} mm"),
                "the two to agree within 10 %"));
        }
    }

    private static JsonElement Child(JsonElement parent, string name) =>
        parent.ValueKind == JsonValueKind.Object && parent.TryGetProperty(name, out JsonElement child) ? child : default;

    private static JsonElement[] Items(JsonElement list) =>
        list.ValueKind == JsonValueKind.Array ? [.. list.EnumerateArray()] : [];

    private static string? Text(JsonElement parent, string name)
    {
        if (Child(parent, name) is not { ValueKind: JsonValueKind.String } value)
        {
            return null;
        }

        try
        {
            return value.GetString();
        }
        catch (InvalidOperationException)
        {
            // Escapes that form half a surrogate pair are no text in any encoding.
            return null;
        }
    }

    /// <summary>A number, also when written as text; null when absent; null with a remark when it is something else.</summary>
    private static double? Number(JsonElement parent, string name, string file, List<Diagnostic> remarks)
    {
        JsonElement value = Child(parent, name);
        double number;
        bool isNumber = value.ValueKind switch
        {
            JsonValueKind.Number => value.TryGetDouble(out number),
            JsonValueKind.String => double.TryParse(Text(parent, name), NumberStyles.Float, CultureInfo.InvariantCulture, out number),
            _ => NotANumber(out number),
        };
        if (isNumber && double.IsFinite(number))
        {
            return number;
        }

        if (value.ValueKind is not (JsonValueKind.Undefined or JsonValueKind.Null))
        {
            remarks.Add(Remark("JOB004", SourcePosition.WholeFile(file), $"{name} that is not a number", "a number; taken as not given"));
        }

        return null;
    }

    private static bool NotANumber(out double number)
    {
        number = double.NaN;
        return false;
    }

    private static Diagnostic Remark(string code, SourcePosition position, string found, string expected) =>
        new(code, Severity.Warning, position, found, expected);

    private static ReadOnlyMemory<byte> WithoutByteOrderMark(ReadOnlyMemory<byte> bytes) =>
        bytes.Span.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
}
