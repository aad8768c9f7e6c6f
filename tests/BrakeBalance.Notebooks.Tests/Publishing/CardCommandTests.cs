using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

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

        // The file's knob: 7 bar fully out and 10 bar a turn, by hand: 3 turns give 37 bar; at its own 350 psi (24.1 bar) 1.7 turns.
        CardRow third = card.Rows.Single(row => row.Cells[0] == "3");
        Assert.Equal("37", third.Cells[1]);
        CardRow own = card.Rows.Single(row => row.IsOwn);
        Assert.Equal("1.7", own.Cells[0]);
        Assert.StartsWith("1.7 turns in, knee 24", card.GoBackTo.Replace('\u00a0', ' '), StringComparison.Ordinal);

        // The valve's law beyond the knee: rear = knee + slope × (front − knee), as long as the front's hold-off valve is fully open.
        double front = Number(own.Cells[4]), rear = Number(own.Cells[5]);
        Assert.Equal(24.13 + 0.3 * (front - 24.13), rear, 0.5);
        Assert.Equal(card.Columns.Count, own.Cells.Count);
    }

    [Theory]
    [InlineData("coupe-1960s")]
    [InlineData("rear-engined-sports-car")]
    [InlineData("big-cam-saloon")]
    public void Engine_off_presses_are_those_of_the_summary_under_the_condition_that_is_stated(string name)
    {
        Vehicle car = Load(name);
        EngineOffPresses presses = BrakeBalance.Summaries.ControlSummary.Of(car)!.LoadCases[0].EngineOff;
        (string label, string value) = PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si).Pedal.Single(line => line.Name.StartsWith("Engine off", StringComparison.Ordinal));
        Assert.Equal(presses.Count is { } count ? $"{count}" : "any number", value);
        Assert.Contains("0.5", label, StringComparison.Ordinal);
        Assert.Contains(Measure.ControlForce.Text(presses.GreatestPedalForce, UnitSystem.Si), label, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bar_gives_share_and_pressures()
    {
        Vehicle car = Load("track-coupe");
        var card = PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si);
        CardRow own = card.Rows.Single(row => row.IsOwn);
        Assert.Equal("55", own.Cells[1]);

        // Two cylinders on a bar: pressures are as force share over bore squared (bores 17.8 and 20.6 mm).
        double ratio = Number(own.Cells[5]) / Number(own.Cells[4]);
        Assert.Equal(0.45 / 0.55 * (17.8 * 17.8) / (20.6 * 20.6), ratio, 0.02);
        Assert.Contains("below the computed limit", card.GoBackTo + card.Limit, StringComparison.Ordinal);
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
        (string Name, string Value) line = PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si).Pedal.Single(entry => entry.Name.Contains("left to the floor", StringComparison.Ordinal));
        Assert.Equal("none: not reached", line.Value);
    }

    [Fact]
    public void A_setting_beyond_the_computed_limit_is_told()
    {
        Vehicle car = Load("coupe-1960s");
        double limit = SettingSearch.GreatestSafeKnee(car, new SettingConditions(), 0.3).Outcome!.Knee.Bars;
        Assert.StartsWith(car.Hydraulics.RearProportioningValve!.Knee.Bars > limit ? "CAUTION" : "Computed limit", PocketCard.Of(car, car.LoadCases[0], UnitSystem.Si).Limit, StringComparison.Ordinal);
        Vehicle careful = car.WithRearKnee(UnitsNet.Pressure.FromBars(limit - 1));
        Assert.StartsWith("Computed limit", PocketCard.Of(careful, careful.LoadCases[0], UnitSystem.Si).Limit, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_problem_is_told_at_once()
    {
        (int code, string output, string error) = await Shell.RunAsync("card", RepositoryRoot.File("data/vehicles/coupe-1960s.json"), "--load-case", "empty", "--set", "what");
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
            (int code, string _, string error) = await Shell.RunAsync("card", RepositoryRoot.File($"data/vehicles/{car}.json"), "--paper", paper, "--units", units, "--pdf", "--output", folder.Path);
            Assert.Equal((0, ""), (code, error));
            var pdf = PdfFacts.Of(File.ReadAllBytes(folder.File($"{car}-card-{paper}-{units}.pdf")));
            CardPaper sheet = CardPaper.All.Single(known => known.Name == paper);
            Assert.Equal(1, pdf.Pages);
            Assert.Equal(sheet.WidthMillimetres / 25.4 * 72, pdf.WidthPoints, 1.0);
            Assert.Equal(sheet.HeightMillimetres / 25.4 * 72, pdf.HeightPoints, 1.0);
        }
    }

    private static Vehicle Load(string name) => VehicleFile.Load(RepositoryRoot.File($"data/vehicles/{name}.json")).Vehicle;

    private static double Number(string text) => double.Parse(Regex.Match(text, @"[\d.]+").Value, System.Globalization.CultureInfo.InvariantCulture);
}
