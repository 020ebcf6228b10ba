using System.Reflection;
using CommandLine;
using CopperPath.OutsideText;

namespace CopperPath.Cli.Commands;

/// <summary>
/// What the parser refuses, as one line: what was found, what was expected, what was probably meant. The first fault
/// is told and no more, since those after it mostly come from it.
/// </summary>
internal static class Complaint
{
    /// <summary>Commands that are the parser's own.</summary>
    private static readonly string[] s_ownCommands = ["help", "version"];

    /// <param name="errors">What the parser found; not empty.</param>
    /// <param name="command">The first argument.</param>
    /// <param name="commands">What each command can be told.</param>
    public static string Of(IEnumerable<Error> errors, string command, IReadOnlyList<Type> commands)
    {
        Error first = errors.MinBy(error => error.Tag == ErrorType.MissingRequiredOptionError)!;
        Type? options = commands.FirstOrDefault(type => NameOf(type) == command);
        return first is BadVerbSelectedError verb ? UnknownCommand(verb.Token, commands)
            : options is null ? $"{Product.Alias}: error CMD002: found no command; expected {Choice.Of(commands.Select(NameOf))}; '{Product.Alias} --help' explains them"
            : $"{command}: error {OfCommand(first, options)}";
    }

    /// <summary>The word of a command.</summary>
    public static string NameOf(Type options) => options.GetCustomAttribute<VerbAttribute>()!.Name;

    /// <summary>One line on a first word that is no command; a path there tells which was meant.</summary>
    public static string UnknownCommand(string found, IReadOnlyList<Type> commands)
    {
        string[] names = [.. commands.Select(NameOf)];
        string hint = Path.Exists(found) ? $"; for a brief write '{Product.Alias} check {found}', for a folder '{Product.Alias} survey {found}'"
            : Choice.Hint(NearestName.Of(found, [.. names, .. s_ownCommands]));
        return $"{Product.Alias}: error CMD002: found '{found}'; expected {Choice.Of(names)}{hint}";
    }

    private static string OfCommand(Error error, Type options) => error switch
    {
        UnknownOptionError unknown => $"CMD003: found {Dashed(unknown.Token)}; expected {Choice.Of(LongNames(options))}"
            + Choice.Hint(NearestName.Of(unknown.Token, LongNames(options).Select(name => name[2..])) is { } near ? $"--{near}" : null),
        RepeatedOptionError twice => $"CMD006: found --{twice.NameInfo.LongName} more than once; expected it once",
        MissingRequiredOptionError => $"CMD007: found no {ArgumentOf(options)}; expected '{Product.Alias} {NameOf(options)} {ArgumentOf(options)}'",
        NamedError named => $"CMD004: found a value of --{named.NameInfo.LongName} that can not be read; expected another",
        TokenError token => $"CMD003: found '{token.Token}'; expected {Choice.Of(LongNames(options))}",
        _ => "CMD003: found arguments that can not be read; expected those of the command",
    };

    /// <summary>One line on an option that wants a value and has none, or has one and wants none; null where all is well.</summary>
    public static string? OfValues(IReadOnlyList<string> arguments, IReadOnlyList<Type> commands)
    {
        Type? options = arguments.Count == 0 ? null : commands.FirstOrDefault(type => NameOf(type) == arguments[0]);
        for (int i = 1; options is not null && i < arguments.Count && arguments[i] != "--"; i++)
        {
            string[] parts = arguments[i].Split('=', 2);
            if (Options(options).FirstOrDefault(option => parts[0] == $"--{option.LongName}" || parts[0] == $"-{option.ShortName}") is not { } known)
            {
                continue;
            }

            bool wantsValue = !string.IsNullOrEmpty(known.MetaValue);
            if (wantsValue && parts.Length == 1 && (i + 1 == arguments.Count || arguments[i + 1].StartsWith("--", StringComparison.Ordinal)))
            {
                return $"{arguments[0]}: error CMD005: found --{known.LongName} without a value; expected --{known.LongName} {known.MetaValue}";
            }

            if (!wantsValue && parts.Length == 2)
            {
                return $"{arguments[0]}: error CMD005: found '{arguments[i]}'; expected --{known.LongName} alone";
            }
        }

        return null;
    }

    private static string Dashed(string token) => token.Length == 1 ? $"-{token}" : $"--{token}";

    private static IEnumerable<string> LongNames(Type options) => Options(options).Select(option => $"--{option.LongName}");

    private static IEnumerable<OptionAttribute> Options(Type options) =>
        options.GetProperties().Select(property => property.GetCustomAttribute<OptionAttribute>()).OfType<OptionAttribute>();

    private static string ArgumentOf(Type options) =>
        options.GetProperties().Select(property => property.GetCustomAttribute<ValueAttribute>()).OfType<ValueAttribute>().First(value => value.Required).MetaName;
}
