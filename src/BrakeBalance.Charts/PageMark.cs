namespace BrakeBalance.Charts;

/// <summary>What every page that this project writes has in its head: who finds it knows that no person wrote the page.</summary>
public static class PageMark
{
    /// <summary>The element.</summary>
    public const string Html = "<meta name=\"generator\" content=\"Brake balance notebooks\">";
}
