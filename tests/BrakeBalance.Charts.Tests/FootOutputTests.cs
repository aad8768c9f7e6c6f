using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

/// <summary>What notebooks on pedal, assist and travel show beside their figures.</summary>
public class FootOutputTests
{
    public static TheoryData<string> EveryCar => [.. Cars.Names];

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void There_is_a_card_for_every_failure_with_its_force_and_distance(string name)
    {
        Vehicle car = Cars.Load(name);
        IReadOnlyList<FailureOutcome> outcomes = FailureAnalysis.Of(car, car.LoadCases[0]);
        string html = System.Net.WebUtility.HtmlDecode(new FailureCards(outcomes, units: UnitSystem.Si).ToHtml());
        Assert.Equal(outcomes.Count, html.Split("<section class=\"bb-card\">").Length - 1);
        foreach (FailureOutcome outcome in outcomes)
        {
            Assert.Contains(Finding.Capital(outcome.Case.Name), html, StringComparison.Ordinal);
            Assert.Contains(Measure.Distance.Text(outcome.Distance!.FromFirstTouch, UnitSystem.Si), html, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.3)]
    public void The_reserves_title_counts_the_presses_and_states_rate_and_force(double rate)
    {
        var control = new ControlForce(Cars.Model("coupe-1960s"));
        EngineOffPresses presses = EngineOffPresses.Of(control, rate);
        Figure figure = FootFigures.Reserve(control, rate, units: UnitSystem.Si);
        Assert.Contains(figure.Layers, layer => layer.Name.StartsWith("stops of ", StringComparison.Ordinal)
            && layer.Name.EndsWith(" g", StringComparison.Ordinal));
        string title = figure.Title.Replace('\u00a0', ' ');
        Assert.Contains(presses.Count is { } count ? $"{count} press" : "even with the store spent", title, StringComparison.Ordinal);
        Assert.Contains(Measure.ControlForce.Text(presses.GreatestPedalForce, UnitSystem.Si)
            .Replace('\u00a0', ' '), title, StringComparison.Ordinal);
        Assert.Contains(rate.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture), title, StringComparison.Ordinal);
    }

    [Fact]
    public void The_gauge_sheet_shows_what_the_assembly_says_and_leaves_room_to_write()
    {
        var control = new ControlForce(Cars.Model("coupe-1960s"));
        var sheet = new GaugeSheet(control, [Force.FromPoundsForce(60)], UnitSystem.Us);
        double psi = control.At(Force.FromPoundsForce(60)).Balance.LinePressures.Front.PoundsForcePerSquareInch;
        string html = sheet.ToHtml();
        Assert.Contains($"<td>{Math.Round(psi / 10) * 10:0}</td>", html, StringComparison.Ordinal);
        Assert.Equal(2, html.Split("<td class=\"bb-blank\"></td>").Length - 1);
        Assert.Contains("no more than about 100 lbf", html, StringComparison.Ordinal);
        Assert.Contains("<th scope=\"row\">60</th>", html, StringComparison.Ordinal);
        Assert.DoesNotContain("[N]", html, StringComparison.Ordinal);
        Assert.DoesNotContain("lbf]", new GaugeSheet(control, null, UnitSystem.Si).ToHtml(), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Sliders_start_at_the_car_as_it_is(string name)
    {
        Vehicle car = Cars.Load(name);
        Explorable effort = FootExplorables.Effort(car, units: UnitSystem.Si);
        ControlForcePoint hard = new ControlForce(Cars.Model(car)).AtRate(FootFigures.HardStop)!;
        Assert.Equal(Measure.ControlForce.Text(hard.PedalForce, UnitSystem.Si), effort.Start.Readouts[0].Value);
        Assert.Equal(6, FootExplorables.Travel(car, UnitSystem.Us).Controls[1].Settings.Count);
    }

    [Fact]
    public void A_slider_of_pump_pressure_comes_with_a_hydraulic_booster()
    {
        var hydraulic = new HydraulicBooster
        {
            ReliefPressure = Pressure.FromBars(95),
            PumpFlow = VolumeFlow.FromLitersPerMinute(7),
            PowerPistonDiameter = Length.FromMillimeters(32),
            BoostRatio = 5,
        };
        Explorable effort = FootExplorables.Effort(Cars.Load("coupe-1960s"), hydraulic, UnitSystem.Si);
        Assert.Equal("Relief pressure of the pump", effort.Controls[0].Label);
        Assert.Contains("95\u00a0bar", effort.Controls[0].Settings);

        // The booster is not the car's: captions name it, at every setting, and nothing is said where the car has its own.
        const string Swapped = ", with a hydraulic booster in place of its own assist.";
        BalanceModel model = Cars.Model("coupe-1960s");
        var swapped = new ControlForce(model, model.Vehicle.Control! with { Assist = hydraulic });
        Assert.Contains(Swapped, effort.At([1, 1]).Figures[0].Caption, StringComparison.Ordinal);
        Assert.EndsWith(Swapped, FootFigures.Reserve(swapped, units: UnitSystem.Si).Caption, StringComparison.Ordinal);
        Assert.All(
            [FootFigures.Reserve(new ControlForce(model)), FootExplorables.Effort(model.Vehicle).At([1, 1]).Figures[0]],
            own => Assert.DoesNotContain(Swapped, own.Caption, StringComparison.Ordinal));
    }

    [Fact]
    public void A_car_without_pedal_data_is_replaced_by_the_invented_one_and_the_note_says_so()
    {
        string file = Path.Combine(Path.GetTempPath(), $"no-pedal-{Environment.ProcessId}.json");
        string text = File.ReadAllText(RepositoryRoot.File(NotebookInput.DefaultVehicle));
        string[] kept = [.. text.Split('\n')];
        int from = Array.FindIndex(kept, line => line.StartsWith("  \"pedal\"", StringComparison.Ordinal));
        int to = Array.FindIndex(kept, line => line.StartsWith("  \"aerodynamics\"", StringComparison.Ordinal));
        File.WriteAllLines(file, [.. kept[..from], .. kept[to..]]);
        try
        {
            FootInput input = FootInput.Load(new NotebookInput(file, []));
            Assert.NotNull(input.Vehicle.Control);
            Assert.Contains("does not give pedal, assist and masterCylinder", input.Note, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Fact]
    public void Air_in_a_fluid_of_unknown_volume_is_not_called_harmless()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        BrakeControl control = car.Control!;
        Vehicle unknown = car with
        {
            Control = control with { Circuits = control.Circuits!.Value.Select(circuit => circuit with { FluidVolume = Volume.Zero }) },
        };
        Assert.Contains(FootExplorables.Travel(car, UnitSystem.Si).Frames(), frame => frame.Verdict!.Kind == VerdictKind.Good);
        Assert.All(FootExplorables.Travel(unknown, UnitSystem.Si).Frames(),
            frame => Assert.Equal(VerdictKind.Caution, frame.Verdict!.Kind));
    }

    [Theory]
    [InlineData(UnitSystem.Si)]
    [InlineData(UnitSystem.Us)]
    public void A_long_pedal_has_one_number_in_the_picture_and_beside_it(UnitSystem units)
    {
        Frame[] deep = [.. FootExplorables.Travel(Cars.Load("big-cam-saloon"), units).Frames()
            .Where(frame => frame.Verdict!.Text.StartsWith("Long pedal", StringComparison.Ordinal))];
        Assert.NotEmpty(deep);
        Assert.All(deep, frame => Assert.Contains(
            $"Long pedal: {frame.Readouts[1].Value} left to the floor".Replace('\u00a0', ' '), frame.Verdict!.Text.Replace('\u00a0', ' '),
            StringComparison.Ordinal));
    }

    [Fact]
    public void A_map_of_bores_says_whose_bore_it_is_and_begins_below_what_fits()
    {
        Vehicle car = Cars.Load("track-coupe");
        Figure figure = FootFigures.ChoiceMap(Cars.Model(car), "no assist", car.Control!.Assist, units: UnitSystem.Si);
        Assert.StartsWith("Bore of the front master cylinder", figure.XAxis.Title(UnitSystem.Si), StringComparison.Ordinal);
        Assert.DoesNotContain("bores from 9 mm to", figure.Title.Replace('\u00a0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void A_distance_in_feet_has_no_tenths() => Assert.Equal("1528\u00a0ft", Measure.Distance.Text(465.6, UnitSystem.Us));

    [Fact]
    public void The_picture_of_the_pedals_travel_speaks_of_the_stop_that_leaves_least()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        var force = new ControlForce(Cars.Model(car));
        Figure Of(params double[] rates) => FootFigures.Travel(
            [.. rates.Select(rate => ($"{rate:0.0} g", force.TravelAt(force.AtRate(rate)!.Balance.MasterPressure)!))],
            car.Control!.Pedal.AvailableTravel, car, car.LoadCases[0].Name, units: UnitSystem.Si);
        Assert.Contains("(0.7 g)", Of(0.3, 0.5, 0.7).Title, StringComparison.Ordinal);
        Assert.Equal(Of(0.7).Title, Of(0.3, 0.7, 0.5).Title);
        PedalTravel same = force.TravelAt(force.AtRate(0.3)!.Balance.MasterPressure)!;
        Assert.Equal("0.7 g", FootFigures.Hardest([("0.7 g", same), ("0.3 g", same)]).Name);
        CatalogueEntry entry = FigureCatalogue.All.Single(one => one.Name == "travel");
        var study = new CarStudy(car);
        Assert.StartsWith("Braking at 0.7 g leaves", entry.Plain.Of(entry.Make(study, UnitSystem.Si)!, study).Title,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(UnitSystem.Si, "Long pedal: 41 mm left to the floor", "(")]
    [InlineData(UnitSystem.Us, " in left to the floor", " mm")]
    public void A_cards_notice_stands_in_the_cards_units_and_its_deceleration_in_g(UnitSystem units, string said, string not)
    {
        FailureOutcome outcome = FailureAnalysis.Of(Cars.Load("coupe-1960s"), Cars.Load("coupe-1960s").LoadCases[0])[0] with
        {
            Notices = ["Long pedal: 41 mm (1.6 in) left to the floor."],
        };
        string text = new FailureCards([outcome], units: units).ToPlainText();
        string notice = text[text.IndexOf("Long pedal", StringComparison.Ordinal)..];
        Assert.Contains(said, notice, StringComparison.Ordinal);
        Assert.DoesNotContain(not, notice, StringComparison.Ordinal);
        Assert.Matches(@"Deceleration with up to [^;]* 0\.\d\d\u00a0g;", text);
    }

    [Fact]
    public void A_pedal_that_ends_before_the_brakes_take_hold_has_a_picture_of_effort_all_the_same()
    {
        string text = File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json")).Replace("\"ratio\": 4.0,", """
            "geometry": { "pivotToPad": "300 mm", "pivotToPin": "62 mm", "linkLength": "80 mm", "rodAxisDepth": "60 mm",
              "pinAngleAtRest": "-15 °" },
            """, StringComparison.Ordinal).Replace("23.6 mm", "2 mm", StringComparison.Ordinal);
        Vehicle car = VehicleFile.Read(text.Replace("24.0 mm", "110 mm", StringComparison.Ordinal), "car.json").Vehicle;
        Figure figure = FootFigures.Effort(Cars.Model(car), ControlVariants.Assists(car.Control!), units: UnitSystem.Si);
        Assert.Equal("all that a foot can push", Assert.Single(figure.Layers).Name);
        Assert.Contains("is not reached", figure.LongDescription, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_nothing_gives_way_picture_and_page_speak_of_the_hardest_stop()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        PerAxle<CircuitVolume> stiff = car.Control!.Circuits!.Value.Select(circuit => new CircuitVolume
        {
            PistonArea = circuit.PistonArea,
            Clearance = circuit.Clearance,
        });
        car = car with { Control = car.Control with { Circuits = stiff } };
        Frame frame = FootExplorables.Travel(car, units: UnitSystem.Si).Start;
        string rate = frame.Readouts[0].Label["Pedal travel at ".Length..];
        Assert.Contains($"({rate})", frame.Figures[0].Title, StringComparison.Ordinal);
    }
}
