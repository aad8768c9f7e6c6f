using System.Security.Cryptography;
using System.Text.Json.Nodes;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Lets a page load itself again when it was written anew, for whoever writes a notebook beside its page.</summary>
internal static class Reloading
{
    /// <summary>The file that says which pages stand, relative to the pages' folder.</summary>
    public const string Stamps = "assets/stamps.js";

    // A page from disk may run a script beside it but not read a file.
    private const string Script =
        "(()=>{let seen;const own=decodeURIComponent(location.pathname.split('/').pop());globalThis.bbStamps=all=>{"
        + "if(seen&&all[own]&&seen!==all[own])location.reload();seen=all[own]};setInterval(()=>{"
        + "const one=document.createElement('script');one.src='" + Stamps + "?'+Date.now();one.onload=one.onerror=()=>one.remove();"
        + "document.head.append(one)},700)})()";

    /// <summary>A page that looks for itself.</summary>
    public static string Into(string html)
    {
        string hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Script)));
        const string Policy = "script-src ", End = "</body>";
        return html.IndexOf(Policy, StringComparison.Ordinal) is >= 0 and var at
                && html.LastIndexOf(End, StringComparison.Ordinal) is >= 0 and var end
            ? html.Insert(end, $"<script>{Script}</script>\n").Insert(at + Policy.Length, $"&#39;sha256-{hash}&#39; ") : html;
    }

    /// <summary>What says which pages stand.</summary>
    public static string StampsOf(IEnumerable<(string Name, string Text)> pages)
    {
        var all = new JsonObject(pages.Select(page => KeyValuePair.Create(
            page.Name, (JsonNode?)Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(page.Text))))));
        return $"bbStamps({all.ToJsonString()});\n";
    }
}
