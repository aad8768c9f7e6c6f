namespace BrakeBalance.Notebooks;

internal static class HtmlText
{
    /// <summary>Escapes text for an element's content or a quoted attribute.</summary>
    public static string Escape(string text)
    {
        if (text.AsSpan().IndexOfAny("&<>\"'") < 0)
            return text;
        var escaped = new StringBuilder(text.Length + 16);
        foreach (char character in text)
        {
            _ = character switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '"' => escaped.Append("&quot;"),
                '\'' => escaped.Append("&#39;"),
                _ => escaped.Append(character),
            };
        }
        return escaped.ToString();
    }

    /// <summary>Makes a script safe inside a <c>script</c> element, without changing what it does.</summary>
    /// <remarks>
    /// Both replaced sequences can only stand in string, template and regular-expression literals (or comments), where the backslash is
    /// neutral.
    /// </remarks>
    public static string ScriptBody(string script) => script
        .Replace("</script", "<\\/script", StringComparison.OrdinalIgnoreCase)
        .Replace("<!--", "<\\!--", StringComparison.Ordinal);

    /// <summary>A script, data for one or a style in ASCII, without changing what it means.</summary>
    /// <remarks>One letter beyond it makes a browser read a page of megabytes as if all of its letters were wide, which takes it a tenth of
    /// a second longer.</remarks>
    public static string Plain(string text, string escape = "\\u") => Ascii.IsValid(text) ? text : string.Concat(text.Select(letter =>
        char.IsAscii(letter) ? letter.ToString() : escape + ((int)letter).ToString("x4", CultureInfo.InvariantCulture)));

    /// <summary>A name that can be an element's id and a link's target: lower-case ASCII letters, digits and single hyphens.</summary>
    public static string Slug(string text)
    {
        var slug = new StringBuilder();
        foreach (char character in text.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(character))
                slug.Append(character);
            else if (slug.Length > 0 && slug[^1] != '-')
                slug.Append('-');
        }
        return slug.ToString().TrimEnd('-') is { Length: > 0 } usable ? usable : "section";
    }
}
