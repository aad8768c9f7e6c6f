using System.Text.Json.Nodes;
using BrakeBalance.Brakes;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Vehicles;

public class PlausibilityTests
{
    private static readonly string Coupe = Car("coupe-1960s"), Track = Car("track-coupe"), RearEngined = Car("rear-engined-sports-car");

    private static string Car(string name) => File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", name + ".json"));

    private static IReadOnlyList<Problem> Problems(string text, params (string Path, string Value)[] changes) =>
        VehicleFile.TryRead(text, changes.Select(change => new ValueOverride(change.Path, change.Value))).Problems;

    private static Problem Only(IReadOnlyList<Problem> problems, string path)
    {
        Assert.True(problems.Count > 0 && problems.All(problem => problem.Path == path), string.Join('\n', problems));
        return problems[0];
    }

    [Fact]
    public void The_cars_as_they_are_have_no_problem() =>
        Assert.All((string[])[Coupe, Track, RearEngined], text => Assert.Empty(Problems(text)));

    [Fact]
    public void A_brake_that_does_not_fit_into_its_tyre_is_a_problem()
    {
        Problem pads = Only(Problems(Track, ("front.tyre.loadedRadius", "160 mm"), ("front.brake.padOuterRadius", "300 mm")),
            "front.brake.padOuterRadius");
        Assert.Contains("300 mm does not fit into the tyre", pads.What);
        Assert.Contains("below 160 mm", pads.Accepted);
        Only(Problems(Coupe, ("rear.tyre.loadedRadius", "150 mm"), ("rear.brake.drumRadius", "250 mm")), "rear.brake.drumRadius");
    }

    [Fact]
    public void Free_play_beyond_the_travel_is_a_problem() =>
        Assert.Contains(Problems(Track, ("pedal.freePlay", "40 mm"), ("pedal.travel", "30 mm")), problem =>
            problem.Path.StartsWith("pedal.", StringComparison.Ordinal));

    [Fact]
    public void An_engine_that_drags_harder_than_its_tyres_hold_is_a_problem()
    {
        Problem engine = Only(Problems(RearEngined, ("engineBraking.brakingForce", "10 kN")), "engineBraking.brakingForce");
        Assert.Contains("10000 N is more than an engine drags with", engine.What);
        Assert.Contains("a force up to", engine.Accepted);
    }

    [Theory]
    [InlineData("0.53")]
    [InlineData("0.56")]
    [InlineData("0.62")]
    public void Duo_servo_shoes_so_near_self_locking_that_the_scatter_of_linings_reaches_it_are_a_problem(string friction)
    {
        Problem near = Problems(Coupe, ("rear.brake.friction", friction))[0];
        Assert.StartsWith("rear.brake", near.Path);
        Assert.Contains("lock", near.What);
        Assert.DoesNotContain("Accepted", near.What);
        Assert.Contains("a lower friction", near.Accepted.Replace("a friction below", "a lower friction", StringComparison.Ordinal));
    }

    [Fact]
    public void A_range_with_an_end_that_cannot_be_is_a_problem_at_that_end()
    {
        Problem end = Problems(Coupe, ("rear.brake.friction", "0.30 .. 0.58"))[0];
        Assert.StartsWith("With rear.brake.friction at 0.58:", end.What);
        Assert.Empty(Problems(Coupe, ("rear.brake.friction", "0.28 .. 0.48")));
    }

    [Fact]
    public void Friction_rises_with_a_factor_only_to_where_a_brake_can_still_be_computed()
    {
        Vehicle car = VehicleFile.Read(Coupe, "test").Vehicle;
        var drum = (DrumBrake)car.Brakes.Rear;
        Brake grabbing = car.WithFrictionFactors(1, 3).Brakes.Rear;
        Assert.InRange(grabbing.FrictionCoefficient, drum.FrictionCoefficient, drum.SelfLockingFriction()!.Value);
        Assert.True(double.IsFinite(grabbing.BrakeFactor));
        Assert.Equal(Brake.HighestFriction, car.WithFrictionFactors(9, 1).Brakes.Front.FrictionCoefficient);
        Assert.Equal(0.9 * drum.FrictionCoefficient, car.WithFrictionFactors(1, 0.9).Brakes.Rear.FrictionCoefficient, 12);
    }

    [Fact]
    public void A_bar_whose_share_and_bores_starve_one_axle_is_a_problem() =>
        Assert.Equal("0.8 with these bores gives the rear 0.197 times the front's pressure.", Only(
            Problems(Track, ("hydraulics.split.frontBore", "16.5 mm"), ("hydraulics.split.rearBore", "18.6 mm"),
                ("hydraulics.split.frontForceShare", "0.8")),
            "hydraulics.split.frontForceShare").What);

    [Fact]
    public void Three_thousand_valves_are_refused_by_their_number()
    {
        var car = (JsonObject)JsonNode.Parse(Coupe,
            documentOptions: new() { CommentHandling = System.Text.Json.JsonCommentHandling.Skip, AllowTrailingCommas = true })!;
        car["hydraulics"]!["rearValves"] =
            new JsonArray([.. Enumerable.Range(0, 3000).Select(_ => new JsonObject { ["type"] = "limiting", ["limit"] = "45 bar" })]);
        Problem many = Only(Problems(car.ToJsonString()), "hydraulics.rearValves");
        Assert.Equal("has 3000 elements.", many.What);
        Assert.Equal("at most 4", many.Accepted);
    }

    [Theory]
    [InlineData("0.051 m")]
    [InlineData("0.05100000000000001 m")]
    public void The_limit_itself_written_in_another_unit_is_accepted(string bore) =>
        Assert.Empty(Problems(Coupe, ("masterCylinder.bore", bore)));

    [Theory]
    [InlineData("NaN bar")]
    [InlineData("1e308 bar")]
    [InlineData("1e999 bar")]
    [InlineData("４５ bar")]
    public void A_text_that_is_no_finite_number_in_plain_digits_is_no_quantity(string knee) =>
        Assert.Equal("hydraulics.rearValves[0].knee", Problems(Coupe, ("hydraulics.rearValves[0].knee", knee))[0].Path);

    [Fact]
    public void Bands_answer_when_no_front_pressure_is_left_for_both_axles_to_lock_together()
    {
        Vehicle car = VehicleFile.Read(RearEngined, "test", new ValueOverride("engineBraking.drivenAxle", "front"),
            new ValueOverride("engineBraking.brakingForce", "2.2 kN")).Vehicle;
        foreach (BandedAnswer answer in MeasuringOrder.Bands(car, 0.1, samples: 8))
        {
            Assert.True(double.IsFinite(answer.Band.Estimate) && double.IsFinite(answer.Band.Low)
                && double.IsFinite(answer.Band.High), answer.Key);
        }
    }
}
