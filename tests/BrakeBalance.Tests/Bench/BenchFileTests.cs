using System.Text.Json.Nodes;
using BrakeBalance.Bench;
using BrakeBalance.Bench.Files;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles.Files;
using Json.Schema;
using UnitsNet;

namespace BrakeBalance.Tests.Bench;

/// <summary>Bench files: the example, what is refused and how, the change table.</summary>
public sealed class BenchFileTests
{
    private static readonly string Folder = Path.Combine(Repository(), "data", "bench");

    private static readonly string Example = Path.Combine(Folder, "booster-swap.json");

    private static string Repository()
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Notebooks.sln")))
        {
            folder = Path.GetDirectoryName(folder) ?? throw new DirectoryNotFoundException("No Notebooks.sln above the tests.");
        }

        return folder;
    }

    private static IReadOnlyList<string> Refused(params ValueOverride[] changes) =>
        [.. Assert.Throws<BenchFileException>(() => BenchFile.Load(Example, changes)).Problems.Select(problem => problem.ToString())];

    private static IReadOnlyList<string> RefusedText(string text) =>
        [.. Assert.Throws<BenchFileException>(() =>
            BenchFile.Read(text, "bench.json", Folder)).Problems.Select(problem => problem.ToString())];

    [Fact]
    public void The_example_is_sound_where_the_job_is_and_says_that_it_is_invented()
    {
        BenchReport report = BenchReport.Of(BenchFile.Load(Example));
        Assert.Contains("nvented", report.Sheet.Note, StringComparison.Ordinal);
        Assert.DoesNotContain(report.Findings, finding => finding.Severity == BenchSeverity.Wrong && finding.Where != "new parts");
        Assert.Equal(21.55, report.Sheet.Hoses[1].Assembly.CutLength.Inches, 0.005);
        Assert.Equal(PushRodVerdict.Good, report.PushRod!.Verdict);
        Assert.Equal(new[] { ChangeTopic.Effort, ChangeTopic.Travel, ChangeTopic.Balance, ChangeTopic.Knee, ChangeTopic.Heat },
            report.Changes.Select(row => row.Topic).Distinct());
        Assert.Equal(report.Findings.OrderByDescending(finding => finding.Severity), report.Findings);
    }

    [Fact]
    public void Every_bad_measurement_is_told_at_once()
    {
        IReadOnlyList<string> problems = Refused(
            new("hoses[0].overallLength", "90 mm"),
            new("hoses[1].dash", "-7"),
            new("hoses[2].class", "SAE J2075"),
            new("hoses[0].clearances[1].kind", "movin"),
            new("pushRod.seatDepth[1]", "30.4 mm"),
            new("plumbing.parts[3].part", "coler"),
            new("change.newParts.front.brake.friction", "4"));
        Assert.Equal(7, problems.Count);
        Assert.Contains(problems, text =>
            text.StartsWith("hoses[0].overallLength: 90 mm leave no hose: cut-offs and sockets take 100 mm.", StringComparison.Ordinal));
        Assert.Contains(problems, text =>
            text.Contains("hoses[1].dash: \"-7\" is not in the table for EN 853 1SN. Accepted: \"-3\"", StringComparison.Ordinal));
        Assert.Contains(problems, text =>
            text.Contains("hoses[2].class: \"SAE J2075\" is not known. Did you mean \"SAE J2076\"?", StringComparison.Ordinal));
        Assert.Contains(problems, text =>
            text.Contains("hoses[0].clearances[1].kind: \"movin\" is not known. Did you mean \"moving\"?", StringComparison.Ordinal));
        Assert.Contains(problems, text => text.Contains("pushRod.seatDepth: readings differ by 2.35 mm", StringComparison.Ordinal));
        Assert.Contains(problems, text =>
            text.Contains("plumbing.parts[3].part: \"coler\" is not known. Did you mean \"cooler\"?", StringComparison.Ordinal));
        Assert.Contains(problems, text => text.StartsWith("change.newParts.front.brake.friction: ", StringComparison.Ordinal));
    }

    [Fact]
    public void Bad_entries_and_entries_that_contradict_one_another_come_at_once()
    {
        IReadOnlyList<string> problems =
            Refused(new("pushRod.gasket", "3"), new("plumbing.parts[3].part", "coler"), new("hoses[0].overallLength", "90 mm"),
            new("change.vehicle", "nowhere.json"));
        Assert.Equal(4, problems.Count);
        Assert.Contains(problems, text => text.Contains("pushRod.gasket: 3 has no unit.", StringComparison.Ordinal));
        Assert.Contains(problems, text => text.Contains("90 mm leave no hose", StringComparison.Ordinal));
        Assert.Contains(problems, text => text.Contains("Did you mean \"cooler\"?", StringComparison.Ordinal));
        Assert.Contains(problems, text => text.Contains("There is no such file.", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("hoses[0].overallLength", "760 mm", "29.92125984251969 in")]
    [InlineData("hoses[1].first.cutOff", "1.10 in", "27.94 mm")]
    [InlineData("hoses[0].highestPressure", "95 bar", "9.5 MPa")]
    [InlineData("plumbing.pumpFlow", "9 l/min", "150 cm³/s")]
    [InlineData("plumbing.oilTemperature", "60 °C", "140 °F")]
    [InlineData("change.oldFrontRing", "6.5 kg", "14.330047 lb")]
    public void Other_units_of_a_measurement_change_nothing(string path, string one, string other)
    {
        BenchReport first = BenchReport.Of(BenchFile.Load(Example, new ValueOverride(path, one))),
            second = BenchReport.Of(BenchFile.Load(Example, new ValueOverride(path, other)));
        Assert.Equal(first.Findings.Select(finding => finding.ToString()), second.Findings.Select(finding => finding.ToString()));
        Assert.Equal(first.Sheet.Hoses.Select(hose => Math.Round(hose.Assembly.CutLength.Millimeters, 6)),
            second.Sheet.Hoses.Select(hose => Math.Round(hose.Assembly.CutLength.Millimeters, 6)));
        Assert.Equal(first.Changes.Select(row => row.After is { } after ? Math.Round((double)after.Value, 4) : 0),
            second.Changes.Select(row => row.After is { } after ? Math.Round((double)after.Value, 4) : 0));
    }

    [Theory]
    [InlineData("hoses[0].outsideDiameter", "8 mm", "8 mm is not above the bore of EN 853 1SN -6, 9.5 mm.")]
    [InlineData("hoses[0].outsideDiameter", "17.4", "17.4 has no unit.")]
    [InlineData("hoses[1].spares", "1.5", "1.5 is not a whole number.")]
    [InlineData("hoses[0].first.cutOff", "28 bar", "\"bar\" is not a unit of length.")]
    [InlineData("hoses[0].side", "suction", "\"suction\" is not known.")]
    [InlineData("pushRod.gaugeError", "3 mm", "\"3 mm\" is outside the range accepted.")]
    [InlineData("pushRod.greatestGap", "0 mm", "wants a gap from 0 to 0 mm.")]
    [InlineData("pushRod.spigotHeight[0]", "70 mm", "readings differ")]
    [InlineData("change.vehicle", "nowhere.json", "There is no such file.")]
    [InlineData("change.loadCase", "three up", "There is no load case \"three up\".")]
    [InlineData("plumbing.release.powerPiston", "3 mm", "outside the range accepted")]
    public void A_bad_measurement_is_refused_with_its_reason(string path, string value, string reason) =>
        Assert.Contains(Refused(new ValueOverride(path, value)), text =>
            text.StartsWith(path.Split('[', '.')[0], StringComparison.Ordinal) && text.Contains(reason, StringComparison.Ordinal));

    [Theory]
    [InlineData("{ \"name\": \"x\" }", "The file holds nothing to work out.")]
    [InlineData("{ \"name\": \"x\", \"hose\": [] }", "Did you mean \"hoses\"?")]
    [InlineData("{ \"name\": \"x\", \"pushRod\": { \"seatDepth\": [\"24 mm\"], \"rodLength\": [\"96 mm\"] } }",
        "gives only one of rodLength and rodSeatDepth.")]
    [InlineData("{ \"name\": \"x\", \"pushRod\": { \"seatDepth\": [\"24 mm\"] } }", "does not say how far the rod stands out.")]
    [InlineData("{ \"name\": \"x\", \"pushRod\": { \"seatDepth\": "
        + "[\"4 mm\"], \"spigotHeight\": [\"5 mm\"], \"rodProjection\": [\"3 mm\"] } }", "is higher than the seat is deep")]
    [InlineData("{ \"name\": \"x\", \"pushRod\": { \"seatDepth\": "
        + "[\"24 mm\"], \"rodLength\": [\"60 mm\"], \"rodSeatDepth\": [\"72 mm\"] } }", "is shorter than its seat is deep")]
    [InlineData("{ \"name\": \"x\", \"change\": { \"vehicle\": \"../vehicles/coupe-1960s.json\", \"newParts\": 3 } }", "3 does not fit.")]
    [InlineData("{ \"name\": \"x\", \"change\": { \"vehicle\": \"../vehicles/coupe-1960s.json\", \"newParts\": { \"frnt\": {} } } }",
        "Did you mean \"front\"?")]
    public void A_file_that_says_too_little_or_too_much_is_refused(string text, string reason) =>
        Assert.Contains(RefusedText(text), problem => problem.Contains(reason, StringComparison.Ordinal));

    [Fact]
    public void The_example_and_its_schema_agree()
    {
        JsonSchema schema = JsonSchema.FromText(BenchFile.Schema());
        JsonNode example = JsonNode.Parse(File.ReadAllText(Example),
            documentOptions: new() { CommentHandling = System.Text.Json.JsonCommentHandling.Skip })!;
        using var document = System.Text.Json.JsonDocument.Parse(example.ToJsonString());
        Assert.True(schema.Evaluate(document.RootElement).IsValid);
        example["hoses"]![0]!["overallLenght"] = "760 mm";
        using var misspelt = System.Text.Json.JsonDocument.Parse(example.ToJsonString());
        Assert.False(schema.Evaluate(misspelt.RootElement).IsValid);
    }

    /// <summary>Whatever a message names as accepted is accepted.</summary>
    [Fact]
    public void Every_unit_named_in_messages_can_be_read()
    {
        foreach (Type quantity in new[] { typeof(Length), typeof(Mass), typeof(Pressure), typeof(Force), typeof(Area), typeof(Speed),
            typeof(Volume), typeof(Torque), typeof(Density), typeof(Temperature), typeof(VolumeFlow), typeof(UnitsNet.Duration),
            typeof(Angle), typeof(MassMomentOfInertia), typeof(KinematicViscosity), typeof(ForcePerLength) })
        {
            Assert.All(QuantityText.Accepted(quantity).Split(", "), unit =>
                Assert.Null(QuantityText.Read("1 " + unit, quantity, out _, out _)));
        }
    }

    [Fact]
    public void Push_rod_readings_add_their_errors()
    {
        PushRodSheet sheet = BenchFile.Load(Example).PushRod!;
        Assert.Equal(28.10 - 4.025, sheet.PistonDepth.Millimeters, 1e-9);
        Assert.Equal(96.025 - (217.15 / 3), sheet.Projection.Millimeters, 1e-9);

        // Half the spread of each reading (0.05, 0.025, 0.025, 0.025 mm) or the gauge's 0.05 mm, whichever is greater: four times 0.05 mm.
        Assert.Equal(0.20, sheet.GapError.Millimeters, 1e-9);
        Assert.Equal(0.20, sheet.Fit().GapError.Millimeters, 1e-9);
        Assert.Equal(sheet.PistonDepth.Millimeters - sheet.Projection.Millimeters, sheet.Fit().Gap.Millimeters, 1e-9);
        Assert.Equal(BenchSeverity.Wrong,
            (sheet with { Gasket = Length.Zero, RodLength = sheet.RodLength! with { Readings = [Length.FromMillimeters(97.5)] } })
            .Finding().Severity);
    }

    private static ChangePlan Plan(string newParts) => BenchFile.Read(
        $$"""
        { "name": "x", "change": { "vehicle": "../vehicles/coupe-1960s.json", "newParts": {{newParts}},
          "oldFrontRing": "6.5 kg", "oldRearRing": "7 kg" } }
        """, "x", Folder).Change!;

    private static ChangeRow Row(ChangePlan plan, string name) =>
        plan.Rows().First(row => row.Name.StartsWith(name, StringComparison.Ordinal));

    private static double? Factor(ChangePlan plan, string name) => Row(plan, name) is { Before: { } before, After: { } after }
        ? after.As(before.Unit) / (double)before.Value : null;

    [Fact]
    public void No_new_parts_change_nothing()
    {
        foreach (ChangeRow row in Plan("{}").Rows())
        {
            Assert.Equal(row.Before?.ToString(null, null), row.After?.ToString(null, null));
            Assert.Equal(row.BeforeWords, row.AfterWords);
        }
    }

    /// <summary>Pascal's law: with the return spring aside, rod force and travel go with the bore's area, 1.125 in to 1 in.</summary>
    [Fact]
    public void A_smaller_master_cylinder_makes_the_pedal_lighter_and_longer()
    {
        ChangePlan plan = Plan("""{ "masterCylinder": { "bore": "1 in" } }""");
        Assert.True(Factor(plan, "Pedal force at 0.80 g") < 1);
        Assert.True(Factor(plan, "Pedal travel") > 1);
        Assert.Equal(1, Factor(plan, "Front line pressure at 0.80 g")!.Value, 1e-9);
        Assert.Equal(1, Factor(plan, "Rear axle's share")!.Value, 1e-9);
    }

    [Fact]
    public void Bigger_front_pistons_move_braking_forwards_and_let_the_knee_rise()
    {
        ChangePlan plan = Plan("""{ "front": { "brake": { "pistonDiameters": ["54 mm", "54 mm"] } } }""");
        Assert.True(Factor(plan, "Rear axle's share") < 1);
        Assert.Contains("forwards", Row(plan, "Rear axle's share").Meaning, StringComparison.Ordinal);
        Assert.True(Factor(plan, "Safe limit") >= 1);
    }

    [Fact]
    public void Grippier_rear_linings_are_the_dangerous_side()
    {
        ChangePlan plan = Plan("""{ "rear": { "brake": { "friction": 0.46 } } }""");
        ChangeRow share = Row(plan, "Rear axle's share");
        Assert.Equal(BenchSeverity.Caution, share.Severity);
        Assert.Contains("dangerous side", share.Meaning, StringComparison.Ordinal);
        Assert.True(Factor(plan, "Safe limit") is null or < 1);
    }

    /// <summary>
    /// Lever law by hand: a taller front tyre takes braking from the front axle in proportion to its radius at the same pressure.
    /// </summary>
    [Fact]
    public void Taller_front_tyres_move_braking_rearwards()
    {
        ChangePlan plan = Plan("""{ "front": { "tyre": { "loadedRadius": "336 mm" } } }""");
        Assert.True(Factor(plan, "Rear axle's share") > 1);
        Assert.Equal(BenchSeverity.Caution, Row(plan, "Rear axle's share").Severity);
        Assert.True(Factor(plan, "Front line pressure at 0.80 g") > 1);
    }

    [Fact]
    public void A_knee_above_the_safe_one_is_wrong_and_says_which_way_to_turn()
    {
        ChangeRow row = Row(Plan("""{ "rear": { "brake": { "wheelCylinderDiameter": "1 in" } } }"""), "Safe limit");
        Assert.Equal(BenchSeverity.Wrong, row.Severity);
        Assert.Contains("turn the valve out", row.Meaning, StringComparison.Ordinal);
    }

    [Fact]
    public void A_booster_that_runs_out_early_is_a_caution()
    {
        ChangePlan plan = Plan("""{ "assist": { "vacuum": "6 inHg" } }""");
        ChangeRow row = Row(plan, "Front line pressure at run-out");
        Assert.Equal(BenchSeverity.Caution, row.Severity);
        Assert.Contains("runs out before", row.Meaning, StringComparison.Ordinal);
        Assert.True(Factor(plan, "Front line pressure at run-out") < 1);
    }

    /// <summary>Energy balance by hand: the rise times mass and specific heat of all rings is ½ m v².</summary>
    [Fact]
    public void Heat_of_one_stop_adds_up_to_the_kinetic_energy()
    {
        ChangePlan plan = Plan("{}");
        double front = ((TemperatureDelta)Row(plan, "Front disc or drum temperature rise").Before!).Kelvins,
            rear = ((TemperatureDelta)Row(plan, "Rear disc or drum temperature rise").Before!).Kelvins;
        double metresPerSecond = 100 / 3.6;
        Assert.Equal(0.5 * 1700 * metresPerSecond * metresPerSecond, 460 * 2 * ((6.5 * front) + (7 * rear)), 1);
    }

    [Fact]
    public void A_part_of_another_type_replaces_the_old_one_whole()
    {
        ChangePlan plan = Plan("""
            { "rear": { "brake": { "type": "disc", "pistonDiameters": ["38 mm"], "effectiveRadius": "120 mm", "friction": 0.38 } },
              "assist": { "type": "none" }, "fluid": { "rear": { "caliper": "sliding" } } }
            """);
        Assert.IsType<BrakeBalance.Brakes.DiscBrake>(plan.After.Brakes.Rear);
        ChangeRow runOut = Row(plan, "Front line pressure at run-out");
        Assert.Null(runOut.After);
        Assert.Equal("no assist to run out", runOut.AfterWords);
    }

    [Fact]
    public void Checklists_defer_to_the_manual_and_are_short_enough_for_a_sheet()
    {
        Assert.All(Checklist.All, list =>
        {
            Assert.StartsWith("The car's service manual goes before this list.", list.Before, StringComparison.Ordinal);
            Assert.InRange(list.Steps.Length, 4, 9);
            Assert.All(list.Steps, step => Assert.True(step.Length < 160 && step.EndsWith('.')));
        });
    }
}
