using System.Globalization;
using CopperPath.Diagnostics;

namespace CopperPath.LinearAlgebra;

/// <summary>
/// Reads and writes symmetric matrices in the coordinate format of Matrix Market, so that any other solver can be given
/// the same system.
/// </summary>
/// <remarks>
/// Boisvert, Pozo and Remington, "The Matrix Market exchange formats: initial design", NISTIR 5935 (1996).
/// </remarks>
public static class MatrixMarket
{
    private const string Header = "%%MatrixMarket matrix coordinate real symmetric";
    private static readonly char[] Blanks = [' ', '\t'];

    /// <summary>Writes the lower triangle, every value with enough digits to be read back exactly.</summary>
    public static void Write(TextWriter writer, SymmetricSparseMatrix matrix)
    {
        ArgumentNullException.ThrowIfNull(writer);
        ArgumentNullException.ThrowIfNull(matrix);
        writer.Write(Header + "\n");
        writer.Write(string.Create(
            CultureInfo.InvariantCulture, $"{matrix.Size} {matrix.Size} {matrix.NonZeroCount}\n"));
        for (int j = 0; j < matrix.Size; j++)
        {
            for (int k = matrix.ColumnPointers[j]; k < matrix.ColumnPointers[j + 1]; k++)
            {
                writer.Write(string.Create(
                    CultureInfo.InvariantCulture, $"{matrix.RowIndices[k] + 1} {j + 1} {matrix.Values[k]:R}\n"));
            }
        }
    }

    /// <summary>
    /// Reads a symmetric matrix of real or integer values in coordinate form. Reading stops at the first fault, which
    /// is reported with its place; there is no matrix then.
    /// </summary>
    /// <param name="reader">The text.</param>
    /// <param name="fileName">Name to use in diagnostics.</param>
    public static MatrixMarketResult Read(TextReader reader, string fileName)
    {
        ArgumentNullException.ThrowIfNull(reader);
        int lineNumber = 1;
        string? line = reader.ReadLine();
        if (line is null || !IsSymmetricHeader(line))
        {
            return Fault("MTX001", 1, Quote(line), $"the header \"{Header}\"");
        }

        line = NextDataLine(reader, ref lineNumber);
        string[] words = Words(line);
        if (words.Length != 3
            || !TryCount(words[0], out int size)
            || !TryCount(words[1], out int columns)
            || !TryCount(words[2], out int entries))
        {
            return Fault("MTX002", 1, Quote(line), "numbers of rows, columns and entries");
        }

        if (columns != size)
        {
            return Fault(
                "MTX003", 1, string.Create(CultureInfo.InvariantCulture, $"{size} rows and {columns} columns"),
                "a square matrix");
        }

        // The count is only a claim until the lines are there, so no memory is set aside by it.
        SparseMatrixBuilder builder = new(size);
        for (int k = 0; k < entries; k++)
        {
            line = NextDataLine(reader, ref lineNumber);
            words = Words(line);
            if (words.Length != 3
                || !TryCount(words[0], out int row)
                || !TryCount(words[1], out int column)
                || !double.TryParse(words[2], NumberStyles.Float, CultureInfo.InvariantCulture, out double value))
            {
                return Fault("MTX004", 1, Quote(line), "a row, a column and a value");
            }

            if (column < 1 || row < column || row > size)
            {
                return Fault(
                    "MTX005", 1, string.Create(CultureInfo.InvariantCulture, $"row {row}, column {column}"),
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"an entry on or below the diagonal of {size} rows, counted from 1"));
            }

            builder.Add(row - 1, column - 1, value);
        }

        line = NextDataLine(reader, ref lineNumber);
        if (line is not null)
        {
            return Fault(
                "MTX006", 1, Quote(line),
                string.Create(CultureInfo.InvariantCulture, $"the end after {entries} entries"));
        }

        SymmetricSparseMatrix matrix = builder.Build();
        if (matrix.NonZeroCount != entries)
        {
            return Fault(
                "MTX007", 0,
                string.Create(CultureInfo.InvariantCulture, $"{entries - matrix.NonZeroCount} entries stated twice"),
                "every entry once");
        }

        return new MatrixMarketResult(matrix, []);

        MatrixMarketResult Fault(string code, int column, string found, string expected)
        {
            SourcePosition position = column == 0
                ? SourcePosition.WholeFile(fileName)
                : new SourcePosition(fileName, lineNumber, column);
            return new MatrixMarketResult(null, [new Diagnostic(code, Severity.Error, position, found, expected)]);
        }
    }

    private static bool IsSymmetricHeader(string line)
    {
        string[] words = Words(line);
        return words.Length == 5
            && words[0].Equals("%%MatrixMarket", StringComparison.OrdinalIgnoreCase)
            && words[1].Equals("matrix", StringComparison.OrdinalIgnoreCase)
            && words[2].Equals("coordinate", StringComparison.OrdinalIgnoreCase)
            && (words[3].Equals("real", StringComparison.OrdinalIgnoreCase)
                || words[3].Equals("integer", StringComparison.OrdinalIgnoreCase))
            && words[4].Equals("symmetric", StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>The next line that is neither blank nor a comment; null at the end.</summary>
    private static string? NextDataLine(TextReader reader, ref int lineNumber)
    {
        while (true)
        {
            string? line = reader.ReadLine();
            lineNumber++;
            if (line is null || (line.Length > 0 && line[0] != '%' && !string.IsNullOrWhiteSpace(line)))
            {
                return line;
            }
        }
    }

    private static string[] Words(string? line) =>
        line is null ? [] : line.Split(Blanks, StringSplitOptions.RemoveEmptyEntries);

    private static bool TryCount(string word, out int count) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out count) && count < Array.MaxLength;

    private static string Quote(string? line) => line is null ? "the end of the file" : $"\"{line}\"";
}
