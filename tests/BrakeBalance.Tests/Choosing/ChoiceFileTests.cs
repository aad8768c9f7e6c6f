using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Choosing;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Choosing;

/// <summary>Targets and parts as they are written: what is left out, what stands for several, and every problem with its place.</summary>
public class ChoiceFileTests
{
    private static readonly string Car = File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "big-cam-saloon.json"));

    [Fact]
    public void The_starter_of_targets_writes_out_what_an_empty_file_means()
    {
        (Targets? starter, IReadOnlyList<Problem> problems) = Targets.Read(Targets.Starter(), null);
        Assert.Empty(problems);
        Assert.All(starter!.All, target =>
        {
            double usual = Targets.Read("{}", null).Targets![target.Kind].Limit;
            Assert.True(target.Limit.Equals(usual) || Math.Abs(target.Limit - usual) < 1e-9, target.Name);
        });
        Assert.Equal(Targets.Read("{}", null).Targets!.HighestPedalForce, starter.HighestPedalForce);
        Assert.Null(starter.Use);
        Assert.Equal(Enum.GetValues<TargetKind>(), starter.All.Select(target => target.Kind));
    }

    [Fact]
    public void Every_optional_line_of_the_starter_can_be_taken_in()
    {
        (Targets? all, IReadOnlyList<Problem> problems) = Targets.Read(Targets.Starter().Replace("//~ ", "", StringComparison.Ordinal),
            VehicleFile.Read(Car, "x").Vehicle);
        Assert.Empty(problems);
        Assert.Equal(10, all!.Use!.Stops);
        Assert.All(all.All, target => Assert.True(target.IsAsked, target.Name));
    }

    [Fact]
    public void All_problems_of_targets_come_at_once_with_their_place()
    {
        (Targets? targets, IReadOnlyList<Problem> problems) = Targets.Read("""
            {
              "loadCase": "nobody", "pedalForceHalf": "500 N", "pedalForceFull": "300 N", "efficiency": 7, "pedaltravel": "1 mm",
              "travelLeftAtLock": "40 mm .. 50 mm", "use": { "stops": 3, "from": "100 km/h", "interval": "5 s" }
            }
            """, VehicleFile.Read(Car, "x").Vehicle);
        Assert.Null(targets);
        Assert.Superset(
            new HashSet<string> { "loadCase", "pedalForceHalf", "efficiency", "pedaltravel", "use" },
            problems.Select(problem => problem.Path).ToHashSet());
    }

    [Fact]
    public void A_list_without_a_row_of_names_is_told_so_without_words_of_a_log() =>
        Assert.All(PartsList.Read(new StringReader("# none yet\n"), Car).Problems, problem =>
            Assert.True(problem.What.StartsWith("there is no", StringComparison.Ordinal)
                && !problem.What.Contains("log", StringComparison.Ordinal), problem.What));

    [Fact]
    public void The_starter_of_parts_is_read_for_a_car_and_stands_for_several_sizes()
    {
        (PartsList? parts, IReadOnlyList<Problem> problems) = PartsList.Read(new StringReader(PartsList.Starter()), Car);
        Assert.Empty(problems);
        Assert.Equal("money", parts!.Money);
        (string name, var bores) = parts.Places.Single(place => place.Name == "master cylinder");
        Assert.Equal([null, "7/8 in", "15/16 in", "1 in", "1-1/16 in", "1-1/8 in"], bores.Select(part => part?.Sets[0].Value));
        Assert.Equal(1.9, bores[1]!.Mass!.Value.Kilograms);
        Assert.Equal(170, bores[1]!.Rating!.Value.Bars);
        Assert.Equal(2 * 9 + 1, parts.Places.Single(place => place.Name == "rear valve").Parts.Length);
    }

    [Fact]
    public void A_starter_of_parts_about_a_car_is_read_for_it_whatever_parts_it_has()
    {
        string[] cars = [.. from assist in StarterFile.Assists from rear in StarterFile.Rears from valve in StarterFile.Valves
            select StarterFile.Text(assist, rear, valve)];
        Assert.True(cars.Length >= 30);
        Assert.All(cars, text =>
        {
            string list = PartsList.Starter(text);
            (PartsList? parts, IReadOnlyList<Problem> problems) = PartsList.Read(new StringReader(list), text);
            Assert.True(problems.Count == 0, string.Join('\n', problems));
            Assert.DoesNotContain("not for this car", list, StringComparison.Ordinal);
            Assert.True(parts!.Places.Length >= 5, list);
        });
    }

    [Fact]
    public void A_starter_of_parts_about_a_car_lies_about_its_sizes()
    {
        string list = PartsList.Starter(StarterFile.Text("vacuum", "drum", "load-sensing"));
        Assert.Contains("masterCylinder.bore = inch series 3/4 in .. 1 in", list, StringComparison.Ordinal);
        Assert.Contains("rear.brake.wheelCylinderDiameter = 15.8 mm .. 18.8 mm", list, StringComparison.Ordinal);
        Assert.Contains("hydraulics.rearValves[0].kneeAtReference = 20 bar .. 36 bar", list, StringComparison.Ordinal);
        Assert.Contains("assist.diaphragmDiameter = 8 in .. 11 in", list, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_adjuster_or_the_bar_can_be_set_to_stands_in_the_list_of_a_car_that_is_set_too_high()
    {
        string Rows(string valve, string written, string present) => string.Join('\n', PartsList.Starter(
            StarterFile.Text("none", "disc", valve).Replace(written, present, StringComparison.Ordinal)).Split('\n')
            .Where(row => row.Contains("set anew", StringComparison.Ordinal)));
        Assert.Contains("knee = 7 bar .. 51 bar step 6 bar", Rows("adjustable", "\"knee\": \"27 bar\"", "\"knee\": \"45 bar\""),
            StringComparison.Ordinal);

        string bar = StarterFile.Text("none", "disc", "balance-bar").Replace("\"frontForceShare\": 0.58", "\"frontForceShare\": 0.4",
            StringComparison.Ordinal);
        double recommended = Setting.Of(VehicleFile.Read(bar, "x").Vehicle).Recommended!.FrontForceShare!.Value;
        Assert.True(recommended > 0.46);
        PartsList parts = PartsList.Read(new StringReader(PartsList.Starter(bar)), bar).Parts!;
        Assert.Contains(parts.Places.Single(place => place.Name == "balance bar").Parts, part => part is not null
            && double.Parse(part.Sets[0].Value, CultureInfo.InvariantCulture) >= recommended);
    }

    /// <summary>What has no adjuster is not set anew for nothing.</summary>
    [Fact]
    public void A_fixed_valve_is_offered_as_one_to_buy_at_any_knee()
    {
        string adjustable = StarterFile.Text("none", "disc", "adjustable");
        VehicleReading car = VehicleFile.Read(adjustable, "x");
        Assert.NotNull(car.Vehicle.Hydraulics.RearProportioningValve!.Adjustment);
        string plain = Regex.Replace(adjustable, @"""adjuster"": \{[^}]*\},", "");
        Assert.Null(VehicleFile.Read(plain, "x").Vehicle.Hydraulics.RearProportioningValve!.Adjustment);
        Assert.Contains("rear valve,present one with its knee set anew,", PartsList.Starter(adjustable), StringComparison.Ordinal);
        string list = PartsList.Starter(plain);
        Assert.DoesNotContain("set anew", list, StringComparison.Ordinal);
        Assert.Contains("rear valve,invented one of another knee,hydraulics.rearValves[0].knee = 2 bar .. 33 bar step 4 bar,60,", list,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("4 .. 6 step 0.5", "4 4.5 5 5.5 6")]
    [InlineData("10 bar .. 20 bar step 5 bar", "10 bar|15 bar|20 bar")]
    [InlineData("10..20 bar step 5", "10 bar|15 bar|20 bar")]
    [InlineData("0.3 .. 0.41 step 0.05", "0.3 0.35 0.4")]
    [InlineData("metric series 19 mm .. 21 mm", "19 mm|20 mm|21 mm")]
    [InlineData("inch series 20 mm .. 1 in", "13/16 in|7/8 in|15/16 in|1 in")]
    [InlineData("6 .. 4 step 1", "")]
    [InlineData("4 .. 6 step 0", "")]
    [InlineData("4 mm .. 6 in step 1 mm", "")]
    [InlineData("0 .. 9 step 0.000001", "")]
    [InlineData("inch series from here", "")]
    [InlineData("7/8 in", "")]
    public void A_value_stands_for_several(string text, string values) =>
        Assert.Equal(values.Split(values.Contains('|', StringComparison.Ordinal) ? '|' : ' ', StringSplitOptions.RemoveEmptyEntries),
            PartsList.Values(text));

    [Fact]
    public void All_problems_of_parts_come_at_once_with_their_line()
    {
        (PartsList? parts, IReadOnlyList<Problem> problems) = PartsList.Read(new StringReader("""
            # a comment
            part,name,sets,price,mass [kg],rating
            cylinder,a,masterCylinder.bor = 1 in,10,,
            cylinder,b,masterCylinder.bore = 3 m,10,,
            cylinder,c,masterCylinder.bore,10,,
            cylinder,d,masterCylinder.bore = 1 in,ten,-2,fast
            ,e,pedal.ratio = 4 .. 6 step 1,,,
            pedal,f,masterCylinder.bore = 1 in,,,
            pedal,g,pedal.ratio = 4 .. 2 step 1,,,
            """), Car);
        Assert.Null(parts);
        string[] said = [.. problems.Select(problem => problem.ToString())];
        foreach (string place in (string[])["line 3", "line 4 (b)", "line 5", "line 6", "line 7", "line 9"])
        {
            Assert.Contains(said, problem => problem.StartsWith(place, StringComparison.Ordinal));
        }

        Assert.Equal(3, said.Count(problem => problem.StartsWith("line 6", StringComparison.Ordinal)));
        Assert.Contains(said, problem => problem.Contains("is set by \"cylinder\" and \"pedal\"", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("assist.type = banana", "vacuum, hydraulic")]
    [InlineData("assist.type = none; assist.cutInn = 40 N", "assist.cutInn is no single value")]
    [InlineData("assist.type = none; assist.cutIn = 40 N", "assist.cutIn is no single value")]
    [InlineData("front.brake.pistonDiameters[7] = 40 mm", "front.brake.pistonDiameters[7] is no single value")]
    public void What_a_row_sets_and_no_car_of_it_would_have_is_a_problem(string sets, string named)
    {
        (PartsList? parts, IReadOnlyList<Problem> problems) =
            PartsList.Read(new StringReader($"part,name,sets\nany,a,\"{sets}\"\n"), Car);
        Assert.Null(parts);
        Assert.Contains(problems, problem => problem.ToString().Contains(named, StringComparison.Ordinal));
    }

    [Fact]
    public void A_kind_and_its_entries_may_stand_in_any_order()
    {
        (PartsList? parts, IReadOnlyList<Problem> problems) = PartsList.Read(new StringReader(
            "part,name,sets\nbooster,vacuum,assist.vacuum = 20 inHg; assist.diaphragmDiameter = 8 in; assist.type = vacuum\n"), Car);
        Assert.Empty(problems);
        string fitted = parts!.Places.Single().Parts[1]!.Fitted(Car);
        Assert.IsType<BrakeBalance.Assist.VacuumBooster>(VehicleFile.Read(fitted, "fitted").Vehicle.Control!.Assist);
    }

    [Theory]
    [InlineData("", "no header")]
    [InlineData("part,name,sets\n", "no rows")]
    [InlineData("part,name\na,b\n", "sets")]
    [InlineData("part,name,sets,colour\na,b,pedal.ratio=5,red\n", "colour")]
    [InlineData("part,name,sets\nbore,b,front.brake.pistonDiameters = 54 mm, 54 mm\n", "more cells")]
    public void A_list_that_is_none_says_why(string text, string word)
    {
        (PartsList? parts, IReadOnlyList<Problem> problems) = PartsList.Read(new StringReader(text), Car);
        Assert.Null(parts);
        Assert.Contains(problems, problem => problem.ToString().Contains(word, StringComparison.Ordinal));
    }
}
