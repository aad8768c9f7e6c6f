using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace BrakeBalance.Cells;

/// <summary>The names that fit at a place in a cell, and what they stand for.</summary>
internal sealed class CellNames
{
    private readonly SemanticModel _model;
    private readonly ILookup<string, ISymbol> _symbols;

    /// <summary>Looks the names up.</summary>
    /// <param name="cell">The cell, after those that it needs.</param>
    /// <param name="place">How many letters stand before the place.</param>
    public CellNames(CSharpCompilation cell, int place)
    {
        SyntaxTree tree = cell.SyntaxTrees.Single();
        _model = cell.GetSemanticModel(tree);
        SyntaxToken left = tree.GetRoot().FindToken(Math.Max(0, place - 1));
        if (left.SpanStart >= place)
            left = left.GetPreviousToken();
        bool isWord = left.Span.End >= place && !left.IsKind(SyntaxKind.InterpolatedStringTextToken)
            && SyntaxFacts.IsIdentifierStartCharacter(left.Text.FirstOrDefault());
        From = isWord ? left.SpanStart : place;
        _symbols = Fitting(isWord ? left.GetPreviousToken() : left).Where(symbol => symbol.CanBeReferencedByName && !IsOurs(symbol))
            .ToLookup(symbol => symbol.Name, StringComparer.Ordinal);
    }

    /// <summary>Where the word begins that a name would replace, up to the place.</summary>
    public int From { get; }

    /// <summary>Each name and its kind in a word, the nearest first.</summary>
    public IEnumerable<(string Name, string Kind)> All => _symbols.OrderBy(group => group.Min(Distance))
        .ThenBy(group => group.Key, StringComparer.OrdinalIgnoreCase).Select(group => (group.Key, Kind(group.First())));

    /// <summary>What a name stands for: each as it is declared, and the identifier of its documentation.</summary>
    public IEnumerable<(string Declared, string? Documented)> Explain(string name) => _symbols[name].Select(symbol => (
        symbol.ToMinimalDisplayString(_model, From, SymbolDisplayFormat.MinimallyQualifiedFormat),
        ((symbol as IMethodSymbol)?.ReducedFrom ?? symbol).OriginalDefinition.GetDocumentationCommentId()));

    private IEnumerable<ISymbol> Fitting(SyntaxToken left)
    {
        if (left.IsKind(SyntaxKind.DotToken))
            return Owner(left.Parent!) is { } owner ? Members(owner) : [];
        bool isText = left.Span.End > From || left.IsKind(SyntaxKind.InterpolatedStringTextToken);
        if (isText || _model.SyntaxTree.GetRoot().FindTrivia(Math.Max(0, From - 1)).Kind() is
            SyntaxKind.SingleLineCommentTrivia or SyntaxKind.MultiLineCommentTrivia)
            return [];
        // What an object is made with is its properties; what a list is made with is anything.
        return left.Kind() is SyntaxKind.OpenBraceToken or SyntaxKind.CommaToken && left.Parent is InitializerExpressionSyntax
        { Parent: (BaseObjectCreationExpressionSyntax or WithExpressionSyntax) and { } made } && _model.GetTypeInfo(made).Type is { } type
            && type.AllInterfaces.All(one => one.SpecialType != SpecialType.System_Collections_IEnumerable)
                ? Of(type).Where(member => member is IPropertySymbol { SetMethod: not null }) : _model.LookupSymbols(From);
    }

    private static ExpressionSyntax? Owner(SyntaxNode dotted) => dotted switch
    {
        MemberAccessExpressionSyntax member => member.Expression,
        QualifiedNameSyntax name => name.Left,
        MemberBindingExpressionSyntax => dotted.FirstAncestorOrSelf<ConditionalAccessExpressionSyntax>()?.Expression,
        _ => null,
    };

    private IEnumerable<ISymbol> Members(ExpressionSyntax owner)
    {
        // A line that ends with a dot is read together with the next, as the name of a type.
        ExpressionSyntax read = owner.Parent is QualifiedNameSyntax ? SyntaxFactory.ParseExpression(owner.ToString()) : owner;
        SymbolInfo symbol = ReferenceEquals(read, owner) ? _model.GetSymbolInfo(owner)
            : _model.GetSpeculativeSymbolInfo(owner.SpanStart, read, SpeculativeBindingOption.BindAsExpression);
        TypeInfo type = ReferenceEquals(read, owner) ? _model.GetTypeInfo(owner)
            : _model.GetSpeculativeTypeInfo(owner.SpanStart, read, SpeculativeBindingOption.BindAsExpression);
        return symbol.Symbol switch
        {
            INamespaceSymbol space => _model.LookupNamespacesAndTypes(From, space),
            ITypeSymbol named => _model.LookupStaticMembers(From, named),
            _ => type.Type is { } instance ? Of(instance) : [],
        };
    }

    private IEnumerable<ISymbol> Of(ITypeSymbol type) =>
        _model.LookupSymbols(From, type is INamedTypeSymbol { OriginalDefinition.SpecialType: SpecialType.System_Nullable_T } maybe
            && _model.SyntaxTree.GetRoot().FindToken(From - 1).Parent is MemberBindingExpressionSyntax ? maybe.TypeArguments[0] : type,
            includeReducedExtensionMethods: true).Where(symbol => !symbol.IsStatic && symbol is not ITypeSymbol);

    // What the cell and those above it name, then what belongs to braking, then all else; what every object has stands last.
    private static int Distance(ISymbol symbol) =>
        symbol is ILocalSymbol or IParameterSymbol or IRangeVariableSymbol || symbol.ContainingType is { IsScriptClass: true } ? 0
            : symbol.Name is nameof(Equals) or nameof(GetHashCode) or nameof(GetType) or nameof(ToString) or "Deconstruct" ? 3
            : symbol.ContainingAssembly?.Name is "BrakeBalance" or "BrakeBalance.Charts" ? 1 : 2;

    private static string Kind(ISymbol symbol) => symbol switch
    {
        ITypeSymbol type => type.TypeKind.ToString(),
        IFieldSymbol { ContainingType.IsScriptClass: true } or ILocalSymbol or IRangeVariableSymbol => "variable",
        _ => symbol.Kind.ToString(),
    };

    private static bool IsOurs(ISymbol symbol) =>
        symbol is INamespaceSymbol { Name: nameof(Cells), ContainingNamespace.Name: nameof(BrakeBalance) };
}
