using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace BrakeBalance.Cells;

/// <summary>
/// Which cells above a cell have to run before it: those that name what it uses, and those that do more than name and show.
/// </summary>
internal static class CellNeeds
{
    private static readonly CSharpParseOptions Script = new(kind: SourceCodeKind.Script);

    // A cell is asked after at each pause in typing, most cells stay as they are.
    private static readonly Dictionary<string, (HashSet<string> Named, HashSet<string> Used, bool Acts)> Known = [];

    /// <summary>For each cell the numbers of the cells that it needs, in order; those that they need are among them.</summary>
    /// <param name="cells">The sources of all cells in order.</param>
    public static int[][] Of(IReadOnlyList<string> cells)
    {
        (HashSet<string> Named, HashSet<string> Used, bool Acts)[] facts =
            [.. cells.Select(cell => Known.TryGetValue(cell, out var known) ? known : Known[cell] = Facts(cell))];
        var needs = new int[cells.Count][];
        for (int cell = 0; cell < cells.Count; cell++)
        {
            IEnumerable<int> direct = Enumerable.Range(0, cell).Where(i => facts[i].Acts || facts[i].Named.Overlaps(facts[cell].Used));
            needs[cell] = [.. direct.SelectMany(i => needs[i].Append(i)).Distinct().Order()];
        }

        return needs;
    }

    private static (HashSet<string> Named, HashSet<string> Used, bool Acts) Facts(string cell)
    {
        CompilationUnitSyntax root = CSharpSyntaxTree.ParseText(cell, Script).GetCompilationUnitRoot();
        HashSet<string> named = [.. root.DescendantTokens().Where(IsName).Select(token => token.Text)];
        HashSet<string> used = [.. root.DescendantNodes().OfType<SimpleNameSyntax>()
            .Where(name => name.Parent is not MemberAccessExpressionSyntax member || member.Name != name)
            .Select(name => name.Identifier.Text)];
        bool acts = root.Usings.Count > 0 || root.DescendantTrivia().Any(trivia => trivia.IsDirective)
            || root.Members.OfType<GlobalStatementSyntax>().Any(member => member.Statement is not ExpressionStatementSyntax shown
                || (!shown.SemicolonToken.IsMissing && shown.Expression is not AssignmentExpressionSyntax
                { Left: DeclarationExpressionSyntax or TupleExpressionSyntax }));
        return (named, used, acts);
    }

    private static bool IsName(SyntaxToken token) => token.IsKind(SyntaxKind.IdentifierToken)
        && token.Parent is VariableDeclaratorSyntax or SingleVariableDesignationSyntax or MethodDeclarationSyntax
            or LocalFunctionStatementSyntax or BaseTypeDeclarationSyntax or DelegateDeclarationSyntax or PropertyDeclarationSyntax;
}
