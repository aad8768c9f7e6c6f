using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Notebooks.Tests.Publishing;

public class CardCommandTests
{
    public static TheoryData<string, string> Cards
    {
        get
        {
            TheoryData<string, string> cards = [];
            foreach (string car in new[] { "coupe-1960s", "rear-engined-sports-car", "track-coupe", "big-cam-saloon" })
            {
                cards.Add(car, "a5");
                cards.Add(car, "half-letter");
            }

            return cards;
        }
    }

    [Fact]
    public void Turns_of_the_knob_give_knee_and_pressures()
    {
        Vehicle car = Load("coupe-1960s");
        var card = PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si);

        // The file's adjuster: 7 bar fully out and 10 bar a turn, by hand: 3 turns give 37 bar.
        CardRow third = card.Rows.Single(row => row.Cells[0] == "3");
        Assert.Equal("37.0\u00a0†", third.Cells[1]);
        var setting = Setting.Of(car);
        double knee = setting.Recommended!.Knee!.Value.Bars;
        CardRow own = card.Rows.Single(row => row.IsOwn);
        Assert.Equal(setting.Recommended.Turns!.Value, Number(own.Cells[0]), 1e-9);
        Assert.Equal(SettingWords.Text(setting.Recommended, UnitSystem.Si), card.Baseline);
        double limit = setting.SafeLimit!.Knee!.Value.Bars;
        Assert.All(card.Rows, row => Assert.Equal(Number(row.Cells[1].Split('\u00a0')[0]) > limit, row.IsBeyond));

        // The valve's law beyond the knee: rear = knee + slope × (front − knee), as long as the front's metering valve is fully open.
        double front = Number(own.Cells[4]), rear = Number(own.Cells[5]);
        Assert.Equal(knee + 0.3 * (front - knee), rear, 0.5);
        Assert.Equal(card.Columns.Count, own.Cells.Count);
    }

    [Theory]
    [InlineData("coupe-1960s")]
    [InlineData("rear-engined-sports-car")]
    [InlineData("big-cam-saloon")]
    public void Engine_off_presses_are_those_of_the_summary_under_the_condition_that_is_stated(string name)
    {
        Vehicle car = Load(name);

        // The card's pedal is that of the recommended setting.
        EngineOffPresses presses = BrakeBalance.Summaries.ControlSummary.Of(Setting.Of(car).RecommendedVehicle)!.LoadCases[0].EngineOff;
        (string label, string value) =
            PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si).Pedal.Single(line =>
            line.Name.StartsWith("Engine off", StringComparison.Ordinal));
        Assert.Equal(presses.Count is { } count ? $"{count}" : "any number", value);
        Assert.Contains("0.5", label, StringComparison.Ordinal);
        Assert.Contains(Measure.ControlForce.Text(presses.GreatestPedalForce, UnitSystem.Si), label, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5.4, 3)]
    [InlineData(6, 5.97)]
    [InlineData(20, 20)]
    [InlineData(2.25, 0)]
    public void The_rows_go_from_fully_out_to_the_end_of_the_adjuster_s_travel(double travel, double present)
    {
        Vehicle car = VehicleFile.Load(RepositoryRoot.File("data/vehicles/coupe-1960s.json"), [
            new("hydraulics.rearValves[0].adjuster.turns", $"{travel}"),
            new("hydraulics.rearValves[0].knee", $"{7 + (10 * present)} bar"),
        ]).Vehicle;
        double[] turns = [.. PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si).Rows.Select(row => Number(row.Cells[0]))];
        Assert.Equal(turns.Order().Distinct(), turns);
        Assert.Equal((0, travel), (turns[0], turns[^1]));
    }

    [Fact]
    public void A_bar_gives_share_and_pressures()
    {
        Vehicle car = Load("track-coupe");
        var card = PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si);
        CardRow own = card.Rows.Single(row => row.IsOwn);
        double share = Setting.Of(car).Recommended!.FrontForceShare!.Value;
        Assert.Equal(100 * share, Number(own.Cells[1]), 1e-6);

        // Two cylinders on a bar: pressures are as force share over bore squared (bores 17.8 and 20.6 mm).
        double ratio = Number(own.Cells[5]) / Number(own.Cells[4]);
        Assert.Equal((1 - share) / share * (17.8 * 17.8) / (20.6 * 20.6), ratio, 0.02);
    }

    [Fact]
    public void Travel_that_the_cylinder_does_not_have_is_not_promised()
    {
        // A cylinder of 13/16 in and 26 mm of stroke is at its end before 0.8 g: the pad would still be 35 mm off the floor.
        Vehicle car = VehicleFile.Load(
            RepositoryRoot.File("data/vehicles/coupe-1960s.json"),
            new ValueOverride("masterCylinder.bore", "0.8125 in"), new ValueOverride("masterCylinder.stroke", "26 mm")).Vehicle;
        var force = new ControlForce(new BalanceModel(car, car.LoadCases[0]));
        Hydraulics.PedalTravel travel = force.TravelAt(force.AtRate(0.8)!.Balance.MasterPressure)!;
        Assert.True(travel.PadLeft > UnitsNet.Length.Zero && travel.StrokeLeft < UnitsNet.Length.Zero);
        (string Name, string Value) line =
            PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si).Pedal.Single(entry =>
            entry.Name.Contains("left to the floor", StringComparison.Ordinal));
        Assert.Equal("none: not reached", line.Value);
    }

    [Fact]
    public void A_setting_beyond_the_safe_limit_is_a_warning_at_the_top_and_never_the_baseline()
    {
        Vehicle car = Load("coupe-1960s");
        Pressure limit = Setting.Of(car).SafeLimit!.Knee!.Value;
        Vehicle wild = car.WithRearKnee(limit + Pressure.FromBars(5)), careful = car.WithRearKnee(limit - Pressure.FromBars(1));
        var card = PocketCard.Of(wild, wild.LoadCases[0], UnitSystem.Si);
        Assert.Contains("beyond the safe limit", card.Warning!, StringComparison.Ordinal);
        Assert.Equal(card.Baseline, PocketCard.Of(careful, careful.LoadCases[0], UnitSystem.Si).Baseline);
        Assert.Null(PocketCard.Of(careful, careful.LoadCases[0], UnitSystem.Si).Warning);
        string page = PocketCardPage.Html(card, CardPaper.A5);
        Assert.True(page.IndexOf("WARNING", StringComparison.Ordinal) < page.IndexOf("Baseline", StringComparison.Ordinal));
    }

    [Fact]
    public void A_valve_that_is_still_to_be_fitted_is_said_to_be_and_its_knees_beyond_the_limit_are_marked()
    {
        Vehicle coupe = Load("coupe-1960s");
        Vehicle car = coupe with
        {
            Hydraulics = coupe.Hydraulics with
            {
                RearValves =
                [
                    new LoadSensingValve
                    {
                        KneeAtReference = Pressure.FromBars(40),
                        ReferenceLoad = Force.FromKilonewtons(7),
                        KneePerKilonewton = Pressure.FromBars(5),
                        Slope = 0.4,
                    },
                ],
            },
        };
        var setting = Setting.Of(car);
        Assert.Equal(SettingVariable.AddedKnee, setting.Variable);
        Assert.NotNull(SettingSearch.RearFirst(car, car.Conditions));
        var card = PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si);
        Assert.EndsWith("(valve of slope 0.4 to be fitted before the one that is there)", card.Baseline, StringComparison.Ordinal);
        Assert.Contains("As it is built the rear can lock first", card.Warning!, StringComparison.Ordinal);
        double limit = setting.SafeLimit!.Knee!.Value.Bars;
        Assert.Contains(card.Rows, row => row.IsBeyond);
        Assert.All(card.Rows, row => Assert.Equal(Number(row.Cells[1].Split('\u00a0')[0]) > limit, row.IsBeyond));
        Assert.Contains("† beyond the safe limit", PocketCardPage.Html(card, CardPaper.A5), StringComparison.Ordinal);
        Assert.Contains("to be fitted", SettingWords.Sentence(setting, UnitSystem.Si), StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_known_by_its_class_has_a_card_that_says_so()
    {
        Vehicle car = VehicleFile.Read("""{ "name": "x", "carClass": "rear-engined car" }""", "test").Vehicle;
        Assert.Contains("typical of the car's class", PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si).Warning!,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_problem_is_told_at_once()
    {
        (int code, string output, string error) =
            await Shell.RunAsync("card", RepositoryRoot.File("data/vehicles/coupe-1960s.json"), "--load-case", "empty", "--set", "what");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("--load-case empty", error, StringComparison.Ordinal);
        Assert.Contains("--set what", error, StringComparison.Ordinal);
    }

    [SkippableTheory]
    [MemberData(nameof(Cards))]
    public async Task A_card_prints_on_exactly_one_sheet_of_its_size(string car, string paper)
    {
        Skip.If(Chromium.Executable is null && Environment.GetEnvironmentVariable("CI") != "true", Chromium.Missing);
        using var folder = new TemporaryFolder();
        foreach (string units in new[] { "si", "us" })
        {
            (int code, string _, string error) =
                await Shell.RunAsync("card", RepositoryRoot.File($"data/vehicles/{car}.json"), "--paper", paper, "--units", units, "--pdf",
                "--output", folder.Path);
            Assert.Equal((0, ""), (code, error));
            var pdf = PdfFacts.Of(File.ReadAllBytes(folder.File($"{car}-card-{paper}-{units}.pdf")));
            CardPaper sheet = CardPaper.All.Single(known => known.Name == paper);
            Assert.Equal(1, pdf.Pages);
            Assert.Equal(sheet.WidthMillimetres / 25.4 * 72, pdf.WidthPoints, 1.0);
            Assert.Equal(sheet.HeightMillimetres / 25.4 * 72, pdf.HeightPoints, 1.0);
        }
    }

    [SkippableTheory]
    [InlineData("coupe-1960s", "a5", "front.brake.friction=0.34 .. 0.41")]
    [InlineData("big-cam-saloon", "half-letter", "rear.brake.friction=0.34 .. 0.44")]
    public async Task A_card_of_a_car_with_ranges_prints_on_one_sheet_too(string car, string paper, string range)
    {
        Skip.If(Chromium.Executable is null && Environment.GetEnvironmentVariable("CI") != "true", Chromium.Missing);
        using var folder = new TemporaryFolder();
        foreach (string units in new[] { "si", "us" })
        {
            (int code, string _, string error) = await Shell.RunAsync("card", RepositoryRoot.File($"data/vehicles/{car}.json"), "--paper",
                paper,
                "--units", units, "--pdf", "--set", range, "--set", "loadCases[0].mass=1400 kg .. 1700 kg", "--output", folder.Path);
            Assert.True(code == 0, error);
            Assert.Equal(1, PdfFacts.Of(File.ReadAllBytes(folder.File($"{car}-card-{paper}-{units}.pdf"))).Pages);
        }
    }

    private static Vehicle Load(string name) => VehicleFile.Load(RepositoryRoot.File($"data/vehicles/{name}.json")).Vehicle;

    private static double Number(string text) =>
        double.Parse(Regex.Match(text, @"[\d.]+").Value, System.Globalization.CultureInfo.InvariantCulture);

    [Fact]
    public void On_track_tyres_the_table_speaks_of_the_road_at_which_the_limit_is_found()
    {
        Vehicle car = Load("track-coupe");
        Vehicle track = car with { Conditions = car.Conditions with { HighestAdhesion = 1.3 } };
        Vehicle road = car with { Conditions = car.Conditions with { HighestAdhesion = 1.0 } };
        PocketCard Of(Vehicle of) => PocketCard.Of(of, of.LoadCases[0], UnitSystem.Si);
        Assert.Equal("k = 1.3: locks first at [g]", Of(track).Columns[^1]);
        Assert.Equal(["Front at 0.6\u00a0g [bar]", "Rear at 0.6\u00a0g [bar]", "Front at 1.1\u00a0g [bar]", "Rear at 1.1\u00a0g [bar]"],
            Of(track).Columns.TakeLast(5).SkipLast(1));
        Assert.Equal("track tyres, k = 1.3", Of(track).FirstLocks[^1].Name);
        Assert.Equal("Dry road: locks first at [g]", Of(road).Columns[^1]);
        Assert.Equal("Front at 0.5\u00a0g [bar]", Of(road).Columns[^5]);
    }
}
