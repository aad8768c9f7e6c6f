using System.Text.Json.Nodes;
using BrakeBalance.Balance;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Measurements;
using BrakeBalance.Rules;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

/// <summary>What is drawn is what the assembly says.</summary>
public class BalanceFigureTests
{
    public static TheoryData<string> EveryCar => [.. Cars.Names];

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void The_installed_line_starts_and_runs_through_the_assembly_s_points(string car)
    {
        BalanceModel model = Cars.Model(car);
        JsonNode line = Trace(BalanceFigures.BrakeForces(model, units: UnitSystem.Si), "installed");
        BalancePoint start = model.At(Pressure.Zero);
        Assert.Equal(start.BrakingForces.Front.Kilonewtons, Numbers(line["x"])[0], 1e-4);
        Assert.Equal(start.BrakingForces.Rear.Kilonewtons, Numbers(line["y"])[0], 1e-4);
        BalancePoint end = model.At(model.Kinks[Numbers(line["x"]).Length - 1]);
        Assert.Equal(end.BrakingForces.Front.Kilonewtons, Numbers(line["x"])[^1], 1e-3);
        Assert.Equal(end.BrakingForces.Rear.Kilonewtons, Numbers(line["y"])[^1], 1e-3);
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Pressures_and_utilisation_end_at_the_assembly_s_points(string car)
    {
        BalanceModel model = Cars.Model(car);
        JsonNode pressures = Trace(BalanceFigures.LinePressures(model, [0.8], UnitSystem.Us), "first lock-up");
        LockUp lockUp = model.FirstLockUp(0.8)!;
        Assert.Equal(lockUp.At.LinePressures.Front.PoundsForcePerSquareInch, Numbers(pressures["x"])[0], 0.05);
        Assert.Equal(lockUp.At.LinePressures.Rear.PoundsForcePerSquareInch, Numbers(pressures["y"])[0], 0.05);

        UtilisationCurve curve = UtilisationCurve.Of(Cars.Load(car))[0];
        JsonNode front = Trace(BalanceFigures.AdhesionUtilisation(curve, UnitSystem.Si), "front axle");
        Assert.Equal(curve.Points[0].Front, Numbers(front["y"])[0], 1e-5);
        Assert.Equal(curve.Points[^1].BrakingRate, Numbers(front["x"])[^1], 1e-5);
        Assert.Equal(curve.Points[^1].Front, Numbers(front["y"])[^1], 1e-4);
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void The_knee_is_marked_where_the_valve_begins(string car)
    {
        BalanceModel model = Cars.Model(car);
        Figure figure = BalanceFigures.LinePressures(model, units: UnitSystem.Si);
        MarkerLayer? knee = figure.Layers.OfType<MarkerLayer>().FirstOrDefault(layer => layer.Name == "knee");
        if (Cars.Load(car).Hydraulics.RearProportioningValve is { } valve)
        {
            Assert.Equal(valve.Knee.Pascals, knee!.Y[0], 100.0);
            Assert.Contains(SettingWords.Knee(valve.Knee, UnitSystem.Si), figure.Title, StringComparison.Ordinal);
        }
        else
        {
            Assert.Null(knee);
        }
    }

    [Fact]
    public void A_car_asked_to_hold_on_slicks_is_drawn_and_told_of_as_far_as_their_road()
    {
        Vehicle coupe = Cars.Load("track-coupe");
        coupe = coupe with { Conditions = coupe.Conditions with { HighestAdhesion = 1.5 } };
        BalanceModel model = Enumerable.Range(0, 30)
            .Select(i => new BalanceModel(coupe.WithFrontForceShare(0.65 - (0.01 * i)), coupe.LoadCases[0]))
            .First(one => one.FirstLockUp(1.5)!.First == Axle.Rear);
        Assert.Equal(Axle.Front, model.FirstLockUp(1.2)!.First);

        Assert.EndsWith("the rear axle above", BalanceFigures.BrakeForces(model, units: UnitSystem.Si).Title, StringComparison.Ordinal);
        Figure efficiency = BalanceFigures.BrakingEfficiency(model);
        Assert.Equal(1.5, efficiency.Layers.OfType<LineLayer>().Max(line => line.X.Max()), 1e-9);
        Assert.Contains("The rear axle locks first at adhesion", efficiency.LongDescription, StringComparison.Ordinal);
        Figure compared = ComparisonFigures.SetUps([("A", new(coupe.WithFrontForceShare(0.8), coupe.LoadCases[0])), ("B", model)])!;
        Assert.Equal("The rear locks first somewhere with B", compared.Title);
        Exploring.Frame byHand = SettingExplorer.Of(Setting.Of(model.Vehicle), units: UnitSystem.Si).Start;
        Assert.Contains("the rear locks first", byHand.Verdict!.Text, StringComparison.Ordinal);
        Assert.Equal(1.5, BalanceSummary.Of(model.Vehicle).LoadCases[0].LockUps[^1].Adhesion);
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void The_region_of_rear_first_lies_above_the_ideal_curve(string car)
    {
        BalanceModel model = Cars.Model(car);
        RegionLayer region = BalanceFigures.BrakeForces(model).Layers.OfType<RegionLayer>().Single();
        Assert.Equal("rear axle locks first", region.LabelText);
        PerAxle<Force> ideal = model.IdealForces(model.RearLiftOffRate / 60);
        Assert.Equal(ideal.Front.Newtons, region.X[1], 1e-6);
        Assert.Equal(ideal.Rear.Newtons, region.Y[1], 1e-6);
        Assert.Equal(region.Y.Max(), region.Y[^1]);
        Assert.Equal(0, region.X[^1]);
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void A_plane_of_brake_forces_finds_the_same_in_either_system_of_units(string car)
    {
        Vehicle vehicle = Cars.Load(car);
        foreach (double knee in (double[])[5, 20, 40, 80])
        {
            Vehicle set = vehicle.Hydraulics.RearProportioningValve is null ? vehicle : vehicle.WithRearKnee(Pressure.FromBars(knee));
            Assert.All(set.LoadCases, load => Assert.Equal(
                BalanceFigures.BrakeForces(new BalanceModel(set, load), units: UnitSystem.Si).Title,
                BalanceFigures.BrakeForces(new BalanceModel(set, load), units: UnitSystem.Us).Title));
        }
    }

    [Fact]
    public void A_car_that_turns_rear_first_is_said_to()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        BalanceModel open = Cars.Model(car.WithRearKnee(car.Hydraulics.MaximumPressure));
        double from = open.IdealCrossings().Select(point => point.BrakingRate).First(rate => rate > 0.1);
        Assert.EndsWith(
            $"the front axle locks first up to a deceleration of {Measure.Number.Text(from, UnitSystem.Si)} g, the rear axle above",
            BalanceFigures.BrakeForces(open).Title, StringComparison.Ordinal);
        Assert.Equal(Axle.Rear, open.FirstLockUp(1.1)!.First);
        Assert.Contains(
            BalanceFigures.BrakingEfficiency(open).Layers.OfType<LineLayer>(), line =>
                line is { Name: "rear locks first", Dash: Dash.Dash, Tone: Tone.Rear });
    }

    [Fact]
    public void The_efficiency_line_has_no_gaps_and_ends_at_the_assembly_s_numbers()
    {
        BalanceModel model = Cars.Model(Cars.Load("track-coupe").WithFrontForceShare(0.55));
        LineLayer[] parts = [.. BalanceFigures.BrakingEfficiency(model).Layers.OfType<LineLayer>()];
        Assert.True(parts.Length > 1);
        for (int i = 1; i < parts.Length; i++)
        {
            Assert.Equal(parts[i - 1].X[^1], parts[i].X[0]);
        }

        Assert.Equal(model.FirstLockUp(0.1)!.Efficiency, parts[0].Y[0], 1e-12);
        Assert.Equal(model.FirstLockUp(1.2)!.Efficiency, parts[^1].Y[^1], 1e-9);
    }

    [Fact]
    public void Before_and_after_name_the_change()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        Figure worse = ComparisonFigures.BeforeAfter(Cars.Model(car), Cars.Model(car.WithRearKnee(Pressure.FromBars(60))));
        Assert.StartsWith("The change makes the rear axle lock first", worse.Title, StringComparison.Ordinal);
        Assert.Contains(worse.Layers.OfType<MarkerLayer>(), layer => layer is { Name: "rear locks first, after", Shape: Marker.Triangle });
        Figure cured = ComparisonFigures.BeforeAfter(Cars.Model(car.WithRearKnee(Pressure.FromBars(60))), Cars.Model(car));
        Assert.StartsWith("The change cures the rear axle locking first on these surfaces", cured.Title, StringComparison.Ordinal);
        Assert.Contains("after the change: knee 60.0 bar before, 24.1 bar after.", cured.Caption, StringComparison.Ordinal);
        Assert.Contains("after the change.", ComparisonFigures.BeforeAfter(Cars.Model(car), Cars.Model(car)).Caption,
            StringComparison.Ordinal);
        Figure bar = ComparisonFigures.BeforeAfter(
            Cars.Model(Cars.Load("track-coupe").WithFrontForceShare(0.5)), Cars.Model(Cars.Load("track-coupe").WithFrontForceShare(0.6)));
        Assert.Contains("after the change: bar 50.0 % front before, 60.0 % after.", bar.Caption, StringComparison.Ordinal);
    }

    private static JsonNode Trace(Figure figure, string name) =>
        JsonNode.Parse(figure.ToPlotlyJson())!["data"]!.AsArray().Single(trace => trace!["name"]!.GetValue<string>() == name)!;

    private static double[] Numbers(JsonNode? array) => [.. array!.AsArray().Select(number => number!.GetValue<double>())];

    /// <summary>A drum car whose rear leads before its knee and again on dry roads, and not between.</summary>
    [Fact]
    public void Roads_on_which_the_rear_locks_first_are_told_without_those_between_them_on_which_the_front_does()
    {
        Vehicle car = VehicleFile.Read("""
            {
              "name": "Pick-up", "wheelbase": "3.22 m",
              "loadCases": [{ "name": "driver only", "mass": "1890 kg", "frontShare": 0.57, "centreOfGravityHeight": "0.66 m" }],
              "front": {
                "tyre": { "loadedRadius": "345 mm" },
                "brake": { "type": "disc", "friction": 0.40, "pistonDiameters": ["66 mm"], "effectiveRadius": "126 mm" }
              },
              "rear": {
                "tyre": { "loadedRadius": "350 mm" },
                "brake": {
                  "type": "drum", "friction": 0.36, "thresholdPressure": "3 bar", "shoes": "duo-servo", "drumRadius": "140 mm",
                  "wheelCylinderDiameter": "20.6 mm", "brakeFactor": 4.1
                }
              },
              "engineBraking": { "drivenAxle": "rear", "brakingForce": "400 N" }, "rollingResistance": 0.014,
              "hydraulics": { "rearValves": [{ "type": "proportioning", "knee": "24 bar", "slope": 0.35 }] }
            }
            """, "pick-up").Vehicle;
        BalanceModel model = Cars.Model(car);
        Assert.Equal([Axle.Front, Axle.Rear, Axle.Front, Axle.Rear],
            new[] { 0.3, 0.4, 0.7, 1.0 }.Select(adhesion => model.FirstLockUp(adhesion)!.First));
        string described = BalanceFigures.BrakingEfficiency(model, UnitSystem.Si).LongDescription;
        Assert.Matches(@"locks first at adhesions from 0\.3\d to 0\.\d\d and from 0\.8\d to 1\.20\.$", described);
        var setting = Setting.Of(car);
        Assert.Matches(@"locks first at adhesions from 0\.3\d to 0\.\d\d and from 0\.8\d to",
            SettingExplorer.Of(setting, units: UnitSystem.Si).Start.Verdict!.Text);
        SettingOutcome[] unsafeOnes = [.. SettingMap.Of(setting).Select(outcome => outcome with { FrontFirstEverywhere = false })];
        Assert.DoesNotContain("they lie at",
            SettingFigures.SafeSettings(unsafeOnes, setting, UnitSystem.Si).LongDescription, StringComparison.Ordinal);
        string caption = BalanceFigures.AdhesionUtilisation(UtilisationCurve.Of(car)[0], UnitSystem.Si).Caption;
        Assert.Contains("engine disconnected", caption, StringComparison.Ordinal);
    }
}
