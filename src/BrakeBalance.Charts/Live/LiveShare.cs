using System.Text.Json.Nodes;

namespace BrakeBalance.Charts.Live;

/// <summary>A car to hand to another device: words for a link, and the same as a picture to scan.</summary>
internal static class LiveShare
{
    private const int MostOfPicture = 4296, HardToScan = 25;

    /// <summary>The reply: the words, the link or the words alone, and the picture or why there is none.</summary>
    public static JsonObject Of(string text, JsonObject? logs, string page)
    {
        string of = LiveLink.Small((logs is null ? null : LiveDesk.Word(logs, LiveCars.LogsOf)) ?? text);
        (string, string)[] all = of == LiveLink.Small(text) ? Logs(logs) : [.. Logs(logs), (LiveCars.LogsOf, of)];
        string words = LiveLink.Of(text, all), held = page.Length > 0 ? $"{page}#{words}" : words;
        return new()
        {
            ["words"] = words,
            ["link"] = held,
            ["html"] = QrCode.Of(held) is { } code ? Picture(code, page.Length > 0) : TooLong(held.Length),
        };
    }

    /// <summary>The files to save: the car's, which names its logs so that whoever reads it gets the same answer, and these.</summary>
    /// <remarks>The file of a car that was changed since its logs were fitted names none: they are not that car's.</remarks>
    public static JsonObject Files(string text, JsonObject? logs, bool isChanged = false)
    {
        JsonArray files = [];
        text = isChanged ? VehicleText.Remove(text, "measurements") : text;
        foreach ((string kind, string log) in Logs(logs))
        {
            string path = "measurements." + kind, name = VehicleText.Entry(text, path)?.Present?.ToString() ?? "";
            if (name.Length == 0 || name.Contains('/', StringComparison.Ordinal) || name.Contains('\\', StringComparison.Ordinal))
            {
                name = kind + ".csv";
                text = isChanged ? text : VehicleText.Set(text, path, name);
            }

            files.Add(new JsonObject { ["name"] = name, ["text"] = log });
        }

        files.Insert(0, new JsonObject { ["name"] = "my-car.json", ["text"] = text });
        return new() { ["files"] = files };
    }

    private static (string Kind, string Text)[] Logs(JsonObject? logs) =>
        [.. (logs ?? []).Where(log => log.Key != LiveCars.LogsOf)
            .Select(log => (log.Key, Text: log.Value?.ToString() ?? "")).Where(log => !string.IsNullOrWhiteSpace(log.Text))];

    private static string Picture(QrCode code, bool isLink)
    {
        string side = (code.Size + (2 * QrCode.Quiet)).ToString(CultureInfo.InvariantCulture);
        string how = isLink
            ? "Scan it with another phone: it opens this page with this car."
            : "Scan it with another phone and copy the text that it shows. In a your-car.html there, paste it under Car, "
                + "“Paste a vehicle file or a car’s words”.";
        return $"<figure class=\"bb-scan\"><svg viewBox=\"0 0 {side} {side}\" role=\"img\" aria-labelledby=\"live-scan-title\" "
            + $"shape-rendering=\"crispEdges\" data-version=\"{code.Version}\">"
            + $"<title id=\"live-scan-title\">QR code that holds this car</title>"
            + $"<rect width=\"{side}\" height=\"{side}\" fill=\"#fff\"/><path fill=\"#000\" d=\"{code.Path()}\"/></svg>\n<figcaption>{how} "
            + (code.Version > HardToScan ? "It is a dense one: show it large, hold the phone still. " : "")
            + "It holds the whole car but the comments of its file.</figcaption></figure>";
    }

    private static string TooLong(int length) => Invariant.Text(
        $"<p>This car is too long for a picture: {length:N0} characters, and a picture holds {MostOfPicture:N0}. ")
        + "Hand on its file in place of it.</p>\n<p><button type=\"button\" data-hand-on>Save the vehicle file</button></p>";
}
