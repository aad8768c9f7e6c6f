using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Tests.Measurements;

/// <summary>The twenty-five questions that people ask most: each has an answer for a car, or names the number that is lacking.</summary>
public class QuestionDeskTests
{
    public static TheoryData<string> Cars => new(
        "1960s coupe", "track coupe", "small sports car", "rear-engined car", "pickup", "coupe-1960s.json", "track-coupe.json", "rear-engined-sports-car.json", "big-cam-saloon.json");

    [Theory]
    [MemberData(nameof(Cars))]
    public void Every_question_is_answered_or_names_what_is_lacking(string car)
    {
        IReadOnlyList<QuestionAnswer> answers = QuestionDesk.Answer(Read(car));
        Assert.Equal(Enumerable.Range(1, 25), answers.Select(a => a.Number));
        Assert.All(answers, a =>
        {
            Assert.True(a.Answer is null ? a.Lacking.Count > 0 : a.Answer.Length > 30 && a.Lacking.Count == 0, $"{a.Number}");
            Assert.DoesNotContain("NaN", a.Answer ?? "");
            Assert.DoesNotContain("∞", a.Answer ?? "");
            Assert.NotEmpty(a.More);
        });
    }

    [Fact]
    public void A_full_file_answers_all_but_what_belongs_to_another_booster()
    {
        int[] open = [.. QuestionDesk.Answer(Read("coupe-1960s.json")).Where(a => a.Answer is null).Select(a => a.Number)];
        Assert.Equal([3, 6], open);
    }

    [Fact]
    public void A_car_known_by_its_class_is_answered_with_what_is_vague_named()
    {
        QuestionAnswer rear = QuestionDesk.Answer(Read("1960s coupe")).Single(a => a.Number == 15);
        Assert.NotNull(rear.Answer);
        Assert.Contains("rear.brake.friction", rear.Vague);
        Assert.Contains(QuestionDesk.Answer(Read("pickup")).Single(a => a.Number == 2).Lacking, text => text.Contains("tape on the pedal"));
    }

    [Fact]
    public void The_bar_question_of_a_car_that_lifts_its_rear_says_so_instead_of_dividing_by_nothing()
    {
        VehicleReading track = Read("track-coupe.json");
        VehicleReading shortTall = track with
        {
            Vehicle = track.Vehicle with { Wheelbase = track.Vehicle.Wheelbase * 0.6, LoadCases = [.. track.Vehicle.LoadCases.Select(Forward)] },
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
        double front = double.Parse(answer.Split("needs ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        double rear = double.Parse(answer.Split("front and ")[1].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Contains($"bigger bore: the {(rear < front ? "rear" : "front")}", answer);
    }

    [Fact]
    public void Presses_left_are_counted_under_a_stated_condition_or_the_chambers_volume_is_asked_for()
    {
        VehicleReading coupe = Read("coupe-1960s.json");
        string answer = QuestionDesk.Answer(coupe).Single(a => a.Number == 7).Answer!;
        Assert.StartsWith("1 press in a row at a braking rate of 0.5 take no more than 70 lbf", answer);
        var booster = (BrakeBalance.Assist.VacuumBooster)coupe.Vehicle.Control!.Assist;
        Vehicle unknown = coupe.Vehicle with
        {
            Control = coupe.Vehicle.Control with { Assist = booster with { VacuumChamberVolume = UnitsNet.Volume.Zero } },
        };
        QuestionAnswer open = QuestionDesk.Answer(coupe with { Vehicle = unknown }).Single(a => a.Number == 7);
        Assert.Null(open.Answer);
        Assert.Contains(open.Lacking, text => text.Contains("chamber", StringComparison.Ordinal));
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
}
