using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Choosing;

namespace BrakeBalance.Charts.Live;

/// <summary>Answers what a live page asks: JSON in, JSON out, no exception ever.</summary>
/// <remarks>
/// A request has <c>do</c>, and <c>text</c> (a vehicle file), <c>set</c> (pairs of path and value in place of the file's), <c>logs</c>
/// (texts of <c>gauges</c> and <c>stops</c>, and <c>of</c>, the file as it was when they were fitted) and <c>units</c> (<c>si</c> or
/// <c>us</c>) where a car is asked of. A reply has <c>fault</c> when the request could not be answered, for whatever reason.
/// </remarks>
public sealed class LiveDesk
{
    private static readonly Lazy<LiveDesk> OfNotebook = new(() => new());

    private readonly Lazy<IReadOnlyDictionary<string, string>> _demos;
    private readonly LiveCars _cars = new();
    private readonly LiveExplorables _explorables = new();
    private readonly LiveChoice _choice = new();
    private readonly Dictionary<string, Func<JsonObject, JsonObject>> _answers;

    /// <summary>Makes a desk.</summary>
    /// <param name="demos">Vehicle files to start from, by name, fetched when first asked for; null for none.</param>
    public LiveDesk(Func<IReadOnlyDictionary<string, string>>? demos = null)
    {
        _demos = new(demos ?? (() => new Dictionary<string, string>()));
        _answers = new()
        {
            ["begin"] = _ => Begin(),
            ["demos"] = _ => new JsonObject { ["demos"] = SummaryJson.Words(_demos.Value.Keys) },
            ["new"] = request => Text(VehicleText.New(Word(request, "class"))),
            ["demo"] = request => Text(_demos.Value.GetValueOrDefault(Word(request, "name") ?? "") ?? ""),
            ["form"] = request => Html(LiveForm.Html(Word(request, "text") ?? "", Units(request))),
            ["beside"] = request => Text(LiveForm.Beside(CarForm.Beside(
                Word(request, "text") ?? "", Word(request, "path") ?? "", Word(request, "value") ?? "", Units(request)))),
            ["slide"] = Slide,
            ["link"] = request => LiveShare.Of(Moved(request), request["logs"] as JsonObject, Word(request, "page") ?? ""),
            ["file"] = request => LiveShare.Files(Moved(request), request["logs"] as JsonObject, _cars.Of(request).IsChanged),
            ["open"] = request => Opened(Word(request, "text") ?? ""),
            ["edit"] = Edit,
            ["car"] = request => LiveAnswer.Of(_cars.Of(request), Units(request), request["slides"]),
            ["behind"] = request => Html(LiveAnswer.Behind(_cars.Of(request), Units(request))),
            ["figure"] = Figure,
            ["explore"] = request => _explorables.Answer(request, _cars),
            ["compare"] = request => Html(LiveComparison.Html(SetUps(request), Units(request), Size(request))),
            ["parts"] = request => Text(PartsList.Starter(Moved(request), Units(request))),
            ["targets"] = request => LiveChoice.Targets(Word(request, "targets") ?? "", Units(request)),
            ["choose"] = request => _choice.Next(Moved(request), _cars.Of(request).Study?.Car, request),
            ["save"] = request => LivePapers.Figure(request, _cars.Of(request), SetUps(request)),
            ["card"] = request => LivePapers.Card(request, _cars.Of(request)),
            ["bench"] = request => LivePapers.Bench(request, _cars.Of(request)),
            ["job"] = _ => Text(BenchStarter.Text()),
            ["measured"] = request => Html(LiveMeasured.Html(_cars.Of(request), Units(request))),
            ["next"] = request => Html(LiveMeasured.Next(_cars.Of(request), Units(request))),
            ["decode"] = request => Text(LogText.Decode(Convert.FromBase64String(Word(request, "bytes") ?? ""))),
            ["series"] = request => Html(LiveMeasured.Series(Word(request, "log") ?? "", Units(request))),
            ["summary"] = Summary,
            ["log"] = request => Text(LogStarter.Text(Word(request, "kind") ?? "", Units(request) == UnitSystem.Us)),
        };
    }

    /// <summary>Answers a request of a notebook client's page.</summary>
    /// <param name="request">The request, JSON.</param>
    /// <returns>The reply, JSON.</returns>
    public static string Reply(string request) => OfNotebook.Value.Answer(request);

    /// <summary>Answers a request.</summary>
    /// <param name="request">The request, JSON.</param>
    /// <param name="text">The request's <c>text</c>, where it goes beside it; null where it is in it.</param>
    /// <returns>The reply, JSON.</returns>
    public string Answer(string request, string? text = null)
    {
        JsonObject reply;
        try
        {
            var asked = JsonNode.Parse(request) as JsonObject;
            if (asked is not null && text is not null)
            {
                asked["text"] = text;
            }

            reply = asked is not null && _answers.TryGetValue(Word(asked, "do") ?? "", out var answer)
                ? answer(asked)
                : Fault("This page asked for something that is not known.");
        }
#pragma warning disable CA1031 // Whatever happens has to reach the page as words.
        catch (Exception exception)
#pragma warning restore CA1031
        {
            reply = Fault(exception is ArgumentException said ? Problem.WordsOf(said) : $"{exception.GetType().Name}: {exception.Message}");
        }

        return reply.ToJsonString(CommentedFile.Relaxed);
    }

    internal static string? Word(JsonObject request, string key) =>
        request[key] is JsonValue value && value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : null;

    internal static UnitSystem Units(JsonObject request) => Word(request, "units") == "us" ? UnitSystem.Us : UnitSystem.Si;

    // Laid out for the width it is shown at, about square on a phone.
    private static FigureSize Size(JsonObject request)
    {
        double width = Math.Clamp(request["width"]?.GetValue<double>() ?? FigureSize.Page.Width, 280, 1000);
        return FigureSize.Page with
        {
            Name = "live",
            Width = width,
            Height = Math.Min(
                width < 480 ? width * 0.95 : Math.Min(520, width * 0.62), Math.Max(240, request["height"]?.GetValue<double>() ?? 520)),
            FontSize = width < 480 ? 12 : 13,
        };
    }

    private static JsonObject Fault(string words) => new() { ["fault"] = words };

    private static JsonObject Text(string text) => new() { ["text"] = text };

    private static JsonObject Opened(string given)
    {
        (string text, IReadOnlyDictionary<string, string> logs) = LiveLink.Opened(given);
        return new() { ["text"] = text, ["logs"] = new JsonObject(logs.Select(log => KeyValuePair.Create(log.Key, (JsonNode?)log.Value))) };
    }

    private static JsonObject Html(string html) => new() { ["html"] = html };

    private (string Name, LiveCar Car)[] SetUps(JsonObject request) =>
        [.. (request["cars"] as JsonArray ?? []).OfType<JsonObject>().Select(car => (Word(car, "name") ?? "", _cars.Of(car)))];

    private static JsonObject Begin() => new()
    {
        ["classes"] = SummaryJson.Words(CarForm.Classes),
        ["figures"] = new JsonArray(
            [.. LivePictures.All.Select(tab => new JsonObject { ["tab"] = tab.Tab, ["names"] = SummaryJson.Words(tab.Names) })]),
    };

    private JsonObject Edit(JsonObject request)
    {
        string text = Word(request, "text") ?? "", path = Word(request, "path") ?? "", value = Word(request, "value") ?? "";
        return Text(Word(request, "how") switch
        {
            "add" => VehicleText.Add(text, path),
            "remove" => VehicleText.Remove(text, path),
            "kind" => VehicleText.ChangeKind(text, path, value),
            "keep" => VehicleText.Keep(text, path, value),
            _ => VehicleText.Set(text, path, value),
        });
    }

    private static JsonObject Slide(JsonObject request) =>
        CarForm.SlideAt(Word(request, "text") ?? "", Word(request, "path") ?? "", Word(request, "value") ?? "", Units(request)) is { } slide
            ? new()
            {
                ["low"] = slide.Low,
                ["high"] = slide.High,
                ["value"] = slide.Value,
                ["unit"] = slide.Unit,
                ["decimals"] = slide.Decimals,
            }
            : [];

    // The file with what its sliders say now.
    private static string Moved(JsonObject request) => LiveCars.Overrides(request["set"])
        .Aggregate(Word(request, "text") ?? "", (text, set) => VehicleText.Keep(text, set.Path, set.Value));

    private JsonObject Summary(JsonObject request)
    {
        if (_cars.Of(request).Study is not { } study)
        {
            return new JsonObject { ["json"] = "" };
        }

        var summary = BalanceSummary.Of(study.Car);
        summary = request["draws"] is { } draws ? summary with { Setting = Setting.Of(study.Car, draws: draws.GetValue<int>()) } : summary;
        return new JsonObject { ["json"] = new SummaryJson(new ReportUnits(Units(request))).Text(summary) };
    }

    private JsonObject Figure(JsonObject request)
    {
        string name = Word(request, "name") ?? "";
        if (_cars.Of(request).Study is not { } study || FigureCatalogue.All.FirstOrDefault(entry => entry.Name == name) is not { } entry)
        {
            return new JsonObject { ["html"] = "" };
        }

        return entry.Make(study, Units(request)) is { } figure
            ? new JsonObject
            {
                ["html"] = LivePictures.Html(entry.Marked(figure, study.Car), request["width"] is null ? null : Size(request)),
                ["id"] = figure.Id,
            }
            : new JsonObject { ["html"] = "", ["needs"] = entry.Needs is null ? null : $"Not drawn, needs {entry.Needs}: {entry.Shows}" };
    }
}
