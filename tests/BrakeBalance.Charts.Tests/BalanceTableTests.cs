using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Outputs;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Rules;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using Microsoft.Data.Analysis;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

public class BalanceTableTests
{
    private const string Coupe = "coupe-1960s";

    private static readonly double[] Adhesions = [0.2, 0.5, 0.8, 1.1];

    [Fact]
    public void Sizes_and_masses_of_the_file_stand_as_they_were_read()
    {
        Vehicle car = Cars.Load(Coupe);
        LoadCase load = car.LoadCases[0] with { Mass = Mass.FromPounds(2053), CentreOfGravityHeight = Length.FromInches(18.25) };
        Brake disc = car.Brakes.Front with { EffectiveRadius = Length.FromInches(4.05) };
        car = car with { LoadCases = [load], Brakes = new(disc, car.Brakes.Rear) };
        Assert.Equal(4.05, (double)BalanceTables.Brakes(car, UnitSystem.Us)["Effective radius r [in]"][0], 1e-4);
        Assert.Equal(2053.0, (double)BalanceTables.LoadCases(car, UnitSystem.Us)["Mass m [lb]"][0], 1e-2);
        Assert.Equal(18.25, (double)BalanceTables.LoadCases(car, UnitSystem.Us)["Height of the centre of gravity h [in]"][0], 1e-4);
    }

    [Fact]
    public void Decelerations_of_a_table_keep_their_last_zero()
    {
        FigureTable table = new TableBuilder(UnitSystem.Si).Rounded("Deceleration", Measure.InG, [0.5, 0.12, null])
            .Rounded("Distance", Measure.Distance, [40.0, 8.16, null])
            .Rounded("Pressure", Measure.LinePressure, [4e6, 4.5e6, null]).Build();
        Assert.Equal(["0.50", "40.0", "40"], table.Row(0));
        Assert.Equal(["0.12", "8.2", "45"], table.Row(1));
        Assert.Equal(["", "", ""], table.Row(2));
    }

    [Fact]
    public void Axle_loads_add_up_to_the_weight_at_every_rate()
    {
        BalanceModel model = Cars.Model(Coupe);

        DataFrame table = BalanceTables.AxleLoads(model, [0, 0.3, 0.9], UnitSystem.Si);

        foreach (DataFrameRow row in table.Rows)
            Assert.Equal(model.Weight.Kilonewtons, (double)row["Front load N₁ [kN]"] + (double)row["Rear load N₂ [kN]"], 0.06);
        Assert.Null(table["Ideal rear share [%]"][0]);
    }

    [Fact]
    public void Lock_ups_are_those_of_the_model_in_display_units()
    {
        BalanceModel model = Cars.Model(Coupe);

        DataFrame table = BalanceTables.LockUps(model, Adhesions, UnitSystem.Us);

        for (int i = 0; i < Adhesions.Length; i++)
        {
            LockUp lockUp = model.FirstLockUp(Adhesions[i])!;
            Assert.Equal(lockUp.At.BrakingRate, (double)table["Deceleration z [g]"][i], 0.0051);
            Assert.Equal(lockUp.At.LinePressures.Rear.PoundsForcePerSquareInch, (double)table["Rear line pressure [psi]"][i], 5.1);
            Assert.Equal(lockUp.First == Axle.Front ? "front" : "REAR", table["Locks first"][i]);
        }
    }

    [Fact]
    public void A_change_that_makes_the_rear_lock_first_is_seen_in_the_comparison()
    {
        Vehicle before = Cars.Load(Coupe);
        Vehicle after = before with { Hydraulics = before.Hydraulics.WithoutRearProportioning() };

        DataFrame table = BalanceTables.Compare(before, after, Adhesions, UnitSystem.Si);

        Assert.Equal(before.LoadCases.Length * Adhesions.Length, table.Rows.Count);
        Assert.DoesNotContain("REAR", Column(table, "Before: locks first"));
        Assert.Contains("REAR", Column(table, "After: locks first"));
    }

    [Fact]
    public void Set_ups_with_other_load_cases_are_not_compared() =>
        Assert.Throws<ArgumentException>(() => BalanceTables.Compare(Cars.Load(Coupe), Cars.Load("track-coupe"), Adhesions));

    [Fact]
    public void Brakes_give_the_force_that_the_model_computes()
    {
        Vehicle car = Cars.Load(Coupe);
        Pressure low = Pressure.FromBars(40), high = Pressure.FromBars(50);
        var model = new BalanceModel(car, car.LoadCases[0]);

        DataFrame table = BalanceTables.Brakes(car, UnitSystem.Si);

        double step = (model.At(high).BrakingForces.Front - model.At(low).BrakingForces.Front).Newtons;
        Assert.Equal(step, (double)table["Braking force per 10 bar [N]"][0], 5.1);
    }

    [Fact]
    public void Rules_are_told_in_words_and_said_to_be_no_approval()
    {
        Vehicle car = Cars.Load(Coupe);
        RuleTable kept = RuleTable.Of(car);
        RuleTable broken = RuleTable.Of(car with { Hydraulics = car.Hydraulics.WithoutRearProportioning() });

        Assert.Equal(DistributionRules.Check(car).Count, Regex.Count(kept.ToHtml(), "<tr><td"));
        Assert.Contains("✓ pass", kept.ToPlainText(), StringComparison.Ordinal);
        Assert.DoesNotContain("✗", kept.ToPlainText(), StringComparison.Ordinal);
        Assert.Contains("✗ fail", broken.ToHtml(), StringComparison.Ordinal);
        Assert.Contains("no type approval", broken.ToHtml(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_table_of_a_car_with_ranges_shows_no_point_for_what_the_ranges_move()
    {
        Vehicle car = VehicleFile.Load(
            RepositoryRoot.File("data/vehicles/coupe-1960s.json"), new ValueOverride("loadCases[0].mass", "1000 kg .. 1100 kg")).Vehicle;
        var model = new BalanceModel(car, car.LoadCases[0]);
        string Cell(DataFrame table, string column, int row = 0) => table[column][row].ToString()!;
        Assert.Matches(@"^10\d\d \(10\d\d–1\d\d\d\)$", Cell(BalanceTables.LoadCases(car, UnitSystem.Si), "Mass m [kg]"));
        Assert.DoesNotContain("(", Cell(BalanceTables.LoadCases(car, UnitSystem.Si), "Mass m [kg]", 1), StringComparison.Ordinal);
        Assert.Contains("–", Cell(BalanceTables.AxleLoads(model, [0.5], UnitSystem.Si), "Rear load N₂ [kN]"), StringComparison.Ordinal);
        Assert.Contains("–", Cell(BalanceTables.LockUps(model, [0.8], UnitSystem.Si), "Front line pressure [bar]"),
            StringComparison.Ordinal);
        Assert.Contains("–", Cell(FootTables.Path(new ControlForce(model), [0.4], UnitSystem.Si), "Cylinder [bar]"),
            StringComparison.Ordinal);
        Assert.Contains(BandText.Legend, new FrameTable(BalanceTables.LoadCases(car)).ToHtml(), StringComparison.Ordinal);
        Assert.IsType<double>(BalanceTables.LoadCases(Cars.Load(Coupe))["Mass m [kg]"][0]);
    }

    [Fact]
    public void Rules_that_some_cars_of_the_ranges_break_are_not_told_as_kept()
    {
        Vehicle car = VehicleFile.Load(
            RepositoryRoot.File("data/vehicles/coupe-1960s.json"), new ValueOverride("front.brake.friction", "0.20 .. 0.60")).Vehicle;
        string told = RuleTable.Of(car).ToPlainText();
        Assert.Contains("✓ pass or ✗ fail", told.Replace("✗ fail or ✓ pass", "✓ pass or ✗ fail", StringComparison.Ordinal),
            StringComparison.Ordinal);
        Assert.Contains(BandText.Legend, told, StringComparison.Ordinal);
        string stopping = RuleTable.OfStopping(Cars.Load(Coupe)).ToHtml();
        Assert.DoesNotContain(BandText.Legend, stopping, StringComparison.Ordinal);
        Assert.Contains("km/h", stopping, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\([\d.]+ (ft|mph|lbf)\)", stopping); // what a source says in its own units stays
    }

    [Fact]
    public void The_explorers_greatest_knee_is_the_searchs_within_a_step()
    {
        Vehicle car = Cars.Load(Coupe);
        Pressure highest = Pressure.FromBars(64);

        // The explorer shows the car without lift and drag.
        var conditions = new Conditions
        {
            LowestAdhesion = 0.1,
            HighestAdhesion = 1.2,
            FrictionSpread = default,
            BrakeStates = [Conditions.UsualStates[0]],
            LoadCases = [car.LoadCases[0].Name],
            Speeds = SpeedRange.Only(Speed.Zero),
        };

        Explorable explorer = SettingExplorer.Of(Cars.Answer(Coupe), highest, UnitSystem.Si);

        double shown = (double)explorer.Start.Figures[0].Table.Frame.Columns[1].Min();
        double searched = SettingSearch.Limit(car, conditions).Knee!.Value.Bars;
        Assert.Equal(searched, shown, 0.1);
    }

    [Fact]
    public void The_numbers_of_a_column_have_the_same_decimals()
    {
        string html = new FrameTable(new DataFrame(new DoubleDataFrameColumn("z [–]", [0.2, 1, 0.25]))).ToHtml();

        Assert.Equal(["0.20", "1.00", "0.25"], Regex.Matches(html, "<td class=\"number\">([^<]+)</td>")
            .Select(match => match.Groups[1].Value));
    }

    private static IEnumerable<object?> Column(DataFrame table, string name) => table[name].Cast<object?>();
}
