using System.CommandLine;
using BrakeBalance.Notebooks.Documents;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>notebooks strip</c> and <c>notebooks verify</c>: the form in which notebooks are kept in git.</summary>
internal static class NotebooksCommand
{
    public static Command Create(Terminal terminal)
    {
        var files = new Argument<string[]>("FILE")
        {
            Description = "Notebook files; all notebooks of the repository when none is named",
            Arity = ArgumentArity.ZeroOrMore,
        };
        var strip = new Command("strip", "Bring notebooks into the form kept in git: no outputs, no counts, stable ids.") { files };
        strip.SetAction(parsed => Strip(terminal, Files(parsed.GetValue(files))));
        var verify = new Command("verify", "Say which notebooks are not in the form kept in git, or break a rule for notebooks.") { files };
        verify.SetAction(parsed => Verify(terminal, Files(parsed.GetValue(files))));
        return new Command("notebooks", "Keep the notebook files in order.") { strip, verify };
    }

    private static int Strip(Terminal terminal, IReadOnlyList<string> files)
    {
        IReadOnlyList<(string Path, string Text, string Canonical)> read = Read(files);
        foreach ((string path, string text, string canonical) in read.Where(file => file.Text != file.Canonical))
        {
            AtomicFile.Write(path, canonical);
            terminal.Output.WriteLine($"Stripped {path}");
        }

        return ExitCode.Success;
    }

    private static int Verify(Terminal terminal, IReadOnlyList<string> files)
    {
        List<string> broken = [];
        foreach ((string path, string text, string canonical) in Read(files))
        {
            if (text != canonical)
            {
                broken.Add($"{path}: not in the form kept in git; 'notebooks strip' brings it there.");
            }

            broken.AddRange(NotebookRules.Broken(NotebookFile.Parse(text, path)).Select(rule => $"{path}: {rule}."));
        }

        broken.ForEach(terminal.Error.WriteLine);
        terminal.Output.WriteLine(Invariant.Text($"{files.Count} notebooks looked at, {broken.Count} problems."));
        return broken.Count == 0 ? ExitCode.Success : ExitCode.Failed;
    }

    private static List<(string Path, string Text, string Canonical)> Read(IReadOnlyList<string> files)
    {
        List<string> problems = [];
        List<(string Path, string Text, string Canonical)> read = NotebookFile.ReadAll(files, path =>
        {
            string text = File.ReadAllText(path);
            return (path, text, CanonicalNotebook.Text(text, path));
        }, problems);
        return problems.Count == 0 ? read : throw new BadInputException(problems);
    }

    private static IReadOnlyList<string> Files(string[]? named) =>
        named is { Length: > 0 } ? named : NotebookFile.In(Repository.Folder("notebooks"));
}
