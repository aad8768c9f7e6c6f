using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Live;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Charts.Tests.Publishing;

public class MovingFigureTests
{
    public static TheoryData<string, UnitSystem> EveryCar => EveryFigureTests.EveryCar;

    [Fact]
    public void What_moves_is_in_the_catalogue() => Assert.Subset(
        FigureCatalogue.All.Select(entry => entry.Name).ToHashSet(), MovingFigure.Names.ToHashSet());

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void At_the_start_it_is_the_published_figure(string name, UnitSystem units)
    {
        Vehicle car = Cars.Load(name);
        int same = 0, all = 0;
        foreach ((CatalogueEntry entry, Figure published, Explorable moving) in Moving(car, units))
        {
            Figure start = moving.Start.Figures[0];
            Assert.Equal(published.Table.ToCsv(), start.Table.ToCsv());
            Assert.Equal(
                (published.Title, published.Caption, published.AltText, published.LongDescription, published.Credit, published.Id),
                (start.Title, start.Caption, start.AltText, start.LongDescription, start.Credit, start.Id));
            all++;
            foreach (FigureSize size in new[] { FigureSize.Page, FigureSize.Phone })
            {
                if (published.ToSvg(size) == start.ToSvg(size))
                {
                    same++;
                    continue;
                }

                // Only where another state needs more room the axes reach farther.
                FigureLayout own = FigureLayout.Of(published, size), wide = FigureLayout.Of(start, size);
                Assert.True(wide.XLow <= own.XLow && wide.XHigh >= own.XHigh && wide.YLow <= own.YLow && wide.YHigh >= own.YHigh
                    && (wide.XHigh - wide.XLow > own.XHigh - own.XLow || wide.YHigh - wide.YLow > own.YHigh - own.YLow), entry.Name);
            }
        }

        Assert.InRange(all, 15, 25);
        Assert.True(same > all, $"{same} of {2 * all} drawings are the published ones.");
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void The_axes_stay_while_the_slider_moves(string name, UnitSystem units)
    {
        foreach ((CatalogueEntry entry, _, Explorable made) in Moving(Cars.Load(name), units))
        {
            Explorable moving = Remembering(made);
            if (MovingDrawing.Of(moving, FigureSize.Column, Theme.Light, Cars.Load(name)) is not { } drawing)
            {
                Assert.DoesNotContain(moving.Controls, control => control.IsSlider);
                continue;
            }

            int slots = drawing.Drawings.Count * (drawing.ThereAndBack ? 2 : 1);
            Assert.InRange(slots, drawing.ThereAndBack ? 4 : 24, 44);
            XElement[] pictures = [.. drawing.Drawings.Select(XElement.Parse)];
            Assert.All(["axis-x", "axis-y", "clip"], part => Assert.True(
                pictures.Select(one => Part(one, part).ToString()).Distinct().Count() == 1, $"{entry.Name}: {part} moves"));
            string[] places = [.. pictures.Select(one => Part(one, "slider").Value)];
            Assert.Equal(places.Length, places.Distinct().Count());
            Assert.Contains(moving.Controls[0].Settings[moving.Controls[0].Start], places[drawing.Start], StringComparison.Ordinal);

            // Each picture's title is that of its own state.
            string[] titles = [.. moving.Controls[0].Settings.Select((_, i) => i)
                .Where(i => places.Any(place => place.EndsWith(": " + moving.Controls[0].Settings[i], StringComparison.Ordinal)))
                .Select(i => Letters(moving.At([i, .. moving.Controls.Skip(1).Select(control => control.Start)]).Figures[0].Title))];
            Assert.Equal(titles, pictures.Select(one => Letters(Part(one, "heading").Value)));
        }

        static XElement Part(XElement picture, string end) => picture.Descendants()
            .First(e => ((string?)e.Attribute("id"))?.EndsWith("-" + end, StringComparison.Ordinal) == true);
        static string Letters(string text) => Regex.Replace(text, @"\s", "");
    }

    [Fact]
    public void Labels_do_not_leap_between_pictures()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        foreach (string name in new[] { "brake-forces", "adhesion-utilisation", "line-pressures" })
        {
            (_, _, Explorable moving) = Moving(car, UnitSystem.Si).Single(one => one.Entry.Name == name);
            MovingDrawing drawing = MovingDrawing.Of(moving, FigureSize.Column, Theme.Light, car)!;
            ILookup<string, (double X, double Y)>[] labels = [.. drawing.Drawings.Select(one => Regex.Matches(
                    Regex.Match(one, "(?s)<g id=\"[^\"]*-labels\".*?</g>").Value, "<text x=\"([^\"]+)\" y=\"([^\"]+)\"[^>]*>([^<]+)<")
                .ToLookup(match => match.Groups[3].Value, match => (Number(match.Groups[1].Value), Number(match.Groups[2].Value))))];
            double[] ways = [.. labels.Zip(labels.Skip(1)).SelectMany(pair => pair.First.Where(label => pair.Second.Contains(label.Key))
                .Select(label => Math.Sqrt(Squared(label.First(), pair.Second[label.Key].First()))))];
            Assert.True(ways.Length > 50, name);
            Assert.True(ways.Count(way => way > 60) <= 0.05 * ways.Length,
                $"{name}: {ways.Count(way => way > 60)} of {ways.Length} labels leap");
        }

        static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
        static double Squared((double X, double Y) a, (double X, double Y) b) => ((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y));
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Where_the_slider_says_recommended_stands_the_recommended_car(string name, UnitSystem units)
    {
        Setting answer = Cars.Answer(name);
        foreach ((CatalogueEntry entry, _, Explorable moving) in Moving(Cars.Load(name), units))
        {
            string[] settings = [.. moving.Controls[0].Settings];
            int at = Array.FindIndex(settings, text => text.Contains("recommended setting", StringComparison.Ordinal));
            if (moving.Controls[0].Id != "setting" || answer.Recommended is null)
            {
                continue;
            }

            Assert.True(at >= 0, $"{entry.Name}: {string.Join("; ", settings)}");
            Assert.Single(settings, text => text.Contains("safe limit", StringComparison.Ordinal));
            if (answer.Present is not null)
            {
                Assert.Contains("present setting", settings[moving.Controls[0].Start], StringComparison.Ordinal);
            }

            Figure expected = entry.For(answer.RecommendedVehicle, units)!;
            Assert.Equal(expected.Table.ToCsv(),
                moving.At([at, .. moving.Controls.Skip(1).Select(control => control.Start)]).Figures[0].Table.ToCsv());
        }
    }

    [Fact]
    public void Another_load_is_the_car_with_that_load()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        Assert.True(car.LoadCases.Length > 1);
        Vehicle laden = car with { LoadCases = [car.LoadCases[^1], .. car.LoadCases[..^1]] };
        int last = car.LoadCases.Length - 1, compared = 0;
        foreach ((CatalogueEntry entry, _, Explorable moving) in Moving(car, UnitSystem.Si)
            .Where(one => one.Moving.Controls[^1].Id == "load"))
        {
            Figure shown = moving.At([.. moving.Controls.SkipLast(1).Select(control => control.Start), last]).Figures[0];
            Assert.Equal(entry.For(laden, UnitSystem.Si)!.Table.ToCsv(), shown.Table.ToCsv());
            compared++;
        }

        Assert.True(compared > 10);
    }

    [Theory]
    [InlineData("brake-forces", false, null)]
    [InlineData("effort", true, "12 345,6")]
    [InlineData("plan", false, "12.345,6")]
    public void A_page_makes_it_again_with_the_same_drawing(string name, bool plain, string? number)
    {
        Vehicle car = Cars.Load("track-coupe");
        CatalogueEntry entry = FigureCatalogue.All.Single(one => one.Name == name);
        var style = new HouseStyle("Our desk", number);
        Explorable moving = MovingFigure.Of(entry, car, UnitSystem.Us, plain, style)!;
        string html = moving.ToHtml();
        JsonNode request = JsonNode.Parse(Regex.Match(html, "(?s)class=\"bb-ask\">(.*?)</script>").Groups[1].Value)!;
        JsonNode reply = JsonNode.Parse(new LiveDesk().Answer(request.ToJsonString()))!;
        Assert.Null(reply["fault"]);
        Figure start = moving.Start.Figures[0];
        string drawing = style.Numbered(start.ToSvg(FigureSize.Page.For(start)));
        Assert.Contains(drawing, (string)reply["html"]!, StringComparison.Ordinal);
        Assert.Contains(drawing, html, StringComparison.Ordinal);
        Assert.Equal(number is not null, Regex.IsMatch(html, @"(?:<text|bb-title)[^>]*>[^<]*\d,\d"));
        Assert.Contains("Our desk", (string)reply["html"]!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("brake-forces", "12 345,6")]
    [InlineData("heat-drift", "12.345,6")]
    [InlineData("effort", "12345,6")]
    public void Words_table_and_values_to_read_are_in_the_houses_numbers_in_every_state(string name, string number)
    {
        Explorable moving = MovingFigure.Of(
            FigureCatalogue.All.Single(one => one.Name == name), Cars.Load("coupe-1960s"), UnitSystem.Si, style: new("", number))!;
        int[] start = [.. moving.Controls.Select(control => control.Start)];
        for (int at = 0; at < moving.Controls[0].Settings.Count; at += 4)
        {
            string html = moving.StateHtml([at, .. start.Skip(1)], FigureSize.Page);
            string[] words = [.. Regex.Matches(html, ">([^<]*[0-9][^<]*)<").Select(match => match.Groups[1].Value)];
            Assert.True(words.Length > 50);
            Assert.DoesNotContain(words, word => Regex.IsMatch(word, @"\d\.\d(?!\d\d\b)"));
            Assert.Contains(words, word => Regex.IsMatch(word, @"^\d+,\d+$"));
            string plan = Regex.Match(html, "data-read=\"([^\"]+)").Groups[1].Value;
            Assert.Contains($"data-number=\"{number}\" data-read=", html, StringComparison.Ordinal);
            Assert.NotNull(JsonNode.Parse(System.Net.WebUtility.HtmlDecode(plan))!["layers"]);
        }
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Settings_that_a_page_keeps_give_the_same_slider_and_the_same_states(string name, UnitSystem units)
    {
        foreach ((CatalogueEntry entry, _, Explorable moving) in Moving(Cars.Load(name), units))
        {
            Vehicle again = Cars.Load(name);
            JsonNode request = JsonNode.Parse(Regex.Match(moving.ToHtml(), "(?s)class=\"bb-ask\">(.*?)</script>").Groups[1].Value)!;
            Explorable kept = MovingFigure.Of(entry, again, units, settings: SettingSlider.Read(request["known"]!["settings"]))!;
            Assert.Equal(moving.Controls[0].Id == "setting", request["known"]!["settings"] is not null);
            Assert.Equal(moving.Controls[0].Settings, kept.Controls[0].Settings);
            foreach (int at in new[] { 0, moving.Controls[0].Start, moving.Controls[0].Settings.Count - 1 })
            {
                int[] state = [at, .. moving.Controls.Skip(1).Select(control => control.Start)];
                Assert.Equal(moving.StateHtml(state, FigureSize.Phone), kept.StateHtml(state, FigureSize.Phone));
            }
        }
    }

    /// <summary>Its logs are not handed on, and nothing of the answer is asked for again.</summary>
    [Theory]
    [InlineData("brake-forces")]
    [InlineData("heat-drift")]
    [InlineData("effort")]
    public void A_page_of_a_car_with_logs_of_its_own_shows_the_same_without_fitting_them(string name)
    {
        string text = Regex.Replace(File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json")), "// (\"measurements\")", "$1");
        var logs = new MeasurementLogs(
            RepositoryRoot.File("data/logs/invented-gauges.csv"), RepositoryRoot.File("data/logs/invented-stops.csv"), null);
        (VehicleReading? read, _) = VehicleFile.TryRead(text, []);
        Vehicle car = OwnMeasurements.Attach(read! with { Logs = logs }).Reading!.Vehicle;
        Assert.NotEqual(Cars.Load("coupe-1960s").Hydraulics.RearProportioningValve!.Slope, car.Hydraulics.RearProportioningValve!.Slope);
        Explorable moving = MovingFigure.Of(FigureCatalogue.All.Single(one => one.Name == name), car, UnitSystem.Si)!;
        JsonObject request =
            JsonNode.Parse(Regex.Match(moving.ToHtml(), "(?s)class=\"bb-ask\">(.*?)</script>").Groups[1].Value)!.AsObject();
        Assert.Null(request["logs"]);
        var desk = new LiveDesk();
        for (int at = 0; at < moving.Controls[0].Settings.Count; at += 5)
        {
            int[] state = [at, .. moving.Controls.Skip(1).Select(control => control.Start)];
            request["at"] = new JsonArray([.. state.Select(place => (JsonNode)place)]);
            Assert.Equal(moving.StateHtml(state, FigureSize.Page), (string?)JsonNode.Parse(desk.Answer(request.ToJsonString()))!["html"]);
        }
    }

    [Fact]
    public void What_nothing_moves_has_no_controls() => Assert.All(
        FigureCatalogue.All.Where(entry => !MovingFigure.Names.Contains(entry.Name)),
        entry => Assert.Null(MovingFigure.Of(entry, Cars.Load("coupe-1960s"), UnitSystem.Si)));

    /// <summary>The same, each state worked out once.</summary>
    private static Explorable Remembering(Explorable moving)
    {
        var states = new ConcurrentDictionary<string, Frame>();
        return Explorable.Of(moving.Id, moving.Controls, state =>
        {
            int[] places = [.. moving.Controls.Select(control => state[control.Id])];
            return states.GetOrAdd(string.Join(' ', places), _ => moving.At(places));
        });
    }

    private static IEnumerable<(CatalogueEntry Entry, Figure Published, Explorable Moving)> Moving(Vehicle car, UnitSystem units) =>
        from item in FigureCatalogue.For(car, units)
        let figure = item.Make()
        where figure is not null
        let moving = MovingFigure.Of(item.Entry, car, units)
        where moving is not null
        select (item.Entry, FigureText.Credited(item.Entry.Marked(figure, car), car), moving);
}
