using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>C# as HTML with its keywords, literals and comments marked.</summary>
internal static class CodeHighlighter
{
    private static readonly CSharpParseOptions Script = new(kind: SourceCodeKind.Script);

    /// <summary>Marks up a cell's code; every character of the source appears, escaped, in order.</summary>
    public static string Html(string source)
    {
        var html = new StringBuilder();
        foreach (SyntaxToken token in SyntaxFactory.ParseTokens(source, options: Script))
        {
            AppendTrivia(html, token.LeadingTrivia);
            Append(html, token.Text, ClassOf(token));
            AppendTrivia(html, token.TrailingTrivia);
        }
        return html.ToString();
    }

    private static void AppendTrivia(StringBuilder html, SyntaxTriviaList list)
    {
        foreach (SyntaxTrivia trivia in list)
        {
            bool comment = trivia.Kind() is SyntaxKind.SingleLineCommentTrivia or SyntaxKind.MultiLineCommentTrivia;
            Append(html, trivia.ToFullString(), comment ? "c" : trivia.IsDirective ? "d" : null);
        }
    }

    private static string? ClassOf(SyntaxToken token) => token.Kind() switch
    {
        SyntaxKind.NumericLiteralToken => "n",
        SyntaxKind.StringLiteralToken or SyntaxKind.CharacterLiteralToken or SyntaxKind.InterpolatedStringToken
            or SyntaxKind.SingleLineRawStringLiteralToken or SyntaxKind.MultiLineRawStringLiteralToken => "s",
        _ when token.IsKeyword() || token.Text is "var" or "with" or "await" or "record" => "k",
        _ => null,
    };

    private static void Append(StringBuilder html, string text, string? mark)
    {
        if (text.Length == 0)
            return;
        if (mark is null)
            html.Append(HtmlText.Escape(text));
        else
            html.Append("<span class=\"").Append(mark).Append("\">").Append(HtmlText.Escape(text)).Append("</span>");
    }
}
