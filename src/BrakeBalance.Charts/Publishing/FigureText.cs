using System.Security.Cryptography;
using System.Text.Json.Nodes;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Publishing;

/// <summary>The texts that go with a published figure: method, credit, licence, and the note that cars are invented.</summary>
public static class FigureText
{
    /// <summary>The licence of figures and data of the repository.</summary>
    public const string Licence = "MIT License, © 2026 The brake balance notebooks developers";

    /// <summary>How the figures were computed, in a sentence.</summary>
    public const string Method =
        "Calculated for a car with two axles on a level, straight road; no approval of any brake and no setting for any car.";

    /// <summary>What kind of car a figure shows.</summary>
    /// <returns>That the car is invented where its file says so; otherwise that it is somebody's own file.</returns>
    public static string Car(Vehicle vehicle)
    {
        return vehicle.IsInvented
            ? "The figures are of invented cars."
            : "The figures are of the car in a reader's own vehicle file, as described there.";
    }

    /// <summary>The credit line of a car's figures.</summary>
    /// <returns>A line such as <c>Brake balance notebooks (MIT). Invented car, calculated.</c></returns>
    public static string Credit(Vehicle vehicle) =>
        "Brake balance notebooks (MIT License). "
            + (vehicle.IsInvented ? "Calculated; the car is invented." : "Calculated from a reader's vehicle file.");

    /// <summary>A figure with its credit line.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="vehicle">The car.</param>
    /// <param name="style">The publisher's style; null for none.</param>
    public static Figure Credited(Figure figure, Vehicle vehicle, HouseStyle? style = null) =>
        figure with { Credit = style?.Credit ?? Credit(vehicle) };

    /// <summary>The drawing of a figure with its source, licence and description in its metadata.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="size">The size.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="vehicle">The car.</param>
    /// <returns>SVG with a metadata element after its description.</returns>
    public static string Drawing(Figure figure, FigureSize size, Theme theme, Vehicle vehicle)
    {
        const string After = "</desc>\n";
        string svg = Named(figure, theme, vehicle).ToSvg(size, theme);
        return svg.Insert(svg.IndexOf(After, StringComparison.Ordinal) + After.Length, Metadata(figure, vehicle));
    }

    /// <summary>A figure so named that the parts of any drawings may stand in one page.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="vehicle">The car.</param>
    public static Figure Named(Figure figure, Theme theme, Vehicle vehicle) =>
        figure with { Id = $"{Naming.Slug(vehicle.Name)}-{figure.Id}-{Display.Name(figure.Units)}-{theme.Name}" };

    /// <summary>All words of a figure as plain text.</summary>
    /// <returns>Title, caption, alternative text, long description, credit, method and licence, each under its name.</returns>
    public static string Words(Figure figure, Vehicle vehicle)
    {
        var text = new StringBuilder();
        foreach ((string name, string value) in Parts(figure, vehicle))
        {
            text.Append(name).Append(":\n").Append(value).Append("\n\n");
        }

        return text.ToString();
    }

    /// <summary>All words of a figure, and a mark by which a correction can be traced, as JSON.</summary>
    public static string Json(Figure figure, Vehicle vehicle, UnitSystem units, bool plain)
    {
        string data = figure.Table.ToCsv();
        var json = new JsonObject
        {
            ["figure"] = figure.Id,
            ["car"] = vehicle.Name,
            ["units"] = Display.Name(units),
            ["plain"] = plain
        };
        foreach ((string name, string value) in Parts(figure, vehicle))
        {
            json[name.ToLowerInvariant().Replace(' ', '_')] = value;
        }

        json["version"] = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(figure.Title + "\n" + data)))[..12];
        return IndentedJson.Text(json) + "\n";
    }

    private static IEnumerable<(string Name, string Value)> Parts(Figure figure, Vehicle vehicle) =>
    [
        ("Title", figure.Title),
        ("Caption", figure.Caption),
        ("Alt text", figure.AltText),
        ("Long description", figure.LongDescription),
        ("Credit", figure.Credit ?? Credit(vehicle)),
        ("Method", Method),
        ("Note", Car(vehicle)),
        ("Licence", Licence),
    ];

    internal static string Metadata(Figure figure, Vehicle vehicle)
    {
        var text = new StringBuilder();
        text.Append("<metadata>\n<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\" "
            + "xmlns:dc=\"http://purl.org/dc/elements/1.1/\">\n<rdf:Description rdf:about=\"\">\n");
        foreach ((string name, string value) in new[]
        {
            ("title", figure.Title), ("description", figure.Caption), ("creator", "Brake balance notebooks"),
                ("source", $"{Method} {Car(vehicle)}"), ("rights", Licence), ("format", "image/svg+xml"),
        })
        {
            text.Append("<dc:").Append(name).Append('>').Append(HtmlRenderer.Escape(value)).Append("</dc:").Append(name).Append(">\n");
        }

        return text.Append("</rdf:Description>\n</rdf:RDF>\n</metadata>\n").ToString();
    }
}
