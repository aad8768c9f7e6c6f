using System.Xml.Linq;
using BrakeBalance.Notebooks.Pages.Formulas;

namespace BrakeBalance.Notebooks.Tests.Pages;

public class LatexToMathMlTests
{
    [Theory]
    [InlineData("x", "<mi>x</mi>")]
    [InlineData("12.5", "<mn>12.5</mn>")]
    [InlineData("1.", "<mn>1</mn><mo>.</mo>")]
    [InlineData("a+b-c", "<mi>a</mi><mo>+</mo><mi>b</mi><mo>−</mo><mi>c</mi>")]
    [InlineData("a<b", "<mi>a</mi><mo>&lt;</mo><mi>b</mi>")]
    [InlineData(@"\mu\,\Omega", "<mi>μ</mi><mspace width=\"0.167em\"></mspace><mi mathvariant=\"normal\">Ω</mi>")]
    [InlineData(@"\frac{a}{b}", "<mfrac><mrow><mi>a</mi></mrow><mrow><mi>b</mi></mrow></mfrac>")]
    [InlineData(@"\frac12", "<mfrac><mn>1</mn><mn>2</mn></mfrac>")]
    [InlineData("x_1", "<msub><mi>x</mi><mn>1</mn></msub>")]
    [InlineData("x^12", "<msup><mi>x</mi><mn>1</mn></msup><mn>2</mn>")]
    [InlineData("x_i^2", "<msubsup><mi>x</mi><mi>i</mi><mn>2</mn></msubsup>")]
    [InlineData("x^2_i", "<msubsup><mi>x</mi><mi>i</mi><mn>2</mn></msubsup>")]
    [InlineData("f'", "<msup><mi>f</mi><mo>′</mo></msup>")]
    [InlineData(@"\sqrt{2}", "<msqrt><mrow><mn>2</mn></mrow></msqrt>")]
    [InlineData(@"\sqrt[3]{x}", "<mroot><mrow><mi>x</mi></mrow><mrow><mn>3</mn></mrow></mroot>")]
    [InlineData(@"\sum_{i=1}^{n} i",
        "<munderover><mo movablelimits=\"true\">∑</mo>"
            + "<mrow><mi>i</mi><mo>=</mo><mn>1</mn></mrow><mrow><mi>n</mi></mrow></munderover><mi>i</mi>")]
    [InlineData(@"\int_0^T", "<msubsup><mo>∫</mo><mn>0</mn><mi>T</mi></msubsup>")]
    [InlineData(@"\max_k", "<munder><mo movablelimits=\"true\" lspace=\"0\" rspace=\"0.167em\">max</mo><mi>k</mi></munder>")]
    [InlineData(@"\sin\theta", "<mi>sin</mi><mo>\u2061</mo><mspace width=\"0.167em\"></mspace><mi>θ</mi>")]
    [InlineData(@"\sin(x)",
        "<mi>sin</mi><mo>\u2061</mo><mo form=\"prefix\" stretchy=\"false\">(</mo><mi>x</mi><mo form=\"postfix\" stretchy=\"false\">)</mo>")]
    [InlineData(@"\text{if } x", "<mtext>if\u00A0</mtext><mi>x</mi>")]
    [InlineData(@"\mathrm{max}", "<mrow><mi>max</mi></mrow>")]
    [InlineData(@"F_\mathrm{r}", "<msub><mi>F</mi><mrow><mi mathvariant=\"normal\">r</mi></mrow></msub>")]
    [InlineData(@"\mathbf{v2}", "<mi>𝐯𝟐</mi>")]
    [InlineData(@"\dot{x}", "<mover accent=\"true\"><mrow><mi>x</mi></mrow><mo stretchy=\"false\">˙</mo></mover>")]
    [InlineData(@"\overline{ab}", "<mover accent=\"true\"><mrow><mi>a</mi><mi>b</mi></mrow><mo stretchy=\"true\">‾</mo></mover>")]
    [InlineData(@"\left( x \right.", "<mrow><mo form=\"prefix\" fence=\"true\" stretchy=\"true\">(</mo><mrow><mi>x</mi></mrow></mrow>")]
    [InlineData(@"\left\lfloor x \right\rfloor",
        "<mrow><mo form=\"prefix\" fence=\"true\" stretchy=\"true\">⌊</mo>"
            + "<mrow><mi>x</mi></mrow><mo form=\"postfix\" fence=\"true\" stretchy=\"true\">⌋</mo></mrow>")]
    [InlineData(@"a \le b \%", "<mi>a</mi><mo>≤</mo><mi>b</mi><mi mathvariant=\"normal\">%</mi>")]
    [InlineData(@"\begin{matrix} a & b \\ c & d \end{matrix}",
        "<mrow><mtable><mtr><mtd style=\"text-align:center\"><mi>a</mi></mtd><mtd style=\"text-align:center\"><mi>b</mi></mtd></mtr>"
        + "<mtr><mtd style=\"text-align:center\"><mi>c</mi></mtd><mtd style=\"text-align:center\"><mi>d</mi></mtd></mtr></mtable></mrow>")]
    public void A_formula_becomes_the_expected_elements(string latex, string expected) => Assert.Equal(expected, Body(latex));

    [Fact]
    public void Cases_have_one_brace_and_columns_set_from_the_left()
    {
        string xml = Body(@"p_2 = \begin{cases} p_1 & p_1 \le p_k \\ p_k + s\,(p_1 - p_k) & \text{above} \end{cases}");

        Assert.Contains("<mo form=\"prefix\" fence=\"true\" stretchy=\"true\">{</mo><mtable>", xml, StringComparison.Ordinal);
        Assert.Equal(4, Occurrences(xml, "text-align:left"));
        Assert.Equal(2, Occurrences(xml, "<mtr>"));
    }

    [Fact]
    public void Aligned_lines_meet_at_the_sign()
    {
        string xml = Body(@"\begin{aligned} a &= b + c \\ &= d \\ \end{aligned}");

        Assert.Equal(2, Occurrences(xml, "<mtr>"));
        Assert.Equal(2, Occurrences(xml, "text-align:right;padding-right:0"));
        Assert.Equal(2, Occurrences(xml, "text-align:left;padding-left:0"));
    }

    [Fact]
    public void The_source_goes_along_and_is_escaped()
    {
        string math = LatexToMathMl.Convert(" a < b ", display: false);

        Assert.EndsWith("<annotation encoding=\"application/x-tex\">a &lt; b</annotation></semantics></math>", math,
            StringComparison.Ordinal);
        Assert.DoesNotContain("display", math, StringComparison.Ordinal);
        Assert.Contains(" display=\"block\"", LatexToMathMl.Convert("a", display: true), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(@"a + \bias", @"Unknown command \bias", 4)]
    [InlineData(@"\begin{tikz}\end{tikz}", "Unknown environment \"tikz\"", 6)]
    [InlineData(@"\frac{a}", "An argument is missing", 8)]
    [InlineData(@"{a", "opened and not closed", 2)]
    [InlineData(@"a}", "nothing that it belongs to", 1)]
    [InlineData(@"a & b", "nothing that it belongs to", 2)]
    [InlineData(@"a \\ b", "new line", 2)]
    [InlineData(@"\left( a", "opened and not closed", 8)]
    [InlineData(@"\right)", @"\right without its \left", 0)]
    [InlineData(@"a_1_2", "A second \"_\"", 3)]
    [InlineData(@"\begin{cases} a \end{matrix}", "is closed by", 20)]
    [InlineData(@"\begin{cases} a", "opened and not closed", 15)]
    [InlineData(@"\text{a", "opened and not closed", 5)]
    [InlineData("", "empty", 0)]
    [InlineData(@"x_", "An argument is missing", 2)]
    [InlineData(@"\", "backslash", 1)]
    public void A_formula_that_cannot_be_set_says_what_and_where(string latex, string problem, int position)
    {
        var exception = Assert.Throws<FormulaException>(() => LatexToMathMl.Convert(latex, display: false));

        Assert.Contains(problem, exception.Problem, StringComparison.Ordinal);
        Assert.Equal(position, exception.Position);
        Assert.Contains(latex, exception.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Endless_nesting_is_refused_before_the_stack_ends() =>
        Assert.Throws<FormulaException>(() => LatexToMathMl.Convert(new string('{', 100_000), display: false));

    [Fact]
    public void Nesting_of_roots_is_refused_as_well() =>
        Assert.Throws<FormulaException>(() => LatexToMathMl.Convert(string.Concat(Enumerable.Repeat(@"\sqrt", 100_000)), display: false));

    [Theory]
    [MemberData(nameof(WholeFormulas))]
    public void Every_result_is_well_formed_with_the_right_number_of_children(string latex)
    {
        XElement math = XElement.Parse(LatexToMathMl.Convert(latex, display: true));

        string[] two = ["mfrac", "mroot", "msub", "msup", "munder", "mover", "semantics"];
        string[] three = ["msubsup", "munderover"];
        foreach (XElement element in math.DescendantsAndSelf())
        {
            if (two.Contains(element.Name.LocalName))
                Assert.Equal(2, element.Elements().Count());
            if (three.Contains(element.Name.LocalName))
                Assert.Equal(3, element.Elements().Count());
        }
    }

    public static TheoryData<string> WholeFormulas() =>
    [
        @"N_1 = m\,g\left(\frac{b}{E} + z\,\frac{h}{E}\right)",
        @"T_2 = \frac{m g}{2}\left[\sqrt{\left(\frac{b}{h}\right)^2 + \frac{4E}{h}\cdot\frac{T_1}{m g}} "
            + @"- \left(\frac{b}{h} + \frac{2 T_1}{m g}\right)\right]",
        @"\eta = \frac{z}{\max(f_1, f_2)} \quad \text{with } f_i = \frac{T_i}{N_i}",
        @"\begin{aligned} z &= \frac{T_1 + T_2}{m g} \\ k &\ge \frac{z + 0.07}{0.85} \end{aligned}",
        @"\underbrace{m\,g\,z}_{\text{force}} \Rightarrow \hat{p}_{\mathrm{knee}}'",
        @"\bigl( a \bigr) \lim_{x \to 0} \frac{\sin x}{x} = 1, \operatorname{sgn}(x) \overset{!}{=} \lvert x \rvert",
        @"\left\{ \begin{array}{lr} a & b \\ c & d \end{array} \right\}",
        @"\boxed{\Delta T = \frac{\int_0^{t_s} P\,\mathrm{d}t}{m_d\,c_p}}",
    ];

    private static string Body(string latex)
    {
        string math = LatexToMathMl.Convert(latex, display: false);
        const string start = "<semantics><mrow>";
        int from = math.IndexOf(start, StringComparison.Ordinal) + start.Length;
        return math[from..math.IndexOf("</mrow><annotation", StringComparison.Ordinal)];
    }

    private static int Occurrences(string text, string part) => text.Split(part).Length - 1;
}
