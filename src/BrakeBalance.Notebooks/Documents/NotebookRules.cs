using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace BrakeBalance.Notebooks.Documents;

/// <summary>What keeps the notebooks readable: short cells, one place for set-up, definitions in the assemblies.</summary>
internal static class NotebookRules
{
    /// <summary>A code cell has at most so many lines that are not blank.</summary>
    public const int MostLines = 12;

    /// <summary>The tag of the code cell whose output opens the page.</summary>
    public const string FirstScreen = "first-screen";

    private static readonly CSharpParseOptions Script = new(kind: SourceCodeKind.Script);

    /// <summary>Looks a notebook over.</summary>
    /// <returns>Everything that breaks a rule, each naming its cell; empty when all is well.</returns>
    public static IReadOnlyList<string> Broken(NotebookDocument notebook)
    {
        List<string> broken = [];
        if (notebook.Cells is not [{ IsCode: false } first, ..] || !first.Source.StartsWith("# ", StringComparison.Ordinal))
        {
            broken.Add("the first cell must be prose that starts with a heading '# …'");
        }

        int headings = notebook.Cells.Where(cell => !cell.IsCode).Sum(TopHeadings);
        if (headings != 1)
        {
            broken.Add(Invariant.Text($"it must have one top-level heading, not {headings}"));
        }

        NotebookCell[] opening = [.. notebook.Cells.Where(cell => cell.Tags.Contains(FirstScreen))];
        if (opening.Length > 1 || opening.Any(cell => !cell.IsCode))
        {
            broken.Add($"at most one code cell, and no prose, may have the tag {FirstScreen}");
        }

        NotebookCell? setup = notebook.Cells.FirstOrDefault(cell => cell.IsCode);
        foreach (NotebookCell cell in notebook.Cells.Where(cell => cell.IsCode))
        {
            IEnumerable<string> problems = cell == setup ? Setup(cell) : Ordinary(cell);
            broken.AddRange(problems.Select(problem => $"cell {cell.Id}: {problem}"));
        }

        return broken;
    }

    private static IEnumerable<string> Setup(NotebookCell cell)
    {
        if (!cell.Source.StartsWith("#load \"", StringComparison.Ordinal) || !cell.Source.EndsWith("_setup.csx\"", StringComparison.Ordinal)
            || cell.Source.Contains('\n'))
        {
            yield return "the first code cell is the line that loads _setup.csx, and nothing else";
        }
    }

    private static IEnumerable<string> Ordinary(NotebookCell cell)
    {
        int lines = cell.Source.Split('\n').Count(line => !string.IsNullOrWhiteSpace(line));
        if (lines > MostLines)
        {
            yield return Invariant.Text($"{lines} lines of code; at most {MostLines}");
        }

        if (cell.Source.StartsWith("#!", StringComparison.Ordinal) || cell.Source.Contains("\n#!", StringComparison.Ordinal))
        {
            yield return "magic commands (#!…) run in one kernel only";
        }

        SyntaxNode root = CSharpSyntaxTree.ParseText(cell.Source, Script).GetRoot();
        if (root.DescendantTrivia(descendIntoTrivia: true)
            .Any(trivia => trivia.IsKind(SyntaxKind.ReferenceDirectiveTrivia) || trivia.IsKind(SyntaxKind.LoadDirectiveTrivia)))
        {
            yield return "#r and #load belong in the first code cell";
        }

        if (root.DescendantNodes().OfType<UsingDirectiveSyntax>().Any())
        {
            yield return "using directives belong in _setup.csx";
        }

        if (root.DescendantNodes()
            .Any(node => node is BaseTypeDeclarationSyntax or DelegateDeclarationSyntax or MethodDeclarationSyntax
            or LocalFunctionStatementSyntax))
        {
            yield return "types and methods belong in the assemblies";
        }
    }

    private static int TopHeadings(NotebookCell cell)
    {
        bool fenced = false;
        int count = 0;
        foreach (string line in cell.Source.Split('\n'))
        {
            fenced ^= line.StartsWith("```", StringComparison.Ordinal);
            count += !fenced && line.StartsWith("# ", StringComparison.Ordinal) ? 1 : 0;
        }

        return count;
    }
}
