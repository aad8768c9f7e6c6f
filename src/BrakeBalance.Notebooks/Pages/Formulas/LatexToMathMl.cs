namespace BrakeBalance.Notebooks.Pages.Formulas;

/// <summary>Turns the part of LaTeX's mathematics that the notebooks use into MathML.</summary>
/// <remarks>
/// The result keeps to MathML Core, which browsers set without a script, and carries the LaTeX source as an annotation.
/// What is known: <see cref="LatexSymbols"/> (letters, operators, functions, spaces) and <see cref="LatexParser"/> (structures).
/// Anything else is an error; nothing is dropped silently.
/// </remarks>
internal static class LatexToMathMl
{
    /// <summary>Converts one formula.</summary>
    /// <param name="latex">The formula without its dollar signs.</param>
    /// <param name="display">Whether the formula stands on a line of its own.</param>
    /// <returns>One <c>math</c> element.</returns>
    /// <exception cref="FormulaException">The formula uses an unknown command or is not well formed.</exception>
    public static string Convert(string latex, bool display)
    {
        string source = latex.Trim();
        string body = new LatexParser(source).ParseFormula();
        string mode = display ? " display=\"block\"" : "";
        return $"<math xmlns=\"http://www.w3.org/1998/Math/MathML\"{mode}><semantics><mrow>{body}</mrow>"
            + $"<annotation encoding=\"application/x-tex\">{HtmlText.Escape(source)}</annotation></semantics></math>";
    }
}
