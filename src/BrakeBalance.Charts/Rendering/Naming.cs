namespace BrakeBalance.Charts.Rendering;

internal static class Naming
{
    /// <summary>Words as lower-case letters, digits and hyphens.</summary>
    public static string Slug(string words)
    {
        var slug = new StringBuilder();
        foreach (char c in words.Normalize(NormalizationForm.FormKD))
        {
            if (char.IsAsciiLetterOrDigit(c))
            {
                slug.Append(char.ToLower(c, CultureInfo.InvariantCulture));
            }
            else if (slug.Length > 0 && slug[^1] != '-' && CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark)
            {
                slug.Append('-');
            }
        }

        return slug.ToString().TrimEnd('-');
    }
}
