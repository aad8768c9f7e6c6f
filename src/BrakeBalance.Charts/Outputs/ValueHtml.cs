using System.Collections;
using System.Net;
using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts.Outputs;

/// <summary>A cell's result as HTML.</summary>
public static class ValueHtml
{
    /// <summary>Whether a value says more as HTML than as plain text: figures, tables, and lists that hold such.</summary>
    /// <param name="value">What the cell returned or showed; may be null.</param>
    /// <returns>True when a client that shows HTML should be given <see cref="Of"/>.</returns>
    public static bool Suits(object? value) =>
        value is IHtmlOutput or DataFrame || RecordTable.Suits(value)
            || (value is IEnumerable and not string and not IDictionary && ((IEnumerable)value).Cast<object?>().Any(Suits));

    /// <summary>Any value as an HTML fragment.</summary>
    /// <param name="value">What the cell returned or showed; may be null.</param>
    /// <returns>The fragment; text is escaped and keeps its line breaks.</returns>
    public static string Of(object? value) => value switch
    {
        IHtmlOutput output => output.ToHtml(),
        DataFrame frame => new FrameTable(frame).ToHtml(),
        _ when RecordTable.Of(value) is { } table => new FrameTable(table).ToHtml(),
        IEnumerable members when Suits(value) => string.Join('\n', ValueText.Shown(members, Of)),
        _ => $"<pre>{WebUtility.HtmlEncode(ValueText.Of(value))}</pre>",
    };
}
