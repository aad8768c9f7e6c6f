namespace BrakeBalance.Notebooks.Execution;

/// <summary>The media types of cell outputs.</summary>
internal static class MediaTypes
{
    /// <summary>An HTML fragment.</summary>
    public const string Html = "text/html";

    public const string Plain = "text/plain";

    /// <summary>Comma-separated values, offered beside a table.</summary>
    public const string Csv = "text/csv";
}
