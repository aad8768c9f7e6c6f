using System.Text.Json.Nodes;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Lessons;
using BrakeBalance.Charts.Publishing;

namespace BrakeBalance.Charts.Live;

/// <summary>Makes the explorables of exported pages again, by the name that each gave itself, and shows the state asked for.</summary>
internal sealed class LiveExplorables
{
    private static readonly Dictionary<string, Func<LiveCar, JsonObject, UnitSystem, string, Explorable>> OfCars = new()
    {
        ["setting-and-load"] = (car, of, units, id) =>
            BalanceExplorables.SettingAndLoad(Answer(car), (int)Number(of, "settings")!, units, id),
        ["setting"] = (car, of, units, id) => SettingExplorer.Of(
            Answer(car), Number(of, "highest") is { } highest ? Pressure.FromPascals(highest) : null, units, id),
        ["effort"] = (car, of, units, id) => FootExplorables.Effort(Car(car), FootExplorables.Pump(of["pump"] as JsonArray), units, id),
        ["travel"] = (car, _, units, id) => FootExplorables.Travel(Car(car), units, id),
        ["second-by-second"] = (car, of, units, _) =>
            StopExplorables.SecondBySecond(Car(car), Load(car, of), Number(of, "adhesion") ?? 0, FromSpeed(of), Foot(of), units),
        ["from-above"] = (car, of, units, _) =>
            StopExplorables.FromAbove(Car(car), Load(car, of), Number(of, "adhesion") ?? 0, FromSpeed(of), Foot(of), units),
        ["pads"] = (car, of, units, id) => StopExplorables.PadsAndHeat(Car(car), Load(car, of).Name, units, id),
        ["figure"] = (car, of, units, id) => MovingFigure.Again(
            FigureCatalogue.All.First(entry => entry.Name == LiveDesk.Word(of, "figure")),
            Car(car), units, of["plain"]?.GetValue<bool>() == true,
            new HouseStyle(LiveDesk.Word(of, "credit"), LiveDesk.Word(of, "number")), id, of["known"])
            ?? throw new ArgumentException("Nothing moves this figure of this car."),
        ["story"] = (car, of, units, id) =>
            KneeStory.Of(LiveDesk.Word(of, "screen") ?? "", Car(car), () => Answer(car), units, id),
    };

    private readonly Lately<Explorable> _made = new(8);

    /// <summary>The reply: the state, and the controls when no state is asked for, since another car has others.</summary>
    public JsonObject Answer(JsonObject request, LiveCars cars)
    {
        int[]? at = (request["at"] as JsonArray)?.Select(place => place!.GetValue<int>()).ToArray();
        Explorable explorable = _made.Of(Key(request), () => Made(request, cars));
        int[] places = at?.Length == explorable.Controls.Count
            ? [.. at.Zip(explorable.Controls, (place, control) => Math.Clamp(place, 0, control.Settings.Count - 1))]
            : [.. explorable.Controls.Select(control => control.Start)];
        // Laid out as the page was written, so that nothing jumps when the first state replaces it.
        FigureSize size = Number(request, "width") is < 560 ? FigureSize.Phone : FigureSize.Page;
        var reply = new JsonObject
        {
            ["html"] = explorable.StateHtml(places, size),
        };
        if (at is null)
        {
            reply["controls"] = ExplorableHtml.Controls(explorable);
        }

        return reply;
    }

    private static Explorable Made(JsonObject request, LiveCars cars)
    {
        string name = LiveDesk.Word(request, "name") ?? "", id = LiveDesk.Word(request, "id") ?? "explore";
        UnitSystem units = LiveDesk.Units(request);
        if (OfCars.TryGetValue(name, out var make))
        {
            LiveCar car = cars.Of(request);
            return car.Study is null
                ? throw new ArgumentException(string.Join(' ', car.Problems.Select(problem => problem.ToString())))
                : make(car, request, units, id);
        }

        return name switch
        {
            "lesson" when LiveDesk.Word(request, "code") is { Length: > 0 } code => LessonSheet.OfClass(
                LiveDesk.Word(request, "lesson") ?? "", code, (int)(Number(request, "student") ?? 1), units),
            "lesson" => LessonSheet.Of(
                LiveDesk.Word(request, "lesson") ?? "", (int)(Number(request, "seed") ?? 1), (int)(Number(request, "student") ?? 1), units)
                .Figure,
            "return" when BenchFile.Read(LiveDesk.Word(request, "text") ?? "", "this page", "").Plumbing is { Release: { } job } plumbing =>
                BenchExplorables.Return(plumbing.Return, job, Length.FromMeters(Number(request, "metres") ?? 1), units, id),
            _ => throw new ArgumentException("This page asked for a figure that is not known."),
        };
    }

    private static string Key(JsonObject request) => string.Join('\0',
        request.Where(one => one.Key is not ("at" or "width")).Select(one => $"{one.Key}={one.Value?.ToJsonString()}"));

    private static Vehicle Car(LiveCar car) => car.Study!.Car;

    private static Setting Answer(LiveCar car) => car.Study!.Answer;

    // Another car may have no load case of that name.
    private static LoadCase Load(LiveCar car, JsonObject request) =>
        Car(car).LoadCases.FirstOrDefault(load => load.Name == LiveDesk.Word(request, "load")) ?? Car(car).LoadCases[0];

    private static double? Number(JsonObject request, string key) => request[key]?.GetValue<double>();

    private static Speed FromSpeed(JsonObject request) => Speed.FromMetersPerSecond(Number(request, "speed") ?? 0);

    private static Force? Foot(JsonObject request) => Number(request, "force") is { } force ? Force.FromNewtons(force) : null;
}
