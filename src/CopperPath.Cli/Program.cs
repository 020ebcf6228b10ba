using System.Text;
using CommandLine;
using CommandLine.Text;
using CopperPath.Cli.Commands;

namespace CopperPath.Cli;

/// <summary>Arguments -> command -> exit code.</summary>
public static class Program
{
    public static int Main(string[] arguments)
    {
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        int? width = Console.IsOutputRedirected || Console.WindowWidth <= 0 ? null : Console.WindowWidth;
        return Run(arguments, new Terminal(Console.Out, Console.Error, Console.IsErrorRedirected, width));
    }

    /// <summary>What each command can be told.</summary>
    internal static Type[] CommandOptions { get; } = [typeof(CheckOptions), typeof(SurveyOptions), typeof(CurveOptions)];

    /// <summary>The whole program with its streams handed in.</summary>
    public static int Run(string[] arguments, Terminal terminal)
    {
        using Parser parser = new(settings =>
        {
            settings.HelpWriter = null;
            settings.CaseInsensitiveEnumValues = true;
        });
        ParserResult<object> parsed = parser.ParseArguments(arguments, CommandOptions);
        return parsed.MapResult(
            (CheckOptions options) => CheckCommand.Run(options, terminal),
            (SurveyOptions options) => SurveyCommand.Run(options, terminal),
            (CurveOptions options) => CurveCommand.Run(options, terminal),
            errors => ShowHelp(parsed, [.. errors], terminal));
    }

    private static int ShowHelp(ParserResult<object> parsed, IReadOnlyList<Error> errors, Terminal terminal)
    {
        HelpText help = HelpText.AutoBuild(parsed, text =>
        {
            text.Heading = Product.NameAndVersion;
            text.Copyright = Product.Purpose;
            text.AdditionalNewLineAfterOption = false;
            text.AddPostOptionsLine("Exit codes: 0 all within limits, 1 findings beyond limits, 2 could not judge; of several briefs the largest.");
            return text;
        });
        bool asked = errors.All(error => error.Tag is ErrorType.HelpRequestedError or ErrorType.HelpVerbRequestedError or ErrorType.VersionRequestedError);
        if (errors.Any(error => error.Tag == ErrorType.VersionRequestedError))
        {
            terminal.Out.WriteLine(Product.NameAndVersion);
        }
        else
        {
            (asked ? terminal.Out : terminal.Error).WriteLine(help);
        }

        return asked ? ExitCode.WithinLimits : ExitCode.CouldNotJudge;
    }
}
