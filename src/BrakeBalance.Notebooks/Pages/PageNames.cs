namespace BrakeBalance.Notebooks.Pages;

internal static class PageNames
{
    /// <summary>The page that lists the others.</summary>
    public const string Index = "index.html";

    /// <summary>The calculation assembly that all pages share, relative to the pages' folder.</summary>
    public const string SharedScript = "assets/calculation.js";

    /// <summary>The C# compiler that all pages share, relative to the pages' folder.</summary>
    public const string CellsScript = "assets/compiler.js";

    /// <summary>The notices of the runtime that pages carry, relative to the pages' folder.</summary>
    public const string Notices = "assets/notices.txt";

    /// <summary>The file of a notebook's page.</summary>
    public static string FileFor(string notebook) => notebook + ".html";
}
