using System.Xml.Linq;
using BrakeBalance.Balance;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Measurements;
using BrakeBalance.Stops;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

public class StopFigureTests
{
    private static readonly Speed Hundred = Speed.FromKilometersPerHour(100);

    public static TheoryData<string> Cars => ["coupe-1960s", "track-coupe", "rear-engined-sports-car", "big-cam-saloon"];

    private static Vehicle Read(string name) => VehicleFile.Load(RepositoryRoot.File($"data/vehicles/{name}.json")).Vehicle;

    internal static StopSetup Setup(string name) => StopSetup.From(Read(name), Read(name).LoadCases[0], 0.9);

    internal static (string, YawResult)[] Cases(StopSetup setup) =>
    [
        .. new[] { Axle.Front, Axle.Rear }.Select(axle => ($"{axle.ToString().ToLowerInvariant()} axle locked", YawStop.Run(
            YawStop.WithOnlyLocked(setup.Car, axle), setup.MaximumPressure, setup.BuildUp, Hundred, YawDisturbance.Crown))),
    ];

    [Theory]
    [MemberData(nameof(Cars))]
    public void Every_figure_builds_for_every_car_in_both_systems_with_units_on_its_axes(string name)
    {
        StopSetup setup = Setup(name);
        Vehicle car = Read(name);
        StopResult stop = StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp, Hundred);
        HeatResult heat = BrakeHeat.Run(setup.Car, setup.Heat, HeatCycle.TypeOne(setup.MaximumSpeed), Temperature.FromDegreesCelsius(20),
            setup.Fluid);
        IReadOnlyList<StopComparisonRow> rows =
            StopComparison.Of([("as it is", car), ("softer rear", car.WithFrictionFactors(1, 0.9))], car.LoadCases[0].Name, 0.9, Hundred);
        BendMap bends = TrailBraking.Map(car, car.LoadCases[0], 0.9, Hundred, Acceleration.FromStandardGravity(0.1));
        foreach (UnitSystem units in new[] { UnitSystem.Si, UnitSystem.Us })
        {
            Figure[] figures =
            [
                StopFigures.SlipCurves([PublishedSlipCurves.DryAsphalt, PublishedSlipCurves.Ice], Force.FromKilonewtons(3), units),
                StopFigures.SpeedOverTime(stop, 1, units), StopFigures.DecelerationOverTime(stop, null, units),
                    StopFigures.LoadsOverTime(stop, 1, units),
                StopFigures.ForceCourse(new BalanceModel(car, car.LoadCases[0]), stop, 0.9, 1, units), StopFigures.Distances(rows, units),
                StopFigures.Headings(Cases(setup), units), BendFigures.Braking(bends, units), BendFigures.SafeKnee(bends, units),
                StopFigures.PlanView(Cases(setup), car.Wheelbase, 2, units),
                HeatFigures.TemperatureByStop(heat, setup.Heat, units), HeatFigures.Drift(heat, units), HeatFigures.OverTime(heat, units),
            ];
            foreach (Figure figure in figures)
            {
                Assert.NotNull(XDocument.Parse(figure.ToSvg()).Root);
                Assert.Contains("[", figure.YAxis.Title(units), StringComparison.Ordinal);
                Assert.NotEmpty(figure.ToPlotlyJson());
                Assert.True(figure.Table.Frame.Rows.Count > 0, figure.Id);
            }
        }
    }

    [Fact]
    public void Two_stops_by_different_feet_do_not_bear_one_caption()
    {
        StopSetup setup = Setup("coupe-1960s");
        string Caption(double share) => StopFigures.SpeedOverTime(StraightStop.Run(
            setup.Car, setup.Emergency with { HeldPressure = setup.EmergencyPressure * share }, setup.BuildUp, Hundred)).Caption;
        Assert.NotEqual(Caption(1), Caption(0.8));
        Assert.Contains(Measure.LinePressure.Text(setup.EmergencyPressure * 0.8, UnitSystem.Si), Caption(0.8), StringComparison.Ordinal);
    }

    [Fact]
    public void Up_to_a_tyres_peak_a_stop_lies_beside_the_installed_line_by_what_slows_its_wheels()
    {
        StopSetup setup = Setup("coupe-1960s");
        StopResult stop = StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp, Hundred);
        BrakedAxle rear = setup.Car.Axles.Rear;
        foreach (StopSample now in stop.Trace.Where(s => s.Wheels.Front == WheelState.Rolling && s.DecelerationMetresPerSecondSquared > 2))
        {
            double spin = rear.WheelInertia.KilogramSquareMeters * now.WheelRadiansPerSecondSquared.Rear;
            Assert.True(spin < 0);
            Assert.Equal(now.BrakingTorqueNewtonMetres.Rear + rear.EngineBrakingTorque.NewtonMeters + spin,
                now.BrakingForceNewtons.Rear * rear.LoadedRadius.Meters, 1.0);
        }
    }

    [Fact]
    public void First_and_last_point_of_the_traces_are_those_of_the_stop()
    {
        StopSetup setup = Setup("coupe-1960s");
        StopResult stop = StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp, Hundred);
        LineLayer car = StopFigures.SpeedOverTime(stop).Layers.OfType<LineLayer>().Single(l => l.Name == "car");
        Assert.Equal(Hundred.MetersPerSecond, car.Y[0], 1e-9);
        Assert.Equal(0, car.Y[^1]);
        Assert.Equal(stop.Duration.Seconds, car.X[^1], 1e-9);
        LineLayer course = StopFigures.ForceCourse(new BalanceModel(Read("coupe-1960s"), Read("coupe-1960s").LoadCases[0]), stop,
            0.9).Layers
            .OfType<LineLayer>().Single(l => l.Name == "this stop");
        Assert.Equal(stop.Trace[^1].BrakingForceNewtons.Rear, course.Y[^1], 1e-9);
    }

    [Fact]
    public void The_plan_view_turns_the_car_and_marks_the_locked_axle()
    {
        StopSetup setup = Setup("coupe-1960s");
        Figure late = StopFigures.PlanView(Cases(setup), Length.FromMeters(2.9), 3);
        LineLayer locked = late.Layers.OfType<LineLayer>().Single(l => l.Name == "rear axle, rear axle locked");
        LineLayer rolling = late.Layers.OfType<LineLayer>().Single(l => l.Name == "front axle, rear axle locked");
        Assert.True(locked.Width > 2 * rolling.Width);
        LineLayer straight = late.Layers.OfType<LineLayer>().Single(l => l.Name == "front axle, front axle locked");
        double turned = Math.Atan2(rolling.X[1] - rolling.X[0], rolling.Y[1] - rolling.Y[0]);
        double kept = Math.Atan2(straight.X[1] - straight.X[0], straight.Y[1] - straight.Y[0]);
        Assert.True(Math.Abs(turned) > 1 && Math.Abs(kept) < 0.2, $"{turned} {kept}");
        Assert.StartsWith("Rear axle locked", late.Title, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void The_moment_square_to_the_road_is_where_the_curve_crosses_ninety_degrees(string name)
    {
        Figure figure = StopFigures.Headings(Cases(Setup(name)));
        LineLayer rear = figure.Layers.OfType<LineLayer>().Single(l => l.Name == "rear axle locked");
        int after = rear.Y.ToList().FindIndex(y => y >= Math.PI / 2);
        double crossing = rear.X[after - 1] + (rear.X[after] - rear.X[after - 1]) * (Math.PI / 2 - rear.Y[after - 1])
            / (rear.Y[after] - rear.Y[after - 1]);
        Assert.Equal($"Rear axle locked: square to the road after "
            + $"{crossing.ToString("0.00", System.Globalization.CultureInfo.InvariantCulture)} s", figure.Title);
        Assert.Contains(FormattableString.Invariant($"square to the road after {crossing:0.00} s"), figure.LongDescription,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_knee_in_a_bend_is_told_with_where_the_rear_lets_go_and_without_a_valve_the_side_force_is_shown()
    {
        Vehicle coupe = Read("coupe-1960s");
        BendMap map = TrailBraking.Map(coupe, coupe.LoadCases[0], 0.9, Hundred, Acceleration.FromStandardGravity(0.1));
        Figure knees = BendFigures.SafeKnee(map);
        LineLayer line = knees.Layers.OfType<LineLayer>().Single(l => l.Name == "highest knee with the front first");
        double[] spins = [.. map.Points.Where(point => point.RearLetsGo)
            .Select(point => point.Course.LateralAcceleration.StandardGravity)];
        Assert.Equal(string.Create(System.Globalization.CultureInfo.InvariantCulture,
            $"With the present knee of 24.1 bar the rear lets go first at {spins[0]:0.00} to {spins[^1]:0.00} g sideways"),
            knees.Title.Replace('\u00a0', ' '));
        Assert.Equal(map.Points.Select(point => point.SafeKnee?.Pascals ?? 0), line.Y);
        Assert.Contains(map.SafeKneeEverywhere is { } knee ? SettingWords.Number(knee, UnitSystem.Si) : "no knee does",
            knees.Caption, StringComparison.Ordinal);
        BendMap bare = TrailBraking.Map(Read("track-coupe"), Read("track-coupe").LoadCases[0], 0.9, Hundred,
            Acceleration.FromStandardGravity(0.1));
        Assert.StartsWith("The rear ", BendFigures.SafeKnee(bare).Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Boiling_and_fade_are_marked_and_said()
    {
        StopSetup setup = Setup("coupe-1960s");
        HeatCycle hard = HeatCycle.Repeated(
            20, Speed.FromKilometersPerHour(140), Speed.FromKilometersPerHour(50), Acceleration.FromMetersPerSecondSquared(6),
                Duration.FromSeconds(40), false);
        HeatResult heat = BrakeHeat.Run(setup.Car, setup.Heat, hard, Temperature.FromDegreesCelsius(30), setup.Fluid);
        Figure figure = HeatFigures.TemperatureByStop(heat, setup.Heat);
        string dry = heat.FirstDryBoilingStop is { } stop
            ? $", new fluid in stop {stop}" : heat.DryBoilingMargin.Kelvins < 0 ? ", new fluid once the car is parked" : "";
        Assert.StartsWith($"Old fluid boils in stop {heat.FirstBoilingStop} of 20{dry}; front brakes reach ", figure.Title,
            StringComparison.Ordinal);
        Assert.Contains(figure.Layers.OfType<ReferenceLayer>(), l => l.Name == "wet boiling" && Math.Abs(l.Value - 428.15) < 1e-9);
        Assert.Contains(figure.Layers.OfType<ReferenceLayer>(), l => l.Name == "front fades 10 %");
        Assert.Equal(2, figure.Layers.OfType<ReferenceLayer>().Where(l => l.Name.EndsWith("boiling", StringComparison.Ordinal))
            .Select(l => l.Tone).Distinct().Count());
    }

    [Theory]
    [InlineData(10)]
    [InlineData(3)]
    [InlineData(1)]
    public void A_lap_says_from_its_results_when_the_fluid_boils_and_how_hot_it_gets_once_parked(int laps)
    {
        StopSetup setup = Setup("coupe-1960s");
        SpeedTrace trace = LogReader.LoadLap(RepositoryRoot.File("data/cycles/invented-lap.csv")).Rows.Trace();
        HeatResult heat = BrakeHeat.Run(setup.Car, setup.Heat, HeatCycle.Lap("invented laps", trace, laps),
            Temperature.FromDegreesCelsius(20), setup.Fluid);
        Figure figure = HeatFigures.OverTime(heat, UnitSystem.Si);
        Assert.StartsWith("Invented laps", figure.Caption, StringComparison.Ordinal);
        double wet = setup.Fluid.WetBoilingPoint.DegreesCelsius;
        int? first = heat.Stops.FirstOrDefault(s => s.FluidAtEnd.Front.DegreesCelsius >= wet)?.Number;
        double peak = heat.Trace.Max(s => s.FluidCelsius.Front);
        Assert.Contains(
            first is { } stop ? $"Old fluid boils in stop {stop} of {heat.Stops.Count}"
                : peak >= wet ? "once the car is parked" : "below its wet boiling point, also",
            figure.Title, StringComparison.Ordinal);
        Assert.Contains($"front {Measure.Temperature.Text(heat.Soak.HottestFluid.Front.Kelvins, UnitSystem.Si)} after",
            figure.LongDescription, StringComparison.Ordinal);
        Assert.Contains(figure.Layers.OfType<ReferenceLayer>(), l => l.Name == "dry boiling");
    }

    [Fact]
    public void Explorables_play_the_same_stop_at_every_moment()
    {
        StopSetup setup = Setup("coupe-1960s");
        Vehicle car = Read("coupe-1960s");
        StopResult stop = StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp, Hundred);
        Explorable second = StopExplorables.SecondBySecond(new BalanceModel(car, car.LoadCases[0]), stop, 0.9, 5);
        Assert.Equal(5, second.Frames().Count);
        Assert.Equal("0 km/h", second.Frames()[^1].Readouts[0].Value.Replace('\u00a0', ' '));
        Explorable above = StopExplorables.FromAbove(Cases(setup), car.Wheelbase, 81);
        double heading = double.Parse(above.Start.Readouts[1].Value.Split(", ")[1].TrimEnd('°').Replace('−', '-'),
            System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(Math.Abs(heading), 60, 120);
        Assert.Contains("Play", above.ToHtml(), StringComparison.Ordinal);
        Explorable pads = StopExplorables.PadsAndHeat(car, car.LoadCases[0].Name);
        Assert.Equal(75, pads.Frames().Count);
    }

    [Fact]
    public void A_set_up_beyond_the_safe_limit_is_named_so_and_never_praised_above_one_that_is_not()
    {
        Vehicle car = Setting.Of(Read("coupe-1960s")).RecommendedVehicle;
        Vehicle bare = car with { Hydraulics = car.Hydraulics.WithoutRearProportioning() };
        Figure Of(params (string, Vehicle)[] cars) =>
            StopFigures.Distances(StopComparison.Of(cars, car.LoadCases[0].Name, 0.9, Hundred), UnitSystem.Us);
        Figure both = Of(("as set", car), ("no valve", bare));
        Assert.StartsWith("As set: shortest stop with the front first", both.Title, StringComparison.Ordinal);
        Assert.EndsWith("Beyond the safe limit (the rear can lock first): no valve.", both.Caption, StringComparison.Ordinal);
        Assert.Single(both.LongDescription.Split("beyond the safe limit, the rear can lock first in ")[1..]);
        Assert.StartsWith("No valve (beyond the safe limit): shortest stop,", Of(("no valve", bare)).Title, StringComparison.Ordinal);
        Assert.DoesNotContain("beyond", Of(("as set", car)).Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void A_measured_car_that_stands_beyond_what_its_own_stops_allow_is_named_so_in_the_picture_of_distances()
    {
        Vehicle measured = Tests.Cars.Measured("coupe-1960s");
        Vehicle car = measured.WithRearKnee(Setting.Of(measured).SafeLimit!.Knee!.Value + Pressure.FromBars(1));
        Assert.True(Setting.Of(car).PresentIsBeyond);
        Assert.Null(SettingSearch.RearFirst(car, car.Conditions.AtMiddle));
        Figure figure = StopFigures.Distances(new CarStudy(car).Comparison, UnitSystem.Si);
        Assert.Contains("Beyond the safe limit (the rear can lock first): Present setting;", figure.Caption, StringComparison.Ordinal);
        Assert.DoesNotContain("with the front first", figure.Title, StringComparison.Ordinal);
        // Notebook 06 compares under its own speed and foot.
        string notebook = RepositoryRoot.File("notebooks/06-what-happens-when-an-axle-locks.ipynb");
        Assert.Contains("Setting.Of(car).Compare(", File.ReadAllText(notebook), StringComparison.Ordinal);
        Assert.All(Setting.Of(car).Compare([("now", car), ("more rear", car.WithFrictionFactors(1, 1.1))], car.LoadCases[0].Name, 0.9,
            Hundred, new StopConditions { PedalForce = Force.FromNewtons(1000) }), row => Assert.True(row.IsBeyond));
    }

    [Fact]
    public void The_side_by_side_table_holds_the_distances_of_the_stops()
    {
        Vehicle car = Read("coupe-1960s");
        IReadOnlyList<StopComparisonRow> rows = StopComparison.Of([("as it is", car)], car.LoadCases[0].Name, 0.9, Hundred);
        FigureTable table = StopTables.SideBySide(rows, UnitSystem.Us);
        Assert.Equal(rows[0].Emergency.Distance.Feet, (double)table.Frame["Full pressure, wheels locked [ft]"][0], 0.6);
        Assert.Contains("Swaps ends", table.Columns);
        Assert.Equal(["Speed [mph]", "Rear locked: growth rate [1/s]", "Time to double [s]", "Front locked: growth rate [1/s]"],
            StopTables.Growth(Setup("coupe-1960s").Car, [Hundred], UnitSystem.Us).Columns);
    }

    [Fact]
    public void Brakes_without_a_heat_entry_are_said_to_be_estimated_under_their_temperatures()
    {
        Vehicle car = Read("coupe-1960s");
        Vehicle silent = car with { AxleDynamics = car.AxleDynamics with { Rear = car.AxleDynamics.Rear with { Heat = null } } };
        const string said = "mass and cooling are estimated from the brake's size";
        foreach (Vehicle of in new[] { car, silent })
        {
            (PerAxle<ThermalBrake> brakes, HeatResult result) = new CarStudy(of).Heat;
            string captions = HeatFigures.TemperatureByStop(result, brakes).Caption + HeatFigures.OverTime(result).Caption;
            Assert.Equal(of == silent ? 3 : 1, captions.Split(said).Length);
        }
    }

    [Fact]
    public void Friction_that_no_heat_changes_is_said_to_be_so_by_the_file()
    {
        StopSetup setup = Setup("coupe-1960s");
        HeatResult heat = BrakeHeat.Run(setup.Car, setup.Heat, HeatCycle.TypeOne(setup.MaximumSpeed), Temperature.FromDegreesCelsius(20),
            setup.Fluid);
        HeatResult same = heat with { Stops = [.. heat.Stops.Select(stop => stop with { TorqueFactorAtEnd = new(1, 1) })] };
        const string said = "friction does not change with temperature";
        Assert.DoesNotContain(said, HeatFigures.Drift(heat).Caption, StringComparison.Ordinal);
        Assert.Contains(said, HeatFigures.Drift(same).Caption, StringComparison.Ordinal);
    }
}
