using BrakeBalance.Choosing;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using FsCheck.Xunit;

namespace BrakeBalance.Tests.Choosing;

/// <summary>The search leaves nothing out: brute force over every combination, each read from its own file, says the same.</summary>
public class ChoiceSearchTests
{
    private static readonly string[] Rows =
    [
        "cylinder,tandem,masterCylinder.bore = inch series 7/8 in .. 1-1/8 in,95,,170",
        "cylinder,stepped,masterCylinder.bore = 1 in; masterCylinder.rearBore = 7/8 in,120,,",
        "cylinder,long,masterCylinder.bore = 24 mm; masterCylinder.stroke = 40 mm; masterCylinder.pushRod.pistonDepth = 23 mm,80,,160",
        "pedal,drilled,pedal.ratio = 3.8 .. 5 step 0.6,40,,",
        "pedal,sprung,pedal.returnSpringRate = 1 N/mm; pedal.ratio = 4.4,60,,",
        "booster,stronger,assist.reliefPressure = 110 bar,200,,",
        "booster,none,assist.type = none,0,,",
        "front caliper,big,front.brake.pistonDiameters = 60 mm; fluid.front.compliance = 2.6 cm³,150,,150",
        "front pads,fast,front.brake.friction = 0.42,70,,",
        "rear caliper,small,rear.brake.pistonDiameters = 34 mm,90,,140",
        "rear caliper,big,rear.brake.pistonDiameters = 41 mm,90,,",
        "valve,set,hydraulics.rearValves[0].knee = 11 bar .. 31 bar step 10 bar,0,,",
        "valve,bypass,hydraulics.rearValves[0].bypassWhenFrontLost = true,110,,",
        "tyres,tall,front.tyre.loadedRadius = 316 mm; rear.tyre.loadedRadius = 316 mm,300,,",
        "fluid,grade,fluid.grade = DOT 5.1,20,,",
        "ballast,in the boot,loadCases[0].frontShare = 0.53,0,,",
    ];

    private const string Use = ", \"use\": { \"stops\": 5, \"from\": \"120 km/h\", \"interval\": \"60 s\", \"hottest\": \"300 °C\" }";

    private static readonly string Car = File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "big-cam-saloon.json"));

    [Property(MaxTest = 10)]
    public void Brute_force_over_a_small_catalogue_finds_exactly_what_the_search_finds(int seed)
    {
        (Targets targets, PartsList parts) = Drawn(new Random(seed));
        (Part[] Parts, double[] Values)[] all = [.. Combinations(parts).Select(set => (set, Values(set, targets)))
            .Where(one => one.Item2 is not null).Select(one => (one.set, one.Item2!))];
        var search = new ChoiceSearch(Car, targets, parts);
        ChoiceField field = search.Run();
        ChoiceResult result = ChoiceResult.Of(search, 20);

        Assert.Equal(parts.Count, search.Count);
        Assert.Equal(search.Count - all.Length, field.Impossible);
        foreach (Target target in targets.All.Where(target => ChosenCar.IsCheap(target.Kind) && target.Kind != TargetKind.FrontFirst))
        {
            Assert.Equal(all.Count(one => !(target.Room(one.Values[(int)target.Kind]) < 0)), field.Met[(int)target.Kind]);
        }

        (Part[] Parts, double[] Values)[] fits = [.. all.Where(one => Miss(targets, one.Values) == 0)];
        if (fits.Length == 0)
        {
            Assert.Empty(result.Shown);
            Assert.Equal(all.Min(one => Miss(targets, one.Values)), result.Nearest!.Miss, 1e-9);
            return;
        }

        Assert.Null(result.Nearest);
        (IReadOnlyList<string> why, Proposal smallest) = result.Shown[0];
        Assert.Contains("smallest change that works", why);
        Assert.Equal(fits.Min(one => (one.Parts.Length, one.Parts.Sum(part => part.Price))), (smallest.Parts.Count, smallest.Price));
        double best = result.Shown.Where(one => one.For.Contains("most room to the tightest target"))
            .Max(one => Room(targets, one.Set.Values));
        Assert.Equal(fits.Max(one => Room(targets, one.Values)), best, 1e-9);
        Assert.Equal(fits.Length, search.Fitting(field.Fits).Count());
        AssertFront(fits.Select(one => (one.Values[(int)TargetKind.PedalForceFull], one.Values[(int)TargetKind.PedalTravelFull])),
            search.Front(field.Fits, set => set.EffortNewtons, set => set.TravelMetres)
                .Select(set => (set.Values[(int)TargetKind.PedalForceFull], set.Values[(int)TargetKind.PedalTravelFull])));
        AssertFront(fits.Select(one => (one.Parts.Sum(part => part.Price), -Room(targets, one.Values))),
            search.Front(field.Fits, set => set.Price, set => -set.Room).Select(set => (set.Price, -Room(targets, set.Values))));
    }

    [Property(MaxTest = 6)]
    public void What_is_put_together_from_pieces_answers_as_the_file_of_the_whole_car_does(int seed)
    {
        (Targets targets, PartsList parts) = Drawn(new Random(seed));
        var search = new ChoiceSearch(Car, targets, parts);
        ChoiceField field = search.Run();
        foreach (FoundSet set in field.Fits.Concat(field.Misses))
        {
            Proposal put = search.Of(set.Index)!;
            double[] read = ChosenCar.Answers(VehicleFile.Read(put.Text, "put back").Vehicle, targets, ChoiceSearch.RatingOf(put.Parts));
            Assert.All(targets.All, target => AssertSame(read[(int)target.Kind], put.Values[(int)target.Kind]));
            Assert.True(set.Miss <= put.Miss, $"{set.Index}: at least {set.Miss} is missed, but {put.Miss} is.");
            AssertSame(read[(int)TargetKind.PedalForceFull], set.EffortNewtons);
            AssertSame(read[(int)TargetKind.PedalTravelFull], set.TravelMetres);
            AssertSame(read[(int)TargetKind.RearMargin], set.Margin);
            AssertSame(read[(int)TargetKind.Efficiency], set.Efficiency);
        }
    }

    [Theory]
    [InlineData("{ \"storedStops\": 8 }")]
    [InlineData("{ \"pedalForceFullNoAssist\": \"900 N\" }")]
    [InlineData("{ }")]
    public void Few_cars_are_read_whole_for_what_their_pieces_already_miss(string asked)
    {
        foreach (string path in Directory.EnumerateFiles(Path.Combine(RepositoryFiles.Root, "data", "vehicles"), "*.json"))
        {
            string text = File.ReadAllText(path);
            if (VehicleFile.Read(text, path).Vehicle is not { Control: not null } car || Targets.Read(asked, car).Targets is not { } targets
                || PartsList.Read(new StringReader(PartsList.Starter(text)), text).Parts is not { } parts)
            {
                continue;
            }

            var search = new ChoiceSearch(text, targets, parts);
            ChoiceField field = search.Some(0, Math.Min(search.Count, 4000));
            _ = ChoiceResult.Of(search, field, 3);
            FoundSet[] whole = [.. field.Fits.Concat(field.Misses).Where(set => search.IsKnown(set.Index))];

            // Whether the file's ranges forbid a setting is asked of whole cars, once for each set of brakes.
            int vain = whole.Count(set => search.Of(set.Index) is not { } put || put.Miss > set.Miss);
            int brakes = car.Uncertainty is null ? 0 : whole.Select(set => search.BrakesOf(set.Index)).Distinct().Count();
            Assert.True(vain <= 64 + brakes, $"{car.Name}: {vain} of {whole.Length} cars were read whole in vain.");
            Assert.All(whole, set => Assert.True(search.Of(set.Index) is not { } put || set.Miss <= put.Miss));
        }
    }

    [Fact]
    public void A_set_written_as_a_file_keeps_the_comments_and_its_summary_says_the_same()
    {
        (Targets? targets, _) = Targets.Read("{}", null);
        (PartsList? parts, _) = PartsList.Read(new StringReader(PartsList.Starter()), Car);
        Proposal set = ChoiceResult.Of(new ChoiceSearch(Car, targets!, parts!), 1).Shown[0].Set;
        Assert.NotEmpty(set.Parts);
        Assert.Contains("// sliding caliper: one side counts", set.Text, StringComparison.Ordinal);
        Vehicle car = VehicleFile.Read(set.Text, "put back").Vehicle;
        ControlSummary summary = ControlSummary.Of(car, [0.5, 1.0], car.LoadCases[0].Name)!;
        Assert.Equal(set.Values[(int)TargetKind.PedalForceHalf], summary.LoadCases[0].Rates[0].Point!.PedalForce.Newtons, 1e-9);
        Assert.Equal(set.Values[(int)TargetKind.PedalForceFull], summary.LoadCases[0].Rates[1].Point!.PedalForce.Newtons, 1e-9);
        Assert.Equal(set.Values[(int)TargetKind.PedalForceHalfNoAssist], summary.LoadCases[0].Rates[0].WithoutAssist!.Value.Newtons, 1e-9);
        Assert.Equal(set.Values[(int)TargetKind.PedalTravelFull], summary.LoadCases[0].Rates[1].Travel!.Pad!.Value.Meters, 1e-12);
        Assert.Equal(set.Values[(int)TargetKind.StoredStops], (double)summary.LoadCases[0].EngineOff.Count!.Value);
        Assert.Equal(set.Values[(int)TargetKind.Failures], summary.Verdicts.Min(verdict => verdict.Margin)!.Value, 1e-9);
        BalanceSummary balance = BalanceSummary.Of(car);
        Assert.False(balance.Setting.PresentIsBeyond);
        Assert.Equal(balance.Setting.SafeLimit!.Knee!.Value.Bars, BalanceSummary.Of(set.Vehicle).Setting.SafeLimit!.Knee!.Value.Bars, 1e-9);
    }

    [Fact]
    public void Ranges_of_the_file_say_for_how_many_drawn_cars_a_set_holds()
    {
        string ranged = Car.Replace("\"frontShare\": 0.55, \"centreOfGravityHeight\": \"0.54 m\"",
            "\"frontShare\": 0.55, \"centreOfGravityHeight\": \"0.50 m .. 0.58 m\"", StringComparison.Ordinal)
            .Replace("\"ratio\": 4.1", "\"ratio\": \"3.9 .. 4.3\"", StringComparison.Ordinal);
        (Targets? targets, _) = Targets.Read("""{ "failures": false, "pedalForceFull": "305 N", "pedalForceHalf": "155 N" }""", null);
        (PartsList? parts, IReadOnlyList<Problem> problems) =
            PartsList.Read(new StringReader("part,name,sets\npads,fast,front.brake.friction = 0.40\n"), ranged);
        Assert.Empty(problems);
        Proposal set = new ChoiceSearch(ranged, targets!, parts!).Of(0)!;
        (int meet, int of) = set.Holds()!.Value;
        Assert.Equal(set.Vehicle.Uncertainty!.CarsOf(set.Vehicle).Count, of);
        Assert.InRange(meet, 1, of - 1);
        Assert.Null(new ChoiceSearch(Car, targets!, parts!).Of(0)!.Holds());
    }

    [Fact]
    public void A_part_that_takes_away_what_another_sets_does_not_go_together_with_it()
    {
        (Targets? targets, _) = Targets.Read("{}", null);
        (PartsList? parts, IReadOnlyList<Problem> problems) = PartsList.Read(new StringReader(
            "part,name,sets\nbooster,none,assist.type = none\npump,strong,assist.reliefPressure = 110 bar\n"), Car);
        Assert.Empty(problems);
        var search = new ChoiceSearch(Car, targets!, parts!);
        Assert.Equal(1, search.Run().Impossible);
        Assert.Single(Enumerable.Range(0, 4), index => search.Of(index) is null);
    }

    [Fact]
    public void A_car_that_cannot_be_computed_counts_as_one_whose_parts_do_not_go_together()
    {
        (Targets? targets, _) = Targets.Read("""{ "loadCase": "driver only" }""", null);
        (PartsList? parts, IReadOnlyList<Problem> problems) =
            PartsList.Read(new StringReader("part,name,sets\nballast,other,loadCases[0].name = nobody\n"), Car);
        Assert.Empty(problems);
        var search = new ChoiceSearch(Car, targets!, parts!);
        Assert.Equal(1, search.Run().Impossible);
        Assert.Null(search.Of(1));
    }

    [Property(MaxTest = 4)]
    public void A_search_in_pieces_finds_what_a_search_at_once_finds(int seed)
    {
        (Targets targets, PartsList parts) = Drawn(new Random(seed));
        ChoiceField? pieces = null;
        var search = new ChoiceSearch(Car, targets, parts);
        for (long from = 0; from < search.Count; from += 7)
        {
            pieces = search.Some(from, Math.Min(search.Count, from + 7), pieces);
        }

        var whole = new ChoiceSearch(Car, targets, parts);
        ChoiceResult first = ChoiceResult.Of(search, pieces!, 3), second = ChoiceResult.Of(whole, 3);
        Assert.Equal(second.Sets.Select(set => set.Index), first.Sets.Select(set => set.Index));
        Assert.Equal(second.Met, first.Met);
        Assert.Equal((second.Combinations, second.Impossible, second.Cheap), (first.Combinations, first.Impossible, first.Cheap));
        Assert.Equal(second.EffortFront.Select(set => set.Index), first.EffortFront.Select(set => set.Index));
    }

    [Fact]
    public void When_nothing_fits_the_nearest_miss_says_what_it_lacks()
    {
        (Targets? targets, _) = Targets.Read("""{ "pedalForceFull": "60 N", "pedalForceHalf": "40 N", "lightPedal": "10 N" }""", null);
        (PartsList? parts, _) = PartsList.Read(new StringReader(PartsList.Starter()), Car);
        ChoiceResult result = ChoiceResult.Of(new ChoiceSearch(Car, targets!, parts!), 3);
        Assert.Empty(result.Shown);
        Assert.Equal(0, result.Met[(int)TargetKind.PedalForceFull]);
        Assert.Contains(result.Nearest!.Broken, broken => broken.Target.Kind == TargetKind.PedalForceFull && broken.Lacks > 0);
        Assert.Equal(result.Nearest.Miss, result.Nearest.Broken.Sum(broken => broken.Lacks), 1e-12);
    }

    private static (Targets Targets, PartsList Parts) Drawn(Random random)
    {
        string[] rows = [.. Rows.Where(_ => random.Next(3) == 0)];
        rows = rows.Length == 0 ? [Rows[random.Next(Rows.Length)]] : rows;
        PartsList parts;
        while (true)
        {
            string csv = "part,name,sets,price,mass,rating [bar]\n" + string.Concat(rows.Select(row => row + "\n"));
            (PartsList? read, IReadOnlyList<Problem> problems) = PartsList.Read(new StringReader(csv), Car);
            Assert.True(read is not null, string.Join('\n', problems));
            parts = read!;
            if (parts.Count <= 40)
            {
                break;
            }

            rows = rows[1..];
        }

        string json = FormattableString.Invariant($$"""
            {
              "pedalForceHalf": "{{random.Next(120, 260)}} N", "pedalForceFull": "{{random.Next(270, 600)}} N",
              "pedalForceFullNoAssist": "{{random.Next(900, 2500)}} N", "pedalTravelFull": "{{random.Next(50, 110)}} mm",
              "rearMargin": {{random.NextDouble() * 0.4:0.00}}, "efficiency": {{0.7 + (random.NextDouble() * 0.15):0.00}},
              "failures": {{(random.Next(2) == 0 ? "true" : "false")}}, "storedStops": {{random.Next(0, 8)}},
              "rating": "{{random.Next(130, 220)}} bar"{{(random.Next(4) == 0 ? Use : "")}}
            }
            """);
        (Targets? targets, IReadOnlyList<Problem> wrong) = Targets.Read(json, null);
        Assert.True(targets is not null, string.Join('\n', wrong));
        return (targets!, parts);
    }

    private static IEnumerable<Part[]> Combinations(PartsList parts) => parts.Places.Aggregate(
        (IEnumerable<Part[]>)[[]],
        (sets, place) => [.. sets.SelectMany(set => place.Parts.Select(part => part is null ? set : (Part[])[.. set, part]))]);

    private static double[]? Values(Part[] set, Targets targets)
    {
        string text = set.Aggregate(Car, (file, part) => part.Fitted(file));
        return VehicleFile.TryRead(text).Reading is { } reading
            ? ChosenCar.Answers(reading.Vehicle, targets, ChoiceSearch.RatingOf(set)) : null;
    }

    private static double Miss(Targets targets, double[] values) =>
        targets.All.Sum(target => Math.Max(0, target.Room(values[(int)target.Kind]) is var room && room < 0 ? -room : 0));

    private static double Room(Targets targets, IReadOnlyList<double> values) => targets.All
        .Where(target => ChosenCar.IsCheap(target.Kind) && target.Kind != TargetKind.FrontFirst)
        .Select(target => target.Room(values[(int)target.Kind])).Where(room => !double.IsNaN(room)).Min();

    // No set of the front is beaten, and every set that is not beaten is on it, each pair of numbers once.
    private static void AssertFront(IEnumerable<(double First, double Second)> all, IEnumerable<(double First, double Second)> front)
    {
        (double First, double Second)[] every = [.. all];
        static (double, double) Rounded((double First, double Second) pair) => (Math.Round(pair.First, 7), Math.Round(pair.Second, 7));
        Assert.Equal(
            every.Where(one => !every.Any(other => other.First <= one.First && other.Second <= one.Second && other != one))
                .Select(Rounded).Distinct().Order(),
            front.Select(Rounded).Order());
    }

    private static void AssertSame(double expected, double actual) => Assert.True(
        expected.Equals(actual) || Math.Abs(expected - actual) <= 1e-9 * Math.Max(1, Math.Abs(expected)), $"{expected} against {actual}");
}
