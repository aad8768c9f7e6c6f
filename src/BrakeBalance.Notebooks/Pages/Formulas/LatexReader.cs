namespace BrakeBalance.Notebooks.Pages.Formulas;

/// <summary>Reads a formula character by character and knows where it is.</summary>
internal sealed class LatexReader(string source)
{
    private int position;

    /// <summary>Where the next character stands.</summary>
    public int Position => position;

    /// <summary>Whether nothing but white space is left.</summary>
    public bool AtEnd
    {
        get
        {
            SkipSpace();
            return position >= source.Length;
        }
    }

    /// <summary>The next character that is not white space, without taking it; NUL at the end.</summary>
    public char Peek()
    {
        SkipSpace();
        return position < source.Length ? source[position] : '\0';
    }

    /// <summary>Whether the formula goes on with the given text.</summary>
    public bool Sees(string text)
    {
        SkipSpace();
        return string.CompareOrdinal(source, position, text, 0, text.Length) == 0;
    }

    /// <summary>Whether the formula goes on with the given command and not with a longer one.</summary>
    public bool SeesCommand(string name)
    {
        if (!Sees("\\" + name))
            return false;
        int end = position + 1 + name.Length;
        return end >= source.Length || !char.IsAsciiLetter(source[end]);
    }

    /// <summary>Takes one character (a whole code point).</summary>
    public string Take()
    {
        SkipSpace();
        Rune.DecodeFromUtf16(source.AsSpan(position), out Rune rune, out int length);
        position += length;
        return rune.ToString();
    }

    /// <summary>Takes the given character or fails.</summary>
    public void Expect(char expected, string reason)
    {
        if (Peek() != expected)
            throw Error($"Expected \"{expected}\" {reason}");
        position++;
    }

    /// <summary>Takes the given text if it is next.</summary>
    public bool TryTake(string text)
    {
        if (!Sees(text))
            return false;
        position += text.Length;
        return true;
    }

    /// <summary>Takes a command and returns its name without the backslash.</summary>
    public string TakeCommand()
    {
        Expect('\\', "before a command");
        int start = position;
        while (position < source.Length && char.IsAsciiLetter(source[position]))
            position++;
        if (position == start && position < source.Length)
            position++;
        if (position == start)
            throw Error("A backslash without a command");
        return source[start..position];
    }

    /// <summary>Takes digits with at most one decimal point inside them.</summary>
    public string TakeNumber()
    {
        SkipSpace();
        int start = position;
        while (position < source.Length && char.IsAsciiDigit(source[position]))
            position++;
        if (position + 1 < source.Length && source[position] == '.' && char.IsAsciiDigit(source[position + 1]))
        {
            position++;
            while (position < source.Length && char.IsAsciiDigit(source[position]))
                position++;
        }
        return source[start..position];
    }

    /// <summary>Takes a braced group as it stands, for text and names.</summary>
    public string TakeRawGroup(string reason)
    {
        Expect('{', reason);
        int start = position;
        var text = new StringBuilder();
        while (position < source.Length && source[position] != '}')
        {
            char next = source[position];
            if (next is '{' or '$')
                throw Error($"\"{next}\" cannot stand inside text");
            if (next == '\\' && position + 1 < source.Length && "%$#&_{} ".Contains(source[position + 1], StringComparison.Ordinal))
                next = source[++position];
            else if (next == '\\')
                throw Error("A command cannot stand inside text");
            text.Append(next == '~' ? '\u00A0' : next);
            position++;
        }
        if (position >= source.Length)
            throw new FormulaException("A brace is opened and not closed", source, start - 1);
        position++;
        return text.ToString();
    }

    /// <summary>An error at the present place.</summary>
    public FormulaException Error(string problem) => new(problem, source, Math.Min(position, source.Length));

    /// <summary>An error at a place passed before.</summary>
    public FormulaException ErrorAt(int place, string problem) => new(problem, source, place);

    private void SkipSpace()
    {
        while (position < source.Length && char.IsWhiteSpace(source[position]))
            position++;
    }
}
