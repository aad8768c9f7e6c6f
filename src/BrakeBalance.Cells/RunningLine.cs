using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace BrakeBalance.Cells;

/// <summary>The line of a cell that runs. Without debug information an exception does not know it, so cells say it themselves.</summary>
public static class RunningLine
{
    /// <summary>The line of the statement that runs, from 1; what it calls does not change it. Null before the first.</summary>
    public static int? Now { get; set; }

    /// <summary>The text of a cell in which each statement first says its line; no line moves.</summary>
    internal static string Say(CompilationUnitSyntax cell)
    {
        var said = new List<(int At, string Text)>();
        foreach (MemberDeclarationSyntax member in cell.ContainsDiagnostics ? [] : cell.Members)
        {
            if (member is GlobalStatementSyntax { Statement: { } statement })
                Say(statement, said);
            else if (member is FieldDeclarationSyntax)
                said.Add((member.SpanStart, Set(member)));
        }

        string code = cell.ToFullString();
        var text = new StringBuilder();
        int from = 0;
        foreach ((int at, string set) in said.OrderBy(one => one.At))
        {
            text.Append(code, from, at - from).Append(set);
            from = at;
        }

        return text.Append(code, from, code.Length - from).ToString();
    }

    // What a function, a lambda or another cell does belongs to the line that asked for it.
    private static void Say(StatementSyntax statement, List<(int At, string Text)> said)
    {
        bool isLone = statement is not BlockSyntax && statement.Parent is not (BlockSyntax or GlobalStatementSyntax or SwitchSectionSyntax);
        if (statement is LocalFunctionStatementSyntax or LabeledStatementSyntax || (isLone && statement is LocalDeclarationStatementSyntax))
            return;

        // The head of a loop runs again after its last statement and after "continue".
        string again = IsLoop(statement.Parent) ? Set(statement.Parent!) : "";
        SyntaxNode running = statement is ContinueStatementSyntax ? statement.Ancestors().FirstOrDefault(IsLoop) ?? statement : statement;
        if (statement is not BlockSyntax)
            said.Add((statement.SpanStart, (isLone ? "{" : "") + Set(running)));
        IEnumerable<SyntaxNode> inside = statement.DescendantNodes(
            node => ReferenceEquals(node, statement) || node is not (StatementSyntax or AnonymousFunctionExpressionSyntax));
        foreach (StatementSyntax inner in inside.OfType<StatementSyntax>())
            Say(inner, said);
        if (statement is BlockSyntax block)
            said.Add((block.CloseBraceToken.SpanStart, again));
        else if (isLone)
            said.Add((statement.Span.End, again + "}"));
    }

    private static bool IsLoop(SyntaxNode? node) =>
        node is CommonForEachStatementSyntax or ForStatementSyntax or WhileStatementSyntax or DoStatementSyntax;

    private static string Set(SyntaxNode node) => FormattableString.Invariant(
        $"global::{typeof(RunningLine).FullName}.{nameof(Now)}={node.GetLocation().GetLineSpan().StartLinePosition.Line + 1};");
}
