namespace BrakeBalance.Charts;

/// <summary>Something a notebook cell can show: a figure, a table, a note.</summary>
/// <remarks>
/// Whoever runs the cell (a page, a Jupyter client, a terminal) asks for the form it can show. Neither form may
/// depend on the clock, on the culture or on chance, so that two renders of the same input give the same bytes.
/// </remarks>
public interface IHtmlOutput
{
    /// <summary>A self-contained HTML fragment: no document element, nothing fetched from a network.</summary>
    string ToHtml();

    /// <summary>The same content in words, for a terminal or a client that shows no HTML.</summary>
    /// <returns>Lines separated by LF.</returns>
    string ToPlainText();
}
