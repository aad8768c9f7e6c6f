using System.Text.Json.Nodes;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Charts.Rendering;
using BrakeBalance.Charts.Sheets;

namespace BrakeBalance.Charts.Live;

/// <summary>What a live page prints and saves: the same documents and drawings as the program writes, under the same names.</summary>
internal static class LivePapers
{
    /// <summary>The name of the figure of all set-ups, which is of no single car.</summary>
    public const string SetUps = "set-ups";

    /// <summary>The pocket card, and the load cases that it can be for; nothing for a car with problems.</summary>
    public static JsonObject Card(JsonObject request, LiveCar car)
    {
        if (car.Study?.Car is not { } vehicle)
        {
            return [];
        }

        UnitSystem units = LiveDesk.Units(request);
        LoadCase load = vehicle.LoadCases.FirstOrDefault(one => one.Name == LiveDesk.Word(request, "load")) ?? vehicle.LoadCases[0];
        CardPaper paper = CardPaper.All.FirstOrDefault(one => one.Name == LiveDesk.Word(request, "paper")) ?? CardPaper.A5;
        return new()
        {
            ["html"] = PocketCardPage.Html(PocketCard.Of(vehicle, load, units), paper),
            ["name"] = $"{Name(vehicle)}-card-{paper.Name}-{Display.Name(units)}.html",
            ["loads"] = new JsonArray([.. vehicle.LoadCases.Select(one => JsonValue.Create(one.Name))]),
        };
    }

    /// <summary>The bench sheet of a bench file, or what is wrong with the file.</summary>
    /// <remarks>There is one car in the page: a change of parts is worked out for it, whatever file the bench file names.</remarks>
    public static JsonObject Bench(JsonObject request, LiveCar car)
    {
        UnitSystem units = LiveDesk.Units(request);
        try
        {
            BenchSheet sheet = BenchFile.ReadFor(
                LiveDesk.Word(request, "text") ?? "", LiveDesk.Word(request, "bench") ?? "", "the bench file");
            return new()
            {
                ["html"] = BenchPrintSheet.Html(BenchReport.Of(sheet), units),
                ["name"] = $"{Slug(sheet.Name)}-bench-{Display.Name(units)}.html",
                ["said"] = sheet.Change is null || car.Reading is null ? ""
                    : $"The change of parts is worked out for {car.Reading.Vehicle.Name}, the car of this page as it was entered.",
            };
        }
        catch (BenchFileException wrong)
        {
            return new() { ["problems"] = new JsonArray([.. wrong.Problems.Select(one => JsonValue.Create(one.ToString()))]) };
        }
    }

    /// <summary>A figure as files: its drawing in the size of a web page's column, and its numbers.</summary>
    public static JsonObject Figure(JsonObject request, LiveCar car, IReadOnlyList<(string Name, LiveCar Car)> setUps)
    {
        UnitSystem units = LiveDesk.Units(request);
        string name = LiveDesk.Word(request, "name") ?? "";
        if (car.Study is not { } study || Made(name, study, setUps, units) is not { } figure)
        {
            return [];
        }

        Figure shown = FigureText.Credited(figure, study.Car);
        FigureSize size = FigureSize.Column;
        (int width, int height) = size.Pixels(2);
        string svg = FigureText.Drawing(shown, size, Theme.Light, study.Car);
        return new()
        {
            ["svg"] = LetterOutlines.Read(LiveDesk.Word(request, "letters"))?.Of(svg) ?? svg,
            ["csv"] = shown.Table.ToCsv(),
            ["drawing"] = $"{Name(study.Car)}-{name}-{size.Name}-{Display.Name(units)}",
            ["numbers"] = $"{Name(study.Car)}-{name}-{Display.Name(units)}.csv",
            ["width"] = width,
            ["height"] = height,
        };
    }

    private static Figure? Made(string name, CarStudy study, IReadOnlyList<(string Name, LiveCar Car)> setUps, UnitSystem units) =>
        name == SetUps ? LiveComparison.Figure(setUps, units)
        : FigureCatalogue.All.FirstOrDefault(entry => entry.Name == name) is { } entry && entry.Make(study, units) is { } figure
            ? entry.Marked(figure, study.Car) : null;

    private static string Name(Vehicle vehicle) => Slug(vehicle.Name);

    private static string Slug(string words) => Naming.Slug(words) is { Length: > 0 } slug ? slug : "car";
}
