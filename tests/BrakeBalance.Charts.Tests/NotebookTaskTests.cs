using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Bench;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Choosing;
using BrakeBalance.Days;
using BrakeBalance.Measurements;
using BrakeBalance.Stops;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

/// <summary>What a notebook asks its reader to see at its main figure is to be seen there, whatever the car.</summary>
public class NotebookTaskTests
{
    private static readonly string[] Feet = [.. Cars.Names.Where(name => Cars.Load(name).Control is { Circuits: not null })];

    public static TheoryData<string> EveryCar => [.. Cars.Names, .. Enumerable.Range(1, 4).Select(seed => $"{seed}")];

    public static TheoryData<string> CarsWithFeet => [.. Feet];

    /// <summary>What a check quotes as printed, and a source, stay as they are.</summary>
    [Fact]
    public void The_words_of_a_notebook_in_pounds_and_inches_have_no_metric_number()
    {
        const string Metric = @"\d[ \u00a0](N|kN|bar|mbar|kPa|mm|m|m²|km/h|kg|kJ|cm³|°C|W)(?![\w/·])";
        string[] quoted = ["## Check", "## Sources", "49 CFR", "71/320", "101.3 kPa", "The page prints"];
        string[] texts = [.. Directory.GetFiles(RepositoryRoot.File("notebooks"), "*.ipynb").SelectMany(path =>
            JsonNode.Parse(File.ReadAllText(path))!["cells"]!.AsArray())
            .Where(cell => (string)cell!["cell_type"]! == "markdown")
            .Select(cell => Regex.Replace(string.Concat(cell!["source"]!.AsArray().Select(line => (string)line!)), "`[^`]*`", ""))
            .Where(text => !quoted.Any(text.Contains))];
        Assert.InRange(texts.Length, 100, 1000);
        Assert.All(texts, text => Assert.DoesNotMatch(Metric, InBoth.Only(text, customary: true)));
        Assert.Equal("1.341 hp", BrakeBalance.Charts.Outputs.NumberText.Shown(Power.FromWatts(1000), UnitSystem.Us));
        Assert.Equal("1000 W", BrakeBalance.Charts.Outputs.NumberText.Shown(Power.FromWatts(1000), UnitSystem.Si));
    }

    /// <summary>Notebook 01: once the rear locks first, no step towards more braking at the rear brings the front back.</summary>
    [Theory]
    [MemberData(nameof(EveryCar))]
    public void The_turn_from_front_to_rear_is_the_only_one(string car)
    {
        Vehicle vehicle = Car(car);
        Explorable explorable = BalanceExplorables.SettingAndLoad(Setting.Of(vehicle), units: UnitSystem.Si);
        bool isBar = explorable.Controls[0].Label.Contains("share", StringComparison.Ordinal);
        int turns = 0;
        for (int load = 0; load < explorable.Controls[1].Settings.Count; load++)
        {
            for (int road = 0; road < explorable.Controls[2].Settings.Count; road++)
            {
                IEnumerable<int> steps = Enumerable.Range(0, explorable.Controls[0].Settings.Count);
                string[] first =
                    [.. (isBar ? steps.Reverse() : steps).Select(step => Value(explorable.At([step, load, road]), "Locks first"))];
                int turn = Array.FindIndex(first, axle => axle.StartsWith("rear", StringComparison.Ordinal));
                Assert.All(first.Skip(turn < 0 ? first.Length : turn), axle => Assert.StartsWith("rear", axle, StringComparison.Ordinal));
                turns += turn > 0 ? 1 : 0;
            }
        }

        Assert.True(turns > 0 || vehicle.Hydraulics.RearProportioningValve is null, "No turn is to be seen.");
    }

    /// <summary>Notebook 02: weaker front pads lower the line, linings weaker by as much at the rear raise it again.</summary>
    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Weaker_front_pads_let_the_rear_lock_first_sooner_and_weaker_rear_ones_later(string car)
    {
        Explorable explorable = SettingExplorer.Of(Setting.Of(Car(car)), units: UnitSystem.Si);
        int weaker = explorable.Controls[1].Settings.ToList().IndexOf("−15 %"), nominal = explorable.Controls[1].Start;
        for (int load = 0; load < explorable.Controls[0].Settings.Count; load++)
        {
            double[] own = Limits(load, nominal, nominal), front = Limits(load, weaker, nominal), both = Limits(load, weaker, weaker);
            Assert.All(own.Zip(front), pair => Assert.True(pair.Second <= pair.First));
            Assert.All(front.Zip(both), pair => Assert.True(pair.First <= pair.Second));
            bool isAlongAnEdge = own.All(limit => limit <= 0 || limit == own.Max());
            Assert.True((front.Sum() < own.Sum() && front.Sum() < both.Sum()) || isAlongAnEdge, "Nothing moves.");
        }

        // A bar's least front share falls as more of the rear is let in.
        double[] Limits(int load, int front, int rear) => explorable.At([load, front, rear]).Figures[0].Layers.OfType<LineLayer>()
            .Single(line => line.Name.StartsWith("front first", StringComparison.Ordinal)) is { Name: "front first down to here" } bar
            ? [.. bar.Y.Select(share => 0.8 - share)]
            : [.. explorable.At([load, front, rear]).Figures[0].Layers.OfType<LineLayer>()
                .Single(line => line.Name == "front first up to here").Y];
    }

    /// <summary>Notebook 03: a smaller bore takes less force and leaves less travel; less supply makes no hard stop lighter.</summary>
    [Theory]
    [MemberData(nameof(CarsWithFeet))]
    public void A_smaller_bore_trades_force_for_travel_and_less_supply_costs_force(string car)
    {
        Explorable explorable = FootExplorables.Effort(Cars.Load(car), units: UnitSystem.Si);
        (int supply, int bore) = (explorable.Controls[0].Start, explorable.Controls[1].Start);
        double Force(int supply, int bore) => Number(explorable.At([supply, bore]), "Pedal force at a dec", double.PositiveInfinity);
        double Left(int bore) => Number(explorable.At([supply, bore]), "Travel left to the floor", double.NegativeInfinity);
        Assert.True(Force(supply, bore - 1) < Force(supply, bore));
        Assert.True(Left(bore - 1) < Left(bore));
        double[] forces = [.. Enumerable.Range(0, explorable.Controls[0].Settings.Count).Select(step => Force(step, bore))];
        Assert.All(forces.Zip(forces.Skip(1)), pair => Assert.True(pair.First >= pair.Second));
        Assert.True(forces[0] > forces[supply]);
    }

    /// <summary>Notebook 04: air and heat each take stroke from the cylinder.</summary>
    [Theory]
    [MemberData(nameof(CarsWithFeet))]
    public void Half_a_per_cent_of_air_and_a_hot_fluid_each_take_stroke(string car)
    {
        Explorable explorable = FootExplorables.Travel(Cars.Load(car), units: UnitSystem.Si);
        int Step(int control, string text) =>
            explorable.Controls[control].Settings.Index().First(one => one.Item.StartsWith(text, StringComparison.Ordinal)).Index;
        (int bore, int air, int hot) = (explorable.Controls[0].Start, Step(1, "0.5"), Step(2, "140"));
        double Left(int air, int heat) => Number(explorable.At([bore, air, heat]), "Stroke left in the cylinder", double.NaN);
        Assert.True(Left(air, 0) < Left(0, 0));
        Assert.True(Left(0, hot) < Left(0, 0));
    }

    /// <summary>Notebook 05: the worst chance only rises towards more braking at the rear.</summary>
    [Theory]
    [MemberData(nameof(EveryCar))]
    public void The_chance_of_the_rear_first_only_rises_towards_more_braking_at_the_rear(string car)
    {
        Vehicle vehicle = Cars.Names.Contains(car) ? Cars.Measured(car) : Car(car);
        Setting setting = Setting.Of(vehicle);
        Figure figure = RobustSettingFigures.TradeOff(setting, UnitSystem.Si);
        LineLayer worst = figure.Layers.OfType<LineLayer>().Single(line => line.Name == "rear first, worst case");
        IEnumerable<double> chances = setting.Chance.Variable == SettingVariable.BalanceBar ? worst.Y.Reverse() : worst.Y;
        Assert.All(chances.Zip(chances.Skip(1)), pair => Assert.True(pair.First <= pair.Second + 1e-9));
    }

    /// <summary>Notebook 06: at the end of the stop the car whose rear wheels are locked has turned farther than the others.</summary>
    [Theory]
    [MemberData(nameof(EveryCar))]
    public void The_car_with_its_rear_wheels_locked_turns_farthest(string car)
    {
        Vehicle vehicle = Car(car);
        Explorable explorable = StopExplorables.FromAbove(
            vehicle, vehicle.LoadCases[0], 0.9, Speed.FromKilometersPerHour(100), Force.FromNewtons(1000), UnitSystem.Si);
        Frame end = explorable.At([explorable.Controls[0].Settings.Count - 1]);
        double[] headings = [.. end.Readouts.Select(readout => Math.Abs(double.Parse(
            Regex.Match(readout.Value.Replace('−', '-'), @"(-?[\d.]+)\s?°").Groups[1].Value, CultureInfo.InvariantCulture)))];
        int rear = end.Readouts.ToList().FindIndex(readout => readout.Label.Contains("rear", StringComparison.OrdinalIgnoreCase));
        Assert.All(headings.Index().Where(one => one.Index != rear), other => Assert.True(headings[rear] > 3 * other.Item,
            string.Join("; ", end.Readouts)));
    }

    /// <summary>Notebook 06, the check: on constant adhesion and without drag a locked car stops by the closed form.</summary>
    [Theory]
    [MemberData(nameof(EveryCar))]
    public void The_simulated_slide_of_the_check_is_as_long_as_the_closed_form(string car)
    {
        Vehicle vehicle = Car(car);
        PerAxle<Tyre> even = vehicle.Tyres.Select(tyre => tyre with { AdhesionFactor = 1, LoadSensitivity = 0 });
        vehicle = vehicle with { Tyres = even, Aerodynamics = null, RollingResistanceCoefficient = 0, EngineBraking = null };
        var flat = new BurckhardtCurve { Name = "constant", C1 = 0.8, C2 = 3000, C3 = 0 };
        StopSetup level = StopSetup.From(vehicle, vehicle.LoadCases[0], 0.8, flat);
        Speed speed = Speed.FromKilometersPerHour(100);
        StopResult slide = StraightStop.Run(
            level.Car, new EmergencyDriver { HeldPressure = 4 * level.MaximumPressure }, PressureBuildUp.Instant, speed);
        Assert.Equal(StopDistance.Braking(speed, Speed.Zero, 0.8).Meters, slide.Distance.Meters, 0.05);
    }

    /// <summary>Notebook 07: a harder first stop heats more; front track pads do more of the last stop than front road pads.</summary>
    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Harder_stops_heat_more_and_track_pads_keep_the_front_at_work(string car)
    {
        Vehicle vehicle = Car(car);
        Explorable explorable = StopExplorables.PadsAndHeat(vehicle, vehicle.LoadCases[^1].Name, UnitSystem.Si);
        List<string> pads = [.. explorable.Controls[0].Settings];
        (int road, int track) = (pads.IndexOf("road pad"), pads.IndexOf("track pad"));
        double[][] at = [.. Enumerable.Range(0, 3).Select(hard => explorable.At([0, 0, hard]))
            .Select(frame => new[] { Number(frame, "Hottest disc or drum", 0), Number(frame, "Left to wet boiling", 0) })];
        Assert.True(at[0][0] < at[1][0] && at[1][0] < at[2][0]);
        Assert.True(at[0][1] > at[1][1] && at[1][1] >= at[2][1]);
        for (int hard = 0; hard < 3; hard++)
        {
            Assert.True(Number(explorable.At([track, 0, hard]), "Front share, last stop", 0)
                > Number(explorable.At([road, 0, hard]), "Front share, last stop", 100));
        }
    }

    /// <summary>Notebook 08: a narrower return, colder oil and a tee each leave at least as much on the brakes.</summary>
    [Fact]
    public void A_narrow_return_cold_oil_and_a_tee_keep_the_brakes_on()
    {
        PlumbingJob job = BenchInput.Example.Plumbing!;
        Explorable explorable = BenchExplorables.Return(job.Return, job.Release!, Length.FromMeters(1), UnitSystem.Si);
        (int layout, int bore, int oil) = (explorable.Controls[0].Start, explorable.Controls[1].Start, explorable.Controls[2].Start);
        double At(int layout, int bore, int oil) => Number(explorable.At([layout, bore, oil]), "In the return, at rest", double.NaN);
        Assert.True(At(layout, bore - 1, oil) > At(layout, bore, oil));
        Assert.True(At(layout, bore, 0) > At(layout, bore, oil));
        Assert.True(At(layout, bore, oil) > At(0, bore, oil));

        // What stays on the brakes is one number, in the readout and in the sentence.
        foreach (UnitSystem units in Enum.GetValues<UnitSystem>())
        {
            Frame narrow = BenchExplorables.Return(job.Return, job.Release!, Length.FromMeters(1), units).At([layout, 0, oil]);
            string stays = Value(narrow, "Stays on the brakes").Replace('\u00a0', ' ');
            Assert.Contains($"make {stays} that stay on the brakes", narrow.Verdict!.Text, StringComparison.Ordinal);
        }
    }

    /// <summary>Notebook 09: no dot lies below and to the left of the line.</summary>
    [Fact]
    public void No_set_beats_those_on_the_line_in_force_and_travel()
    {
        ChoiceInput input = ChoiceInput.Load();
        const string Targets = """{ "pedalForceHalf": "150 N", "pedalForceFull": "310 N", "rearMargin": 0.15 }""";
        Choice choice = Choice.Of(input.Text, Targets, input.List);
        Figure figure = FootFigures.SearchFront(choice, ChoiceResult.Of(choice, each: 2), UnitSystem.Si)!;
        MarkerLayer dots = figure.Layers.OfType<MarkerLayer>().Single(layer => layer.Name == "fits");
        LineLayer line = figure.Layers.OfType<LineLayer>().Single();
        Assert.True(dots.X.Count > line.X.Count);
        foreach ((double force, double travel) in dots.X.Zip(dots.Y))
            Assert.Contains(line.X.Zip(line.Y), best => best.First <= force + 1e-6 && best.Second <= travel + 1e-9);
    }

    private static Vehicle Car(string name) => int.TryParse(name, CultureInfo.InvariantCulture, out int seed)
        ? RandomCars.Car(new Random(seed)) : Cars.Load(name);

    private static string Value(Frame frame, string label) =>
        frame.Readouts.Single(readout => readout.Label.StartsWith(label, StringComparison.Ordinal)).Value;

    private static double Number(Frame frame, string label, double otherwise) => Regex.Match(
        Value(frame, label).Replace(",", "", StringComparison.Ordinal).Replace('−', '-'), @"-?[\d.]+") is { Success: true } number
            ? double.Parse(number.Value, CultureInfo.InvariantCulture) : otherwise;
}
