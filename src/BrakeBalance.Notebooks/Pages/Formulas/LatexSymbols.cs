namespace BrakeBalance.Notebooks.Pages.Formulas;

/// <summary>The commands that stand for one symbol, one name or one space.</summary>
internal static class LatexSymbols
{
    /// <summary>Commands that stand for a letter.</summary>
    public static readonly IReadOnlyDictionary<string, string> Letters = Table("""
        alpha α  beta β  gamma γ  delta δ  epsilon ϵ  varepsilon ε  zeta ζ  eta η  theta θ  vartheta ϑ  iota ι  kappa κ
        lambda λ  mu μ  nu ν  xi ξ  pi π  rho ρ  varrho ϱ  sigma σ  tau τ  upsilon υ  phi ϕ  varphi φ  chi χ  psi ψ  omega ω
        ell ℓ
        """);

    /// <summary>Commands that stand for a letter or sign set upright.</summary>
    public static readonly IReadOnlyDictionary<string, string> UprightLetters = Table("""
        Gamma Γ  Delta Δ  Theta Θ  Lambda Λ  Xi Ξ  Pi Π  Sigma Σ  Upsilon Υ  Phi Φ  Psi Ψ  Omega Ω
        infty ∞  partial ∂  nabla ∇  emptyset ∅  degree °
        ldots …  dots …  cdots ⋯  vdots ⋮  ddots ⋱  % %  $ $  # #  & &  _ _
        """);

    /// <summary>Commands that stand for an operator or a relation.</summary>
    public static readonly IReadOnlyDictionary<string, string> Operators = Table("""
        cdot ⋅  times ×  div ÷  pm ±  mp ∓  ast ∗  circ ∘  bullet ∙  le ≤  leq ≤  ge ≥  geq ≥  ne ≠  neq ≠
        ll ≪  gg ≫  lt <  gt >  approx ≈  equiv ≡  sim ∼  simeq ≃  cong ≅  propto ∝  to →
        rightarrow →  leftarrow ←  leftrightarrow ↔
        Rightarrow ⇒  Leftarrow ⇐  Leftrightarrow ⇔  implies ⟹  iff ⟺  mapsto ↦  uparrow ↑  downarrow ↓  in ∈  notin ∉
        subset ⊂  cup ∪  cap ∩  land ∧  lor ∨  lnot ¬  forall ∀  exists ∃  mid ∣  parallel ∥  perp ⊥
        angle ∠  therefore ∴  colon :
        """);

    /// <summary>Commands that stand for a delimiter.</summary>
    public static readonly IReadOnlyDictionary<string, string> Delimiters = Table("""
        { {  } }  lbrace {  rbrace }  lvert |  rvert |  vert |  | ‖  lVert ‖  rVert ‖  langle ⟨  rangle ⟩  lfloor ⌊  rfloor ⌋
        lceil ⌈  rceil ⌉  lbrack [  rbrack ]
        """);

    /// <summary>Big operators whose limits stand above and below them in a display.</summary>
    public static readonly IReadOnlyDictionary<string, string> LargeOperators = Table("""
        sum ∑  prod ∏  bigcup ⋃  bigcap ⋂
        """);

    /// <summary>Integrals, whose limits stand beside them.</summary>
    public static readonly IReadOnlyDictionary<string, string> Integrals = Table("""
        int ∫  iint ∬  iiint ∭  oint ∮
        """);

    /// <summary>Named functions.</summary>
    public static readonly IReadOnlySet<string> Functions = new HashSet<string>
    {
        "sin", "cos", "tan", "cot", "arcsin", "arccos", "arctan", "sinh", "cosh", "tanh", "exp", "ln", "log", "lg", "arg", "deg", "dim",
    };

    /// <summary>Named functions whose limits stand below them in a display.</summary>
    public static readonly IReadOnlySet<string> LimitFunctions = new HashSet<string> { "lim", "max", "min", "sup", "inf" };

    /// <summary>Accents over one symbol.</summary>
    public static readonly IReadOnlyDictionary<string, string> Accents = Table("""
        hat ^  bar ¯  dot ˙  ddot ¨  tilde ~  vec →  check ˇ  acute ´
        """);

    /// <summary>Marks that stretch over or under a whole expression: the mark, and whether it goes below.</summary>
    public static readonly IReadOnlyDictionary<string, (string Mark, bool Below)> Stretches = Table("""
        overline ‾  widehat ^  widetilde ~  overrightarrow →  overbrace ⏞  underline _  underbrace ⏟
        """).ToDictionary(pair => pair.Key, pair => (pair.Value, pair.Key.StartsWith("under", StringComparison.Ordinal)));

    /// <summary>Spaces, in em.</summary>
    public static readonly IReadOnlyDictionary<string, string> Spaces = Table("""
        , 0.167em  thinspace 0.167em  : 0.222em  > 0.222em  medspace 0.222em  ; 0.278em  thickspace 0.278em  ! -0.167em
        quad 1em  qquad 2em  ␠ 0.25em  enspace 0.5em
        """);

    /// <summary>Environments: opening fence, closing fence, how the columns align (repeated to the right), and display style.</summary>
    public static readonly IReadOnlyDictionary<string, (string Open, string Close, string Columns, bool Display)> Environments =
        new Dictionary<string, (string, string, string, bool)>
        {
            ["matrix"] = ("", "", "c", false),
            ["pmatrix"] = ("(", ")", "c", false),
            ["bmatrix"] = ("[", "]", "c", false),
            ["vmatrix"] = ("|", "|", "c", false),
            ["array"] = ("", "", "c", false),
            ["cases"] = ("{", "", "l", false),
            ["gathered"] = ("", "", "c", true),
            ["aligned"] = ("", "", "rl", true),
            ["align"] = ("", "", "rl", true),
            ["align*"] = ("", "", "rl", true),
            ["split"] = ("", "", "rl", true),
        };

    /// <summary>Reads names and values that alternate, separated by white space; ␠ stands for a space.</summary>
    private static Dictionary<string, string> Table(string text) => text
        .Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Chunk(2)
        .ToDictionary(pair => pair[0] == "␠" ? " " : pair[0], pair => pair[1]);
}
