using BrakeBalance.Notebooks.Pages.Formulas;
using Markdig.Extensions.Mathematics;
using Markdig.Renderers;
using Markdig.Renderers.Html;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Formulas inside a paragraph: one dollar sign for a formula in the line, two for one on its own line.</summary>
internal sealed class FormulaInlineRenderer(Report report) : HtmlObjectRenderer<MathInline>
{
    protected override void Write(HtmlRenderer renderer, MathInline formula)
    {
        bool display = formula.DelimiterCount == 2;
        string xml = Formula.Html(formula.Content.ToString(), display, report);
        renderer.Write(display ? $"<span class=\"bb-equation\">{xml}</span>" : xml);
    }
}

internal sealed class FormulaBlockRenderer(Report report) : HtmlObjectRenderer<MathBlock>
{
    protected override void Write(HtmlRenderer renderer, MathBlock formula)
    {
        renderer.EnsureLine();
        renderer.Write($"<div class=\"bb-equation\">{Formula.Html(formula.Lines.ToString(), display: true, report)}</div>");
        renderer.EnsureLine();
    }
}

/// <summary>One formula as HTML, or its source with the reason why it cannot be set.</summary>
internal static class Formula
{
    /// <summary>Converts a formula; a formula that fails is reported and shown as source.</summary>
    public static string Html(string latex, bool display, Report report)
    {
        try
        {
            return LatexToMathMl.Convert(latex, display);
        }
        catch (FormulaException problem)
        {
            report(problem.Message);
            return $"<code class=\"bb-formula-error\">{HtmlText.Escape(latex)}</code> " + $"<em>({HtmlText.Escape(problem.Problem)})</em>";
        }
    }
}
