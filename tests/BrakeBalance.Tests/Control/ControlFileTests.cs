using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Control;

/// <summary>Pedal, assist, master cylinder and fluid in the vehicle file, and what is said when they do not fit.</summary>
public sealed class ControlFileTests
{
    private static readonly JsonDocumentOptions Comments = new() { CommentHandling = JsonCommentHandling.Skip };

    private static IReadOnlyList<Problem> Problems(string car, Action<JsonObject> change)
    {
        var json = (JsonObject)JsonNode.Parse(File.ReadAllText(Path.Combine(ControlForceTests.Root(), "data", "vehicles", car + ".json")),
            documentOptions: Comments)!;
        change(json);
        return VehicleFile.TryRead(json.ToJsonString()).Problems;
    }

    private static JsonNode? Parse(string text) => JsonNode.Parse(text);

    [Fact]
    public void The_coupes_control_is_read()
    {
        BrakeControl control = ControlForceTests.Car("coupe-1960s").Control!;
        var booster = Assert.IsType<VacuumBooster>(control.Assist);
        Assert.Equal(10, booster.Supply.Vacuum.InchesOfMercury, 9);
        Assert.Equal(28.575, Assert.IsType<TandemMasterCylinder>(control.MasterCylinder).Bore.Millimeters, 9);
        // Two sliding calipers of one 2.94 in piston, two double-ended 7/8 in wheel cylinders.
        Assert.Equal(2 * Math.PI / 4 * 2.94 * 2.94, control.Circuits!.Value.Front.PistonArea.SquareInches, 9);
        Assert.Equal(4 * Math.PI / 4 * 0.875 * 0.875, control.Circuits.Value.Rear.PistonArea.SquareInches, 9);
        Assert.Null(control.Residual.Front);
        Assert.Equal(10, control.Residual.Rear!.Held.PoundsForcePerSquareInch, 9);
    }

    [Fact]
    public void A_fixed_calipers_pistons_count_on_both_sides()
    {
        BrakeControl control = ControlForceTests.Car("track-coupe").Control!;
        Assert.Equal(2 * 2 * 2 * Math.PI / 4 * 38.1 * 38.1, control.Circuits!.Value.Front.PistonArea.SquareMillimeters, 6);
        Assert.Equal(17.8, Assert.IsType<TwinMasterCylinders>(control.MasterCylinder).FrontBore.Millimeters, 9);
    }

    [Fact]
    public void A_car_may_leave_all_of_it_out()
    {
        IReadOnlyList<Problem> problems = Problems("coupe-1960s", json =>
        {
            foreach (string key in new[] { "pedal", "assist", "masterCylinder", "fluid" })
            {
                json.Remove(key);
            }
        });
        Assert.Empty(problems);
    }

    [Fact]
    public void Missing_assist_is_asked_for_by_name_with_the_way_to_say_none()
    {
        Problem problem = Assert.Single(Problems("coupe-1960s", json => json.Remove("assist")));
        Assert.Equal("assist", problem.Path);
        Assert.Contains("missing", problem.What, StringComparison.Ordinal);
        Assert.Contains("\"none\"", problem.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void Missing_booster_data_are_all_named_at_once()
    {
        IReadOnlyList<Problem> problems = Problems("coupe-1960s", json => json["assist"] = Parse("""{ "type": "hydraulic" }"""));
        Assert.Equal(
            ["assist.boostRatio", "assist.powerPiston", "assist.pumpFlow", "assist.reliefPressure"],
            problems.Select(problem => problem.Path).Order(StringComparer.Ordinal));
        Assert.All(problems, problem => Assert.Contains("missing", problem.What, StringComparison.Ordinal));
    }

    [Fact]
    public void A_precharge_above_the_pumps_relief_pressure_is_refused_with_both()
    {
        Problem problem = Assert.Single(Problems("coupe-1960s", json => json["assist"] = Parse(
            """
            { "type": "hydraulic", "reliefPressure": "95 bar", "pumpFlow": "7 l/min", "powerPiston": "35 mm", "boostRatio": 6,
              "accumulator": { "gasVolume": "80 cm³", "precharge": "120 bar" } }
            """)));
        Assert.Equal("assist.accumulator.precharge", problem.Path);
        Assert.Contains("120 bar", problem.What, StringComparison.Ordinal);
        Assert.Contains("95 bar", problem.What, StringComparison.Ordinal);
        Assert.Contains("below 95 bar", problem.Accepted, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3 in")]
    [InlineData("5 mm")]
    public void An_implausible_bore_is_refused_with_the_range(string bore)
    {
        Problem problem = Assert.Single(Problems("coupe-1960s", json => json["masterCylinder"]!["bore"] = bore));
        Assert.Equal("masterCylinder.bore", problem.Path);
        Assert.Contains("9 mm", problem.Accepted, StringComparison.Ordinal);
        Assert.Contains("51 mm", problem.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void A_push_rod_longer_than_the_depth_is_refused_with_the_danger()
    {
        Problem problem = Assert.Single(Problems("coupe-1960s", json => json["masterCylinder"]!["pushRod"]!["rodProjection"] = "25.1 mm"));
        Assert.Equal("masterCylinder.pushRod.rodProjection", problem.Path);
        Assert.Contains("rod is longer than the depth", problem.What, StringComparison.Ordinal);
        Assert.Contains("below 24 mm", problem.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void A_vacuum_beyond_the_air_at_that_altitude_is_refused()
    {
        Problem problem = Assert.Single(Problems("coupe-1960s", json =>
        {
            json["assist"]!["vacuum"] = "26 inHg";
            json["assist"]!["altitude"] = "3000 m";
        }));
        Assert.Equal("assist.vacuum", problem.Path);
        Assert.Contains("3000 m", problem.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_balance_bar_on_one_side_only_is_refused()
    {
        Problem problem = Assert.Single(
            Problems("track-coupe", json =>
            json["masterCylinder"] = Parse("""{ "type": "tandem", "bore": "19 mm", "stroke": "30 mm" }""")));
        Assert.Equal("masterCylinder.type", problem.Path);
    }

    [Fact]
    public void A_caliper_kind_is_asked_for_with_discs_and_refused_with_drums()
    {
        IReadOnlyList<Problem> problems = Problems("coupe-1960s", json =>
        {
            ((JsonObject)json["fluid"]!["front"]!).Remove("caliper");
            json["fluid"]!["rear"]!["caliper"] = "fixed";
        });
        Assert.Equal(["fluid.front.caliper", "fluid.rear.caliper"], problems.Select(problem => problem.Path));
    }

    [Theory]
    [InlineData("pedal", """{ "freePlay": "4 mm" }""", "pedal")]
    [InlineData("pedal", """
        { "ratio": 4, "geometry": { "pivotToPad": "320 mm", "pivotToPin": "80 mm", "linkLength": "120 mm",
          "rodAxisDepth": "80 mm", "pinAngleAtRest": "-10 °" } }
        """, "pedal")]
    [InlineData("pedal", """
        { "geometry": { "pivotToPad": "320 mm", "pivotToPin": "60 mm", "linkLength": "30 mm",
          "rodAxisDepth": "200 mm", "pinAngleAtRest": "-10 °" } }
        """, "pedal.geometry")]
    public void A_pedal_says_its_ratio_once_and_its_linkage_reaches(string key, string text, string path) =>
        Assert.Equal(path, Assert.Single(Problems("coupe-1960s", json => json[key] = Parse(text))).Path);

    [Fact]
    public void Unknown_fluids_and_layouts_are_refused_with_the_known_ones()
    {
        IReadOnlyList<Problem> problems = Problems("coupe-1960s", json =>
        {
            json["fluid"]!["grade"] = "DOT 9";
            json["masterCylinder"]!["circuits"] = "crosswise";
        });
        Assert.Contains(problems, problem =>
            problem.Path == "fluid.grade" && problem.Accepted.Contains("DOT 5.1", StringComparison.Ordinal));
        Assert.Contains(problems, problem =>
            problem.Path == "masterCylinder.circuits" && problem.Accepted.Contains("diagonal", StringComparison.Ordinal));
    }
}
