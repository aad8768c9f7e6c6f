using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Measurements;

/// <summary>The questions that people ask most: each has an answer for a car, or names the number that is lacking.</summary>
public class QuestionDeskTests
{
    public static TheoryData<string> Cars => new(
        "1960s coupe", "track coupe", "small sports car", "rear-engined car", "pickup",
        "coupe-1960s.json", "track-coupe.json", "rear-engined-sports-car.json", "big-cam-saloon.json");

    [Theory]
    [MemberData(nameof(Cars))]
    public void Every_question_is_answered_or_names_what_is_lacking(string car)
    {
        IReadOnlyList<QuestionAnswer> answers = QuestionDesk.Answer(Read(car));
        Assert.Equal(Enumerable.Range(1, QuestionDesk.Count), answers.Select(a => a.Number));
        Assert.All(answers, a =>
        {
            Assert.True(a.Answer is null ? a.Lacking.Count > 0 : a.Answer.Length > 30 && a.Lacking.Count == 0, $"{a.Number}");
            Assert.True(a.Answer is not null || a.Vague.Count == 0, $"{a.Number}");
            Assert.DoesNotContain("NaN", a.Answer ?? "");
            Assert.DoesNotContain("∞", a.Answer ?? "");
        });
    }

    [Fact]
    public void A_full_file_answers_all_but_what_belongs_to_another_booster()
    {
        int[] open = [.. QuestionDesk.Answer(Read("coupe-1960s.json")).Where(a => a.Answer is null).Select(a => a.Number)];
        // 3 asks for another pump's numbers, which no entry gives. 6 was open too, but the file says that the booster runs on vacuum:
        // it takes no oil from the steering, and that answers the question.
        Assert.Equal([3], open);
    }

    [Fact]
    public void A_car_known_by_its_class_is_answered_with_what_is_vague_named()
    {
        QuestionAnswer rear = QuestionDesk.Answer(Read("1960s coupe")).Single(a => a.Number == 15);
        Assert.NotNull(rear.Answer);
        Assert.Contains("rear.brake.friction", rear.Vague);
        Assert.Contains(QuestionDesk.Answer(Read("pickup")).Single(a => a.Number == 2).Lacking, text => text.Contains("tape on the pedal"));
    }

    [Theory]
    [InlineData("2.4")]
    [InlineData("3.8")]
    [InlineData("4.1")]
    [InlineData("5.2")]
    public void What_a_lower_pedal_ratio_costs_is_told_of_one_that_is_lower(string ratio)
    {
        VehicleReading file = VehicleFile.Read(
            StarterFile.Text("vacuum", "disc", "adjustable"), "starter", new ValueOverride("pedal.ratio", ratio));
        string answer = QuestionDesk.Answer(file).Single(a => a.Number == 4).Answer!.Replace('\u00a0', ' ');
        double own = double.Parse(ratio, CultureInfo.InvariantCulture);
        double[] told = [.. answer.Split(" at ")[1..].Select(of => double.Parse(of.Split(" : 1")[0], CultureInfo.InvariantCulture))];
        Assert.Contains(own, told);
        Assert.Contains(told, other => other < own - 0.25);
        Assert.Contains(told, other => other > own + 0.25);
    }

    [Theory]
    [InlineData(1.15)]
    [InlineData(1.3)]
    public void Where_the_rear_first_uses_more_than_the_front_is_one_rate_and_nothing_is_said_of_those_beyond_it(double rear)
    {
        VehicleReading file = Read("coupe-1960s.json");
        Vehicle car = file.Vehicle.WithFrictionFactors(1, rear);
        string answer = QuestionDesk.Answer(file with { Vehicle = car }).Single(a => a.Number == 21).Answer!.Replace('\u00a0', ' ');
        double rate = double.Parse(
            answer.Split("than the front first at a deceleration of ")[1].Split(" g.")[0], CultureInfo.InvariantCulture);
        var model = new BalanceModel(car, car.LoadCases[0]);
        bool Leads(double at) => model.AtRate(at)!.AdhesionUtilisation is var used && used.Rear > used.Front;
        Assert.True(Leads(rate + 0.006));
        Assert.True(rate < 0.16 || !Leads(rate - 0.006));
    }

    [Fact]
    public void A_valve_that_follows_the_load_passes_what_the_gauges_show_on_a_car_that_stands()
    {
        VehicleReading file = LoadSensing();
        string Answer(int number) => QuestionDesk.Answer(file).Single(a => a.Number == number).Answer!.Replace('\u00a0', ' ');
        Force load = new BalanceModel(file.Vehicle, file.Vehicle.LoadCases[0]).StaticAxleLoads.Rear;
        string[] shown = Answer(14).Split(' ');
        Assert.EndsWith("Engine running, the car standing.", Answer(14));
        double front = double.Parse(shown[2], CultureInfo.InvariantCulture), rear = double.Parse(shown[5], CultureInfo.InvariantCulture);
        Assert.Equal(file.Vehicle.Hydraulics.LinePressures(Pressure.FromBars(front), load).Rear.Bars, rear, 0.5);
        Assert.Contains(", the car standing. An adjustable one before it acts as well", Answer(17));
        Assert.EndsWith("No booster is fitted.", QuestionDesk.Answer(VehicleFile.Read(StarterFile.Text(), "starter"))
            .Single(a => a.Number == 14).Answer!);
    }

    [Fact]
    public void A_car_that_needs_a_valve_besides_its_own_is_told_so_wherever_the_order_is_asked()
    {
        VehicleReading file = LoadSensing();
        // Linings that grab by nearly twice as much let it lock its rear first somewhere.
        Vehicle car = file.Vehicle with
        {
            Conditions = file.Vehicle.Conditions with { BrakeStates = [new BrakeState { Name = "grabbing", Rear = 1.9 }] },
        };
        var setting = Setting.Of(car);
        Assert.Equal(SettingVariable.AddedKnee, setting.Variable);
        Assert.NotNull(setting.Recommended);
        string Answer(int number) => QuestionDesk.Answer(file with { Vehicle = car }).Single(a => a.Number == number).Answer!;
        Assert.Contains("AS BUILT THE REAR CAN LOCK FIRST", SettingWords.InSight(setting, UnitSystem.Si)[1].Text);
        Assert.All(new[] { 15, 21 }, number => Assert.Contains("As it is built the rear can lock first", Answer(number)));
        Assert.EndsWith("the recommended setting counts both.", Answer(17));
        Assert.DoesNotContain("As it is built", QuestionDesk.Answer(Read("coupe-1960s.json")).Single(a => a.Number == 21).Answer!);
    }

    private static VehicleReading LoadSensing() => VehicleFile.Read(StarterFile.Text("vacuum", "disc", "load-sensing"), "starter");

    [Fact]
    public void The_bar_question_of_a_car_that_lifts_its_rear_says_so_instead_of_dividing_by_nothing()
    {
        VehicleReading track = Read("track-coupe.json");
        VehicleReading shortTall = track with
        {
            Vehicle = track.Vehicle with
            {
                Wheelbase = track.Vehicle.Wheelbase * 0.6,
                LoadCases = [.. track.Vehicle.LoadCases.Select(Forward)],
            },
        };
        string answer = QuestionDesk.Answer(shortTall).Single(a => a.Number == 11).Answer!;
        Assert.DoesNotContain("bore ratio of", answer);
        Assert.Contains("off the road", answer);

        static LoadCase Forward(LoadCase load) => load with
        {
            FrontAxleToCentreOfGravity = load.FrontAxleToCentreOfGravity * 0.4,
            CentreOfGravityHeight = load.CentreOfGravityHeight * 1.4,
        };
    }

    [Fact]
    public void The_bar_question_gives_the_bigger_bore_to_the_axle_that_needs_less_pressure()
    {
        string answer = QuestionDesk.Answer(Read("track-coupe.json")).Single(a => a.Number == 11).Answer!;
        double front = double.Parse(answer.Split("needs ")[1].Split('\u00a0')[0], CultureInfo.InvariantCulture);
        double rear = double.Parse(answer.Split("front and ")[1].Split('\u00a0')[0], CultureInfo.InvariantCulture);
        Assert.Contains($"bigger bore; for this car that is a bore {(rear < front ? "at the rear" : "in front")}", answer);
        Assert.EndsWith("The car has a bore at the rear 1.16 times the front's, with the bar at 65.0 % front.",
            answer.Replace('\u00a0', ' '));
    }

    [Fact]
    public void Equal_pressures_ask_for_equal_bores()
    {
        VehicleReading track = Read("track-coupe.json");
        string[] words = Answer(1).Replace('\u00a0', ' ').Split(' ');
        int front = Array.IndexOf(words, "needs") + 1, rear = Array.IndexOf(words, "and") + 1;
        double ratio = double.Parse(words[rear], CultureInfo.InvariantCulture) / double.Parse(words[front], CultureInfo.InvariantCulture);
        Assert.Contains("bigger bore; for this car that is two equal bores when the bar stands centred", Answer(ratio));

        // Pads of another friction at the rear ask for another pressure there.
        string Answer(double times)
        {
            var disc = (DiscBrake)track.Vehicle.Brakes.Rear;
            Brake other = disc with { FrictionCoefficient = disc.FrictionCoefficient * times };
            return QuestionDesk.Answer(track with { Vehicle = track.Vehicle with { Brakes = new(track.Vehicle.Brakes.Front, other) } })
                .Single(a => a.Number == 11).Answer!;
        }
    }

    [Fact]
    public void A_car_beyond_its_limit_is_not_told_that_the_front_locks_first_and_no_more()
    {
        VehicleReading track = Read("track-coupe.json");
        Vehicle slicks = track.Vehicle with { Conditions = track.Vehicle.Conditions with { HighestAdhesion = 1.5 } };
        string Answer(Vehicle car, int number) =>
            QuestionDesk.Answer(track with { Vehicle = car }).Single(a => a.Number == number).Answer!;
        Assert.DoesNotContain("safe limit", Answer(track.Vehicle, 21));
        // Slicks are asked on the best road of their conditions, and it is named.
        double there = new BalanceModel(slicks, slicks.LoadCases[0]).FirstLockUp(1.5)!.At.BrakingRate;
        Assert.Contains($"locks first at {there.ToString("0.00", CultureInfo.InvariantCulture)} g at an adhesion of 1.5 and",
            Answer(slicks, 21));
        Assert.All(new[] { 15, 21, 24, 25, 27 }, number => Assert.DoesNotContain("on dry", Answer(slicks, number)));
        Assert.Contains("The present setting lies beyond the safe limit", Answer(slicks, 21));
        Vehicle grabbing = track.Vehicle with
        {
            Conditions = track.Vehicle.Conditions with { BrakeStates = [new BrakeState { Name = "grabbing", Rear = 1.6 }] },
        };
        Assert.Contains("In other conditions the rear can: the present setting lies beyond the safe limit", Answer(grabbing, 21));
        Assert.Contains("an adhesion of 1.5", Answer(slicks, 23));
        Assert.Contains("an adhesion of 1.1", Answer(track.Vehicle, 23));
    }

    [Fact]
    public void Presses_left_are_counted_under_a_stated_condition_or_the_chambers_volume_is_asked_for()
    {
        VehicleReading coupe = Read("coupe-1960s.json");
        string Stops(Vehicle car) => QuestionDesk.Answer(coupe with { Vehicle = car }).Single(a => a.Number == 7).Answer!;
        Assert.StartsWith("1 press takes no more than 310\u00a0N at a deceleration of 0.5 g; with the store",
            Stops(coupe.Vehicle with { LoadCases = [coupe.Vehicle.LoadCases[0]] }));
        Assert.StartsWith("No press stays within 310\u00a0N at a deceleration of 0.5 g in ", Stops(coupe.Vehicle));
        var booster = (BrakeBalance.Assist.VacuumBooster)coupe.Vehicle.Control!.Assist;
        Vehicle unknown = coupe.Vehicle with
        {
            Control = coupe.Vehicle.Control with { Assist = booster with { VacuumChamberVolume = UnitsNet.Volume.Zero } },
        };
        QuestionAnswer open = QuestionDesk.Answer(coupe with { Vehicle = unknown }).Single(a => a.Number == 7);
        Assert.Null(open.Answer);
        Assert.Contains(open.Lacking, text => text.Contains("chamber", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void No_answer_has_a_unit_of_the_other_system_and_none_names_a_notebook_or_a_command(string car)
    {
        (UnitSystem Units, string Foreign)[] systems =
        [
            (UnitSystem.Si, "psi|lbf|lbs?|inHg|in|ft|mph|°F|hp|gal/min|US gal/min"),
            (UnitSystem.Us, "bar|k?Pa|k?N|mm|cm³|m|km/h|°C|kg|kW|l/min"),
        ];
        foreach ((UnitSystem units, string foreign) in systems)
        {
            foreach (QuestionAnswer answer in QuestionDesk.Answer(Read(car), units))
            {
                string words = string.Join(' ', [answer.Question, answer.Answer ?? "", .. answer.Lacking]);
                Match leak = Regex.Match(words, $@"\d[\s\u00a0]({foreign})(?![\w³/·])");
                Assert.True(!leak.Success, $"{answer.Number} in {units}: \"{leak.Value}\" in {words}");
                Assert.DoesNotMatch("(?i)notebook|\\bcommand|braking rate|grip|leg work", words);
            }
        }
    }

    [Fact]
    public void Answers_do_not_depend_on_the_culture()
    {
        string[] All() => [.. QuestionDesk.Answer(Read("big-cam-saloon.json")).Select(a => a.Answer ?? string.Join(';', a.Lacking))];
        string[] invariant = All();
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(invariant, All());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    // Greatest assist 90 bar × π/4 (34 mm)² = 8171 N, less 140 N of spring: 8031 N. Run-out at (8031 − 150 + 4.2 × 40)/(4.2 − 1) =
    // 2515 N of input, 10 546 N of output; less 100 N of the cylinder's spring over π/4 (26.99 mm)² = 182.6 bar, beyond the 140 bar of
    // the file.
    [Fact]
    public void A_booster_that_runs_out_beyond_the_highest_pressure_is_no_number_that_lacks()
    {
        IReadOnlyList<QuestionAnswer> answers = QuestionDesk.Answer(Read("big-cam-saloon.json"));
        Assert.Contains("would run out only at 182.5\u00a0bar in the front line, beyond the 140\u00a0bar", answers[2].Answer);
        Assert.Contains("adds 8170\u00a0N", answers[7].Answer, StringComparison.Ordinal);
        Assert.EndsWith("big enough for a firm stop.", answers[7].Answer, StringComparison.Ordinal);
        Assert.Contains("beyond the 140\u00a0bar", answers[13].Answer, StringComparison.Ordinal);
    }

    [Fact]
    public void A_small_booster_is_called_small_by_the_deceleration_at_which_it_runs_out()
    {
        VehicleReading coupe = Read("coupe-1960s.json");
        double end = new ControlForce(new BalanceModel(coupe.Vehicle, coupe.Vehicle.LoadCases[^1])).RunOut()!.Balance.BrakingRate;
        Assert.True(end < 0.6);
        string answer = QuestionDesk.Answer(coupe)[7].Answer!;
        Assert.Contains(end.ToString("0.00", CultureInfo.InvariantCulture) + " g", answer, StringComparison.Ordinal);
        Assert.Contains("too small for the car", answer, StringComparison.Ordinal);
    }

    /// <summary>Help that is enough for the driver alone may be too little for the load.</summary>
    [Fact]
    public void Whether_the_help_is_enough_is_answered_for_the_heaviest_load_and_says_so()
    {
        VehicleReading coupe = Read("coupe-1960s.json");
        LoadCase heaviest = coupe.Vehicle.LoadCases[^1];
        var foot = new ControlForce(new BalanceModel(coupe.Vehicle, heaviest));
        var bare = new ControlForce(foot.Model, foot.Control with { Assist = foot.Control.Assist.WithoutEnergy() });
        Assert.NotEqual(heaviest, coupe.Vehicle.LoadCases[0]);
        IReadOnlyList<QuestionAnswer> answers = QuestionDesk.Answer(coupe);
        foreach (int place in new[] { 1, 6, 7 })
        {
            Assert.Contains($" g in {LoadCase.Listed(heaviest.Name)}", answers[place].Answer, StringComparison.Ordinal);
        }

        string Push(double rate) => Measure.ControlForce.Text(bare.AtRate(rate)!.PedalForce, UnitSystem.Si);
        Assert.Contains(Push(0.6), answers[1].Answer, StringComparison.Ordinal);
        Assert.Contains(Push(0.5), answers[6].Answer, StringComparison.Ordinal);
        VehicleReading alone = coupe with { Vehicle = coupe.Vehicle with { LoadCases = [coupe.Vehicle.LoadCases[0]] } };
        string named = $" g in {LoadCase.Listed(alone.Vehicle.LoadCases[0].Name)}";
        Assert.All(QuestionDesk.Answer(alone).Take(8), one => Assert.DoesNotContain(named, one.Answer ?? "", StringComparison.Ordinal));
    }

    [Fact]
    public void A_higher_knee_for_the_wet_is_told_by_the_recommended_setting()
    {
        VehicleReading coupe = Read("coupe-1960s.json");
        Pressure best = Setting.Of(coupe.Vehicle).Recommended!.Knee!.Value;
        string At(Pressure knee) =>
            QuestionDesk.Answer(coupe with { Vehicle = coupe.Vehicle.WithRearKnee(knee) }).Single(a => a.Number == 25).Answer!;
        Assert.Matches(@"up to the recommended setting, \S+ bar, the front locks first in the dry too", At(best * 0.5));
        Assert.Contains("but no higher one is recommended", At(best), StringComparison.Ordinal);
    }

    [Fact]
    public void The_recommended_setting_is_one_number_in_every_answer()
    {
        string[] told = [.. Enumerable.Range(0, 8).Select(i =>
        {
            VehicleReading car = VehicleFile.Read(StarterFile.Text("none", "disc", "adjustable"), "starter",
                new ValueOverride("hydraulics.rearValves[0].knee", "120 psi"),
                new ValueOverride("hydraulics.rearValves[0].adjuster.kneePerTurn",
                    string.Create(CultureInfo.InvariantCulture, $"{60 + 1.3 * i:0.0} psi")));
            string best = SettingWords.Number(Setting.Of(car.Vehicle).Recommended!, UnitSystem.Us);
            string answer = QuestionDesk.Answer(car, UnitSystem.Us).Single(a => a.Number == 25).Answer!.Replace('\u00a0', ' ');
            return answer.Contains("recommended setting", StringComparison.Ordinal)
                ? answer.Contains($"setting, {best},", StringComparison.Ordinal) ? "same" : $"{best}: {answer}" : "none";
        })];
        Assert.Contains("same", told);
        Assert.All(told, one => Assert.True(one is "same" or "none", one));
    }

    [Fact]
    public void The_number_of_bores_that_fit_has_one_band_over_all_cars_of_the_ranges()
    {
        VehicleReading ranged = VehicleFile.Read(
            File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "coupe-1960s.json")), "coupe",
            new ValueOverride("front.brake.friction", "0.30 .. 0.45"));
        string answer = QuestionDesk.Answer(ranged).Single(a => a.Number == 9).Answer!;
        Assert.Matches(@" \d+ \(\d+–\d+\) of 49 pairs", answer);
        Assert.DoesNotMatch(@"can also be:.* \d+ \S*\s*of 49 pairs", answer);
        Assert.Contains("can also be: A bore of ", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("They are:", answer, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pump_fed_booster_without_its_accumulators_numbers_asks_for_them()
    {
        VehicleReading saloon = Read("big-cam-saloon.json");
        var booster = (HydraulicBooster)saloon.Vehicle.Control!.Assist;
        Vehicle open = saloon.Vehicle with { Control = saloon.Vehicle.Control with { Assist = booster with { Accumulator = null } } };
        QuestionAnswer answer = QuestionDesk.Answer(saloon with { Vehicle = open })[6];
        Assert.Null(answer.Answer);
        Assert.StartsWith("assist.accumulator", Assert.Single(answer.Lacking), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("coupe-1960s.json")]
    [InlineData("big-cam-saloon.json")]
    [InlineData("track-coupe.json")]
    [InlineData("rear-engined-sports-car.json")]
    public void The_bores_that_are_listed_are_the_pairs_that_fit_and_no_others(string car)
    {
        VehicleReading reading = Read(car);
        IReadOnlyList<ControlChoiceResult> choices = ControlSummary.Of(reading.Vehicle)!.Choices;
        string answer = QuestionDesk.Answer(reading)[8].Answer!;
        (string, string)[] fits = [.. choices.Where(c => c.Fits).Select(c => (Inch(c.Bore.Inches), Ratio(c.PedalRatio))).Order()];
        Assert.Contains(fits.Length == 0 ? $"None of the {choices.Count} pairs" : $"{fits.Length} of {choices.Count} pairs", answer);
        List<(string, string)> listed = [];
        string inches = QuestionDesk.Answer(reading, UnitSystem.Us)[8].Answer!;
        foreach (Match bore in Regex.Matches(inches, @"([\d.]+)\u00a0in (?:goes )?with (?:the )?(?:pedal ratios? )?(\d[^;]+?)(;|\.$)"))
        {
            foreach (string[] run in bore.Groups[2].Value.Split(" and ").Select(run => run.Split(" to ")))
            {
                double from = Number(run[0]), to = Number(run[^1]);
                for (double ratio = from; ratio < to + 0.01; ratio += 0.5)
                {
                    listed.Add((Inch(Number(bore.Groups[1].Value)), Ratio(ratio)));
                }
            }
        }

        Assert.Equal(fits, listed.Order());
        static string Inch(double inches) => Math.Round(16 * inches).ToString(CultureInfo.InvariantCulture);
        static string Ratio(double ratio) => ratio.ToString("0.0", CultureInfo.InvariantCulture);
        static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
    }

    // Common practice: 20 to 70 lbf (89 to 311 N) for 0.8 g.
    [Theory]
    [InlineData(2.5, "That is hard, not touchy")]
    [InlineData(5, "That is neither touchy nor hard")]
    [InlineData(15, "That is touchy")]
    public void The_pedal_is_called_touchy_by_its_force_alone(double boost, string verdict)
    {
        VehicleReading saloon = Read("big-cam-saloon.json");
        var booster = (HydraulicBooster)saloon.Vehicle.Control!.Assist;
        BrakeControl control = saloon.Vehicle.Control with { Assist = booster with { BoostRatio = boost } };
        Vehicle car = saloon.Vehicle with { Control = control };
        double pounds = new ControlForce(new BalanceModel(car, car.LoadCases[0])).AtRate(0.8)!.PedalForce.PoundsForce;
        Assert.Equal(
            pounds < 20 ? "That is touchy" : pounds > 70 ? "That is hard, not touchy" : "That is neither touchy nor hard", verdict);
        Assert.Contains(verdict, QuestionDesk.Answer(saloon with { Vehicle = car })[4].Answer, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_without_booster_and_valve_is_told_that_it_has_none_and_lacks_only_what_is_not_in_its_file()
    {
        IReadOnlyList<QuestionAnswer> answers = QuestionDesk.Answer(Read("track-coupe.json"));
        Assert.Equal([13], answers.Where(a => a.Answer is null).Select(a => a.Number));
        Assert.All((int[])[1, 3, 8], number => Assert.StartsWith("No booster is fitted", answers[number - 1].Answer));
        Assert.All((int[])[16, 20], number => Assert.StartsWith("No valve is fitted in the rear line", answers[number - 1].Answer));
        Assert.DoesNotContain("boost", answers[4].Answer, StringComparison.Ordinal);
        Assert.DoesNotContain("the valve can", answers[23].Answer, StringComparison.Ordinal);

    }

    [Fact]
    public void A_bars_turn_is_told_by_the_pressure_ratio_of_its_two_cylinders()
    {
        VehicleReading track = Read("track-coupe.json");
        var bar = new BalanceBarSplit
        {
            FrontBore = Length.FromMillimeters(17.8),
            RearBore = Length.FromMillimeters(20.6),
            FrontForceShare = 0.55,
        };
        Vehicle car = track.Vehicle with { Hydraulics = track.Vehicle.Hydraulics with { Split = bar } };

        // p_r/p_f = (1 − φ)/φ (d_f/d_r)² = 0.45/0.55 × (17.8/20.6)² = 0.61, and 0.47/0.53 × (17.8/20.6)² = 0.66.
        Assert.Contains(
            "at 55 % front the rear cylinder makes 0.61 of the front's pressure, at 53 % 0.66",
            QuestionDesk.Answer(track with { Vehicle = car })[19].Answer);
    }

    [Fact]
    public void What_makes_the_brakes_drag_is_data_and_is_told_without_a_push_rods_readings()
    {
        VehicleReading track = Read("track-coupe.json");
        var valve = new ResidualPressureValve { Held = Pressure.FromPoundsForcePerSquareInch(10) };
        Vehicle car = track.Vehicle with { Control = track.Vehicle.Control! with { Residual = new(null, valve) } };
        var cause = Assert.IsType<DragCause.ResidualPressure>(Assert.Single(DragCause.Of(car)));
        Assert.Equal(Axle.Rear, cause.Axle);
        Assert.True(cause.Drags);
        Assert.Empty(DragCause.Of(track.Vehicle));

        // 10 psi is 0.69 bar, above the 0.5 bar (7 psi) at which these discs begin.
        string answer = QuestionDesk.Answer(track with { Vehicle = car }, UnitSystem.Us)[12].Answer!;
        Assert.Contains("The rear residual valve keeps 10\u00a0psi, more than the 7\u00a0psi", answer, StringComparison.Ordinal);
    }

    // 1 bar × π/4 (34 mm)² = 90.8 N pushes with the pedal released, less 140 N of the booster's spring: nothing arrives. 4 bar leave
    // 363 − 140 = 223 N on the rod, 123 N beyond the 100 N of the cylinder's spring.
    [Theory]
    [InlineData(1, null)]
    [InlineData(4, "leaves 120\u00a0N on the master cylinder")]
    public void Back_pressure_drags_when_no_spring_holds_it(double bars, string? words)
    {
        VehicleReading saloon = Read("big-cam-saloon.json");
        var booster = (HydraulicBooster)saloon.Vehicle.Control!.Assist;
        BrakeControl control = saloon.Vehicle.Control with { Assist = booster with { ReturnBackPressure = Pressure.FromBars(bars) } };
        Vehicle car = saloon.Vehicle with { Control = control };
        Assert.Equal(words is not null, DragCause.Of(car).Any(cause => cause.Drags));
        Assert.Contains(words ?? "Push rod: Gap", QuestionDesk.Answer(saloon with { Vehicle = car })[12].Answer, StringComparison.Ordinal);
    }

    // DOT 4 boils at 230 °C dry and 155 °C wet at least (49 CFR 571.116 S5.1.1, S5.1.2).
    [Fact]
    public void The_soft_pedal_is_answered_by_the_temperature_of_the_fluid_and_its_grade()
    {
        string answer = QuestionDesk.Answer(Read("big-cam-saloon.json"))[25].Answer!;
        Assert.Contains("DOT 4 boils at 230\u00a0°C when fresh and at 155\u00a0°C", answer, StringComparison.Ordinal);
        double hottest = double.Parse(Regex.Match(answer, @"hottest at (\d+)").Groups[1].Value, CultureInfo.InvariantCulture);
        Assert.Equal(hottest >= 155, Regex.IsMatch(answer, @"old fluid boils in stop \d+"));
        Assert.Equal(hottest < 230, answer.Contains("fresh fluid not", StringComparison.Ordinal));
        Assert.Contains(QuestionDesk.Answer(Read("pickup"))[25].Lacking, text => text.StartsWith("fluid.grade", StringComparison.Ordinal));
    }

    [Fact]
    public void The_damp_stop_is_answered_with_the_grabbing_of_the_files_conditions()
    {
        VehicleReading coupe = Read("coupe-1960s.json");
        Vehicle car = coupe.Vehicle;
        string answer = QuestionDesk.Answer(coupe)[26].Answer!;
        LockUp damp = new BalanceModel(car.WithFrictionFactors(1, 1.08), car.LoadCases[0]).FirstLockUp(Conditions.WetAdhesion)!;
        Assert.StartsWith("With 8 % more friction at the rear (grabbing at the rear)", answer, StringComparison.Ordinal);
        string at = damp.At.BrakingRate.ToString("0.00", CultureInfo.InvariantCulture);
        Assert.Contains($"{(damp.First == Axle.Rear ? "REAR" : "front")} locks first at {at} g on wet road", answer);
    }

    private static VehicleReading Read(string car)
    {
        if (!car.EndsWith(".json", StringComparison.Ordinal))
        {
            return VehicleFile.Read($$"""{ "name": "x", "carClass": "{{car}}" }""", "test");
        }

        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Notebooks.sln")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return VehicleFile.Load(Path.Combine(folder, "data/vehicles", car));
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void Race_pads_in_front_call_for_a_new_limit_and_never_say_that_the_setting_is_free_to_rise(string car)
    {
        string? answer = QuestionDesk.Answer(Read(car)).Single(a => a.Number == 24).Answer;
        Assert.DoesNotContain("can be screwed in", answer ?? "");
        Assert.DoesNotContain("can go to the rear", answer ?? "");
        Assert.True(answer is null || answer.Contains("safe limit") || !answer.Contains("is safe"), answer);
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void A_setting_beyond_its_limit_comes_before_the_wet(string name)
    {
        foreach (double knee in new[] { 3.0, 90 })
        {
            VehicleReading file = Read(name);
            if (file.Vehicle.Hydraulics.RearProportioningValve is null)
            {
                return;
            }

            Vehicle car = file.Vehicle.WithRearKnee(Pressure.FromBars(knee));
            string? answer = QuestionDesk.Answer(file with { Vehicle = car }).Single(a => a.Number == 25).Answer;
            Assert.Equal(Setting.Of(car).PresentIsBeyond, answer?.Contains("beyond the safe limit", StringComparison.Ordinal) == true);
        }
    }
}
