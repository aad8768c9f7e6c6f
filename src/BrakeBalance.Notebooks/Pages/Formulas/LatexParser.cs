namespace BrakeBalance.Notebooks.Pages.Formulas;

/// <summary>Recursive-descent parser from LaTeX mathematics to MathML text.</summary>
internal sealed class LatexParser(string source)
{
    private const int MaximumDepth = 60;
    private const string Apply = "<mo>\u2061</mo>";

    private readonly LatexReader reader = new(source);
    private int depth;
    private bool upright;

    /// <summary>How sub- and superscripts attach to what stands before them.</summary>
    private enum Placement
    {
        Beside,
        AboveAndBelow,
    }

    /// <summary>A piece of MathML and how scripts attach to it.</summary>
    private readonly record struct Piece(string Xml, Placement Scripts = Placement.Beside);

    public string ParseFormula()
    {
        string xml = ParseList(() => reader.AtEnd);
        return xml.Length > 0 ? xml : throw reader.Error("An empty formula");
    }

    private string ParseList(Func<bool> atEnd)
    {
        GoDeeper();
        var xml = new StringBuilder();
        while (!atEnd())
        {
            if (reader.AtEnd)
                throw reader.Error("The formula ends too early: something is opened and not closed");
            xml.Append(ParseScripted());
        }
        depth--;
        return xml.ToString();
    }

    private string ParseScripted()
    {
        Piece piece = reader.Peek() is '^' or '_' or '\'' ? new Piece("<mrow></mrow>") : ParsePiece();
        if (reader.TryTake("\\limits"))
            piece = piece with { Scripts = Placement.AboveAndBelow };
        else if (reader.TryTake("\\nolimits"))
            piece = piece with { Scripts = Placement.Beside };
        string? below = null;
        string? above = null;
        string primes = "";
        for (char next = reader.Peek(); next is '^' or '_' or '\''; next = reader.Peek())
        {
            if ((next == '_' && below is not null) || (next == '^' && above is not null))
                throw reader.Error($"A second \"{next}\" on one symbol; put the first in braces");
            reader.Take();
            if (next == '\'')
                primes += "′";
            else if (next == '_')
                below = ParseArgument();
            else
                above = ParseArgument();
        }
        if (primes.Length > 0)
            above = above is null ? $"<mo>{primes}</mo>" : $"<mrow><mo>{primes}</mo>{above}</mrow>";
        (string sub, string sup) = piece.Scripts == Placement.Beside ? ("msub", "msup") : ("munder", "mover");
        return (below, above) switch
        {
            (null, null) => piece.Xml,
            ({ } b, null) => $"<{sub}>{piece.Xml}{b}</{sub}>",
            (null, { } a) => $"<{sup}>{piece.Xml}{a}</{sup}>",
            ({ } b, { } a) when piece.Scripts == Placement.Beside => $"<msubsup>{piece.Xml}{b}{a}</msubsup>",
            ({ } b, { } a) => $"<munderover>{piece.Xml}{b}{a}</munderover>",
        };
    }

    private Piece ParsePiece()
    {
        char next = reader.Peek();
        if (next == '\\')
            return ParseCommand();
        if (next == '{')
            return new Piece(ParseGroup());
        if (next is '}' or '&')
            throw reader.Error($"A \"{next}\" with nothing that it belongs to");
        if (char.IsAsciiDigit(next))
            return new Piece($"<mn>{reader.TakeNumber()}</mn>");
        string text = reader.Take();
        return new Piece(text switch
        {
            "-" => "<mo>−</mo>",
            "*" => "<mo>∗</mo>",
            "~" => Space("0.333em"),
            "," => "<mo separator=\"true\">,</mo>",
            "(" or "[" => $"<mo form=\"prefix\" stretchy=\"false\">{text}</mo>",
            ")" or "]" => $"<mo form=\"postfix\" stretchy=\"false\">{text}</mo>",
            "|" => "<mo stretchy=\"false\">|</mo>",
            _ when Rune.IsLetter(Rune.GetRuneAt(text, 0)) => upright ? ParseUprightName(text) : $"<mi>{text}</mi>",
            "°" or "%" or "′" or "…" or "∞" => $"<mi mathvariant=\"normal\">{text}</mi>",
            "$" or "#" or "\"" or "`" or "@" => throw reader.Error($"The character \"{text}\" has no meaning in a formula"),
            _ => Operator(text),
        });
    }

    private string ParseUprightName(string first)
    {
        var name = new StringBuilder(first);
        while (!reader.AtEnd && char.IsLetter(reader.Peek()))
            name.Append(reader.Take());
        return name.Length == 1 ? $"<mi mathvariant=\"normal\">{name}</mi>" : $"<mi>{name}</mi>";
    }

    private Piece ParseCommand()
    {
        int place = reader.Position;
        string name = reader.TakeCommand();
        if (LatexSymbols.Letters.TryGetValue(name, out string? letter))
            return new Piece(upright ? $"<mi mathvariant=\"normal\">{letter}</mi>" : $"<mi>{letter}</mi>");
        if (LatexSymbols.UprightLetters.TryGetValue(name, out letter))
            return new Piece($"<mi mathvariant=\"normal\">{HtmlText.Escape(letter)}</mi>");
        if (LatexSymbols.Operators.TryGetValue(name, out string? mark))
            return new Piece(Operator(mark));
        if (LatexSymbols.Delimiters.TryGetValue(name, out mark))
            return new Piece($"<mo stretchy=\"false\">{mark}</mo>");
        if (LatexSymbols.LargeOperators.TryGetValue(name, out mark))
            return new Piece($"<mo movablelimits=\"true\">{mark}</mo>", Placement.AboveAndBelow);
        if (LatexSymbols.Integrals.TryGetValue(name, out mark))
            return new Piece($"<mo>{mark}</mo>");
        if (LatexSymbols.LimitFunctions.Contains(name))
            return new Piece($"<mo movablelimits=\"true\" lspace=\"0\" rspace=\"0.167em\">{name}</mo>", Placement.AboveAndBelow);
        if (LatexSymbols.Functions.Contains(name))
            return new Piece(ParseFunction(name));
        if (LatexSymbols.Spaces.TryGetValue(name, out string? width))
            return new Piece(Space(width));
        if (LatexSymbols.Accents.TryGetValue(name, out mark))
            return new Piece($"<mover accent=\"true\">{ParseArgument()}<mo stretchy=\"false\">{mark}</mo></mover>");
        if (LatexSymbols.Stretches.TryGetValue(name, out (string Mark, bool Below) stretch))
            return ParseStretch(stretch.Mark, stretch.Below);
        return ParseStructure(name, place);
    }

    private Piece ParseStructure(string name, int place) => name switch
    {
        "frac" => new Piece(ParseFraction()),
        "dfrac" or "cfrac" => new Piece($"<mstyle displaystyle=\"true\">{ParseFraction()}</mstyle>"),
        "tfrac" => new Piece($"<mstyle displaystyle=\"false\">{ParseFraction()}</mstyle>"),
        "sqrt" => new Piece(ParseRoot()),
        "text" or "textrm" or "mbox" or "textit" => new Piece(Text(reader.TakeRawGroup($"after \\{name}"))),
        "operatorname" => new Piece(Name(reader.TakeRawGroup("after \\operatorname")) + ApplyAndSpace()),
        "mathrm" => new Piece(ParseUpright()),
        "mathit" => new Piece(ParseArgument()),
        "mathbf" => new Piece($"<mi>{Bold(reader.TakeRawGroup("after \\mathbf"))}</mi>"),
        "left" => new Piece(ParseFenced()),
        "big" or "Big" or "bigl" or "Bigl" or "bigr" or "Bigr" => new Piece(BigDelimiter(name)),
        "begin" => new Piece(ParseEnvironment()),
        "overset" or "stackrel" => ParsePair((above, bas) => $"<mover>{bas}{above}</mover>"),
        "underset" => ParsePair((below, bas) => $"<munder>{bas}{below}</munder>"),
        "boxed" => new Piece($"<mrow style=\"border:1px solid;padding:0.35em 0.5em\">{ParseArgument()}</mrow>"),
        "phantom" => new Piece($"<mphantom>{ParseArgument()}</mphantom>"),
        "right" => throw reader.ErrorAt(place, "A \\right without its \\left"),
        "\\" => throw reader.ErrorAt(place, "A new line (\\\\) outside an environment such as aligned or cases"),
        _ => throw reader.ErrorAt(place, $"Unknown command \\{name}"),
    };

    private string ParseFunction(string name) => reader.Peek() is '^' or '_'
        ? $"<mi>{name}</mi>"
        : $"<mi>{name}</mi>{ApplyAndSpace()}";

    private string ApplyAndSpace() =>
        reader.Peek() is '(' or '[' or '^' or '_' || reader.SeesCommand("left") ? Apply : Apply + Space("0.167em");

    private string ParseFraction()
    {
        string numerator = ParseArgument();
        return $"<mfrac>{numerator}{ParseArgument()}</mfrac>";
    }

    private string ParseRoot()
    {
        if (!reader.TryTake("["))
            return $"<msqrt>{ParseArgument()}</msqrt>";
        string index = ParseList(() => reader.Peek() == ']');
        reader.Expect(']', "after the degree of a root");
        return $"<mroot>{ParseArgument()}<mrow>{index}</mrow></mroot>";
    }

    private Piece ParsePair(Func<string, string, string> build)
    {
        string mark = ParseArgument();
        return new Piece(build(mark, ParseArgument()));
    }

    private Piece ParseStretch(string mark, bool below)
    {
        string element = below ? "munder" : "mover";
        string attribute = below ? "accentunder" : "accent";
        return new Piece(
            $"<{element} {attribute}=\"true\">{ParseArgument()}<mo stretchy=\"true\">{mark}</mo></{element}>", Placement.AboveAndBelow);
    }

    private string ParseUpright()
    {
        bool before = upright;
        upright = true;
        string xml = ParseArgument();
        upright = before;
        return xml;
    }

    private string ParseFenced()
    {
        string open = Delimiter("\\left");
        string inner = ParseList(() => reader.SeesCommand("right"));
        reader.TakeCommand();
        string close = Delimiter("\\right");
        return $"<mrow>{Fence(open, "prefix")}<mrow>{inner}</mrow>{Fence(close, "postfix")}</mrow>";
    }

    private string BigDelimiter(string name)
    {
        string size = name.StartsWith('B') ? "1.8em" : "1.3em";
        string form = name.EndsWith('r') ? "postfix" : "prefix";
        return $"<mo form=\"{form}\" stretchy=\"true\" "
            + $"symmetric=\"true\" minsize=\"{size}\" maxsize=\"{size}\">{Delimiter("\\" + name)}</mo>";
    }

    private string Delimiter(string after)
    {
        if (reader.AtEnd)
            throw reader.Error($"Expected a delimiter after {after}");
        int place = reader.Position;
        if (reader.Peek() != '\\')
        {
            string text = reader.Take();
            return text is "." ? "" : "()[]|/<>".Contains(text, StringComparison.Ordinal)
                ? HtmlText.Escape(text)
                : throw reader.ErrorAt(place, $"\"{text}\" is no delimiter, after {after}");
        }
        string name = reader.TakeCommand();
        return LatexSymbols.Delimiters.TryGetValue(name, out string? mark)
            ? mark
            : throw reader.ErrorAt(place, $"\\{name} is no delimiter, after {after}");
    }

    private string ParseEnvironment()
    {
        int place = reader.Position;
        string name = reader.TakeRawGroup("after \\begin");
        if (!LatexSymbols.Environments.TryGetValue(name, out (string Open, string Close, string Columns, bool Display) shape))
            throw reader.ErrorAt(place, $"Unknown environment \"{name}\"");
        string columns = name == "array" ? ReadColumns() : shape.Columns;
        var rows = new StringBuilder();
        int column = 0;
        rows.Append("<mtr>");
        while (true)
        {
            string cell = ParseList(() => reader.Peek() == '&' || reader.Sees("\\\\") || reader.SeesCommand("end"));
            rows.Append(CultureInfo.InvariantCulture, $"<mtd style=\"{CellStyle(columns, column, shape.Display)}\">{cell}</mtd>");
            column++;
            if (reader.TryTake("&"))
                continue;
            rows.Append("</mtr>");
            if (!reader.TryTake("\\\\") || reader.SeesCommand("end"))
                break;
            column = 0;
            rows.Append("<mtr>");
        }
        reader.TakeCommand();
        int end = reader.Position;
        string closing = reader.TakeRawGroup("after \\end");
        if (closing != name)
            throw reader.ErrorAt(end, $"\\begin{{{name}}} is closed by \\end{{{closing}}}");
        string table = shape.Display ? $"<mtable displaystyle=\"true\">{rows}</mtable>" : $"<mtable>{rows}</mtable>";
        return $"<mrow>{Fence(shape.Open, "prefix")}{table}{Fence(shape.Close, "postfix")}</mrow>";
    }

    private string ReadColumns()
    {
        string columns = reader.TakeRawGroup("with the columns of the array").Replace(" ", "", StringComparison.Ordinal);
        return columns.Length > 0 && columns.All(c => c is 'l' or 'c' or 'r')
            ? columns
            : throw reader.Error("The columns of an array are given by the letters l, c and r");
    }

    private static string CellStyle(string columns, int column, bool closeToItsNeighbour)
    {
        char align = columns.Length == 1
            ? columns[0] : closeToItsNeighbour ? columns[column % columns.Length] : columns[Math.Min(column, columns.Length - 1)];
        string side = align switch { 'l' => "left", 'r' => "right", _ => "center" };
        string padding = (closeToItsNeighbour, align) switch
        {
            (true, 'r') =>
            ";padding-right:0",
            (true, 'l') => ";padding-left:0",
            _ => ""
        };
        return $"text-align:{side}{padding}";
    }

    private void GoDeeper()
    {
        if (++depth > MaximumDepth)
            throw reader.Error($"More than {MaximumDepth} levels inside one another");
    }

    private string ParseArgument()
    {
        if (reader.AtEnd)
            throw reader.Error("An argument is missing");
        GoDeeper();
        string xml = reader.Peek() switch
        {
            '{' => ParseGroup(),
            '^' or '_' or '&' or '}' => throw reader.Error("An argument is missing"),
            char digit when char.IsAsciiDigit(digit) => $"<mn>{reader.Take()}</mn>",
            _ => ParsePiece().Xml,
        };
        depth--;
        return xml;
    }

    private string ParseGroup()
    {
        reader.Expect('{', "to open a group");
        string xml = ParseList(() => reader.Peek() == '}');
        reader.Expect('}', "to close a group");
        return $"<mrow>{xml}</mrow>";
    }

    private static string Fence(string mark, string form) => mark.Length == 0
        ? ""
        : $"<mo form=\"{form}\" fence=\"true\" stretchy=\"true\">{mark}</mo>";

    private static string Operator(string mark) => $"<mo>{HtmlText.Escape(mark)}</mo>";

    private static string Space(string width) => $"<mspace width=\"{width}\"></mspace>";

    private static string Name(string name) =>
        name.Length == 1 ? $"<mi mathvariant=\"normal\">{name}</mi>" : $"<mi>{HtmlText.Escape(name)}</mi>";

    private static string Text(string text)
    {
        string kept = text.StartsWith(' ') ? "\u00A0" + text.TrimStart(' ') : text;
        kept = kept.EndsWith(' ') ? kept.TrimEnd(' ') + "\u00A0" : kept;
        return $"<mtext>{HtmlText.Escape(kept)}</mtext>";
    }

    private static string Bold(string letters)
    {
        var bold = new StringBuilder();
        foreach (char letter in letters)
        {
            int code = letter switch
            {
                >= 'A' and <= 'Z' => 0x1D400 + letter - 'A',
                >= 'a' and <= 'z' => 0x1D41A + letter - 'a',
                >= '0' and <= '9' => 0x1D7CE + letter - '0',
                _ => letter,
            };
            bold.Append(char.ConvertFromUtf32(code));
        }
        return bold.ToString();
    }
}
