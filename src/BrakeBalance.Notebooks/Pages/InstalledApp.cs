using System.Security.Cryptography;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>What lets served pages be installed and used without a network; pages opened from disk need none of it.</summary>
internal static class InstalledApp
{
    private const string Manifest = "app.webmanifest";
    private const string Worker = "sw.js";
    private const string Icon = "assets/icon.svg";

    /// <summary>The files: a manifest, an icon, and a worker that keeps all pages.</summary>
    /// <param name="written">Names and texts of the pages and of what they share.</param>
    /// <param name="start">The page with which the app opens.</param>
    public static IEnumerable<(string Name, string Text)> Files(IReadOnlyList<(string Name, string Text)> written, string start)
    {
        string icon = PageShell.Icon;
        yield return (Icon, icon);
        var manifest = new JsonObject
        {
            ["name"] = "Brake balance notebooks",
            ["short_name"] = "Brake balance",
            ["start_url"] = start,
            ["scope"] = "./",
            ["display"] = "standalone",
            ["background_color"] = "#fbfaf6",
            ["theme_color"] = "#0b5568",
            ["icons"] = new JsonArray(new JsonObject { ["src"] = Icon, ["sizes"] = "any", ["type"] = "image/svg+xml" }),
        };
        yield return (Manifest, manifest.ToJsonString(new JsonSerializerOptions { WriteIndented = true, NewLine = "\n" }) + "\n");
        string[] names = [.. written.Select(file => file.Name), Icon, Manifest];
        byte[] all = Encoding.UTF8.GetBytes(string.Join('\0', written.Select(file => file.Name + "\0" + file.Text)) + icon);
        yield return (Worker, PageAssets.Read("Pages.sw.js")
            .Replace("__BB_NAME__", Convert.ToHexStringLower(SHA256.HashData(all))[..16], StringComparison.Ordinal)
            .Replace("__BB_FILES__", JsonSerializer.Serialize(names), StringComparison.Ordinal));
    }
}
