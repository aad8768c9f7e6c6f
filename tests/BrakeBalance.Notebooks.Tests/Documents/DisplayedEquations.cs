using System.Text;
using System.Text.RegularExpressions;

namespace BrakeBalance.Notebooks.Tests.Documents;

/// <summary>The names of displayed equations, as a row of a table writes them: what stands left of the sign, such as <c>F_in</c>.</summary>
internal static partial class DisplayedEquations
{
    private static readonly (string Latex, string Text)[] Signs =
    [
        ("\\omega", "ω"), ("\\beta", "β"), ("\\eta", "η"), ("\\theta", "θ"), ("\\Delta", "Δ"), ("\\mid", "|"), ("\\max", "max"),
        ("\\left.", ""), ("\\right|_", " "), ("\\;", " "), ("\\,", " "), ("&", ""), ("'", "′"), ("^2", "²"),
        ("_1", "₁"), ("_2", "₂"), ("_i", "₁"),
    ];

    /// <summary>The names of the equations that a cell of prose displays.</summary>
    public static IReadOnlyList<string> Names(string prose) =>
    [
        .. from Match display in Displays().Matches(prose)
           from part in Several().Split(display.Groups[1].Value)
           select Name(Sign().Split(part)[0]),
    ];

    /// <summary>Whether a cell's texts name an equation.</summary>
    public static bool IsNamed(string name, string code)
    {
        string letters = string.Join(@"\s*", name.Where(letter => letter != ' ').Select(letter => Regex.Escape(letter.ToString())));
        var whole = new Regex($@"(?<![\p{{L}}\p{{M}}_]){letters}(?![\p{{L}}\p{{M}}\p{{N}}_′])");
        return Texts().Matches(code).Any(text => whole.IsMatch(text.Value.Normalize()));
    }

    private static string Name(string latex)
    {
        string text = Words().Replace(Environments().Replace(latex, ""), "$1");
        text = Signs.Aggregate(text, (so, sign) => so.Replace(sign.Latex, sign.Text, StringComparison.Ordinal));
        text = Overlines().Replace(Dots().Replace(text, "$1\u0307"), "$1\u0304");
        text = Fractions().Replace(Roots().Replace(ShortRoots().Replace(text, "√$1"), "√($1)"), "$1/$2");
        return text.Replace("{", "", StringComparison.Ordinal).Replace("}", "", StringComparison.Ordinal).Split(": ")[^1].Trim()
            .Normalize(NormalizationForm.FormC);
    }

    [GeneratedRegex(@"(?s)\$\$(.+?)\$\$")]
    private static partial Regex Displays();

    [GeneratedRegex(@",\s*\\q?quad")]
    private static partial Regex Several();

    [GeneratedRegex(@"=|\\le\b|\\propto")]
    private static partial Regex Sign();

    [GeneratedRegex("\"[^\"\\n]*\"")]
    private static partial Regex Texts();

    [GeneratedRegex(@"\\begin\{\w+\}")]
    private static partial Regex Environments();

    [GeneratedRegex(@"\\text\{([^{}]*)\}")]
    private static partial Regex Words();

    [GeneratedRegex(@"\\dot\{([^{}]+)\}")]
    private static partial Regex Dots();

    [GeneratedRegex(@"\\overline\{([^{}]+)\}")]
    private static partial Regex Overlines();

    [GeneratedRegex(@"\\sqrt\{(\w)\}")]
    private static partial Regex ShortRoots();

    [GeneratedRegex(@"\\sqrt\{([^{}]+)\}")]
    private static partial Regex Roots();

    [GeneratedRegex(@"\\frac\{([^{}]+)\}\{([^{}]+)\}")]
    private static partial Regex Fractions();
}
