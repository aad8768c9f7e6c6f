namespace BrakeBalance.Notebooks.Execution;

internal static class MediaTypes
{
    public const string Html = "text/html";

    public const string Plain = "text/plain";

    /// <summary>Comma-separated values, offered beside a table.</summary>
    public const string Csv = "text/csv";
}
