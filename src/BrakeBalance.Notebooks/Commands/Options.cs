using System.CommandLine;

namespace BrakeBalance.Notebooks.Commands;

internal static class Options
{
    /// <summary>An option that may be left out.</summary>
    public static Option<T> Of<T>(string name, string description, string? help = null) =>
        new(name) { Description = description, HelpName = help };

    /// <summary>An option with what it is when left out.</summary>
    public static Option<T> Of<T>(string name, string description, string? help, T usual) =>
        new(name) { Description = description, HelpName = help, DefaultValueFactory = _ => usual };

    public static Option<bool> Json() => Of<bool>("--json", "Writes JSON for scripts; keys carry their unit");

    public static Option<bool> Keys() => Of<bool>("--keys", "Lists the keys of the JSON and what each means, and does nothing else");

    public static Option<string> Folder(string usual) => Of("--output", "The folder to write into", "FOLDER", usual);

    /// <summary>The file of a command that can answer without it, or says itself that it is missing.</summary>
    public static Argument<string?> File(string description = "The vehicle file") =>
        new("FILE") { Description = description, Arity = ArgumentArity.ZeroOrOne };
}
