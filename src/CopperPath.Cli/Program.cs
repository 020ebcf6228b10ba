using System.Text;
using CommandLine;
using CommandLine.Text;
using CopperPath.Cli.Commands;
using CopperPath.Cli.Output;

namespace CopperPath.Cli;

/// <summary>Arguments -> command -> exit code.</summary>
public static class Program
{
    public static int Main(string[] arguments)
    {
        Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        int? width = Console.IsOutputRedirected || Console.WindowWidth <= 0 ? null : Console.WindowWidth;
        using Outlet output = new(Console.OpenStandardOutput());
        using Outlet error = new(Console.OpenStandardError());
        Terminal terminal = new(WriterTo(output), WriterTo(error), Console.IsErrorRedirected, width);
        using Interruption interruption = Interruption.WatchFor(terminal);
        int exit = Run(arguments, terminal);
        if (output.Fault is null)
        {
            return exit;
        }

        terminal.Error.WriteLine($"standard output: error OUT004: found a place that can not be written ({output.Fault}); expected one that takes the answer");
        return ExitCode.CouldNotJudge;
    }

    private static TextWriter WriterTo(Outlet outlet) =>
        TextWriter.Synchronized(new StreamWriter(outlet, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true });

    /// <summary>What each command can be told.</summary>
    internal static Type[] CommandOptions { get; } = [typeof(CheckOptions), typeof(SurveyOptions), typeof(CurveOptions)];

    /// <summary>The whole program with its streams handed in. Whatever happens ends in an exit code and, where it is a fault, one line.</summary>
    public static int Run(string[] arguments, Terminal terminal)
    {
        try
        {
            return Dispatch(arguments, terminal);
        }
        catch (Exception fault) when (!Fault.IsCancellation(fault))
        {
            terminal.EndProgress();
            terminal.Error.WriteLine(Fault.LineOf(fault));
            return ExitCode.CouldNotJudge;
        }
    }

    private static int Dispatch(string[] arguments, Terminal terminal)
    {
        if (arguments.Length > 1 && Array.IndexOf(arguments, "--") < 0 && arguments.Any(argument => argument is "-h" or "--help"))
        {
            arguments = [arguments[0], "--help"];
        }

        if (Complaint.OfValues(arguments, CommandOptions) is { } complaint)
        {
            terminal.Error.WriteLine(complaint);
            return ExitCode.CouldNotJudge;
        }

        using Parser parser = new(settings => settings.HelpWriter = null);
        return parser.ParseArguments(arguments.Select(WithLongHelp), CommandOptions).MapResult(
            (CheckOptions options) => CheckCommand.Run(options, terminal),
            (SurveyOptions options) => SurveyCommand.Run(options, terminal),
            (CurveOptions options) => CurveCommand.Run(options, terminal),
            errors => Answer(parser, arguments, [.. errors], terminal));
    }

    /// <summary>The parser knows the long form only.</summary>
    private static string WithLongHelp(string argument) => argument == "-h" ? "--help" : argument;

    /// <summary>Where no command runs: help or the version where asked for, else one line on what can not be understood.</summary>
    private static int Answer(Parser parser, string[] arguments, IReadOnlyList<Error> errors, Terminal terminal)
    {
        string command = arguments.Length > 0 ? arguments[0] : "";
        string? helpOn = command == "help" ? arguments.ElementAtOrDefault(1) : null;
        if (errors.Any(error => error.Tag == ErrorType.VersionRequestedError))
        {
            terminal.Out.WriteLine(Product.NameAndVersion);
            return ExitCode.WithinLimits;
        }

        if (helpOn is not null && !CommandOptions.Any(options => Complaint.NameOf(options) == helpOn))
        {
            terminal.Error.WriteLine(Complaint.UnknownCommand(helpOn, CommandOptions));
            return ExitCode.CouldNotJudge;
        }

        if (errors.Any(error => error.Tag is ErrorType.HelpRequestedError or ErrorType.HelpVerbRequestedError))
        {
            WriteHelp(parser.ParseArguments(arguments.Select(WithLongHelp), CommandOptions), terminal.Out);
            return ExitCode.WithinLimits;
        }

        if (arguments.Length == 0)
        {
            WriteHelp(parser.ParseArguments(["help"], CommandOptions), terminal.Error);
        }

        terminal.Error.WriteLine(Complaint.Of(errors, command, CommandOptions));
        return ExitCode.CouldNotJudge;
    }

    private static void WriteHelp(ParserResult<object> parsed, TextWriter writer)
    {
        HelpText help = HelpText.AutoBuild(parsed, text =>
        {
            text.Heading = Product.NameAndVersion;
            text.Copyright = Product.Purpose;
            text.AdditionalNewLineAfterOption = false;
            text.AddPostOptionsLine("Exit codes: 0 all within limits over the range of what is not known, 1 findings beyond limits, 2 could not judge, 3 within limits as stated only, of several briefs the gravest: 2 before 1 before 3; 130 interrupted (143 by SIGTERM).");
            return text;
        });
        foreach (string line in help.ToString().ReplaceLineEndings("\n").Split('\n'))
        {
            writer.WriteLine(line);
        }
    }
}
