using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using Json.Schema;
using FieldInfo = BrakeBalance.Vehicles.Files.FieldInfo;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>The starter file and the JSON Schema say the same as the reader, being made of the same descriptions.</summary>
public class StarterAndSchemaTests
{
    private static readonly string Starter = StarterFile.Text();
    private static readonly string SchemaText = VehicleSchema.Text();
    private static readonly JsonSchema Schema = JsonSchema.FromText(SchemaText);

    /// <summary>Every combination of parts that a starter file can be asked for.</summary>
    public static TheoryData<string, string, string> Combinations
    {
        get
        {
            TheoryData<string, string, string> all = [];
            foreach (string assist in StarterFile.Assists)
            {
                foreach (string rear in StarterFile.Rears)
                {
                    foreach (string valve in StarterFile.Valves)
                    {
                        all.Add(assist, rear, valve);
                    }
                }
            }

            return all;
        }
    }

    [Fact]
    public void Starter_file_loads_without_problems_and_says_that_its_numbers_are_invented()
    {
        Assert.Empty(VehicleFile.TryRead(Starter).Problems);
        Assert.Contains("numbers are invented", Starter.Split('\n')[0]);
        Assert.Contains("no approval", Starter);
        Assert.Empty(Faults(Starter));
    }

    [Theory]
    [MemberData(nameof(Combinations))]
    public void Every_combination_is_accepted_with_each_optional_line_taken_in_and_with_all_of_them(string assist, string rear,
        string valve)
    {
        string text = StarterFile.Text(assist, rear, valve);
        Accepted(text);
        Assert.NotNull(VehicleFile.Read(text, "starter").Vehicle.Control);
        string[] lines = text.Split('\n');
        int[] optional = [.. lines.Index().Where(line => line.Item.TrimStart().StartsWith(CommentedFile.Optional, StringComparison.Ordinal))
            .Select(line => line.Index)];
        Assert.True(optional.Length > 30, $"{optional.Length} optional lines");
        foreach (int line in optional)
        {
            IReadOnlyList<Problem> problems =
                VehicleFile.TryRead(string.Join('\n', lines.Select((one, i) => i == line ? TakenIn(one) : one))).Problems;
            Assert.True(problems.Count == 0, $"{lines[line]}: {string.Join("; ", problems)}");
        }

        Accepted(string.Join('\n', lines.Select(TakenIn)));
    }

    [Theory]
    [MemberData(nameof(Combinations))]
    public void A_starter_file_has_the_parts_asked_for_and_no_entries_of_others(string assist, string rear, string valve)
    {
        string text = StarterFile.Text(assist, rear, valve);
        Vehicle car = VehicleFile.Read(text, "starter").Vehicle;
        Assert.Equal(assist == "none", car.Control!.Assist is NoAssist);
        Assert.Equal(assist == "pump", text.Contains("\"pumpFlow\"", StringComparison.Ordinal));
        Assert.Equal(assist == "vacuum", text.Contains("\"diaphragmDiameter\"", StringComparison.Ordinal));
        Assert.Equal(rear == "drum", car.Brakes.Rear is DrumBrake);
        Assert.Equal(rear == "drum", text.Contains("\"drumTemperature\"", StringComparison.Ordinal));
        Assert.Equal(rear == "disc" ? 2 : 1, text.Split("\"caliper\"").Length - 1);
        Assert.Equal(valve == "balance-bar", car.Hydraulics.Split is BalanceBarSplit);
        Assert.Equal(valve == "adjustable", text.Contains("\"adjuster\"", StringComparison.Ordinal));
        Assert.Equal(valve == "load-sensing", text.Contains("\"kneeAtReference\"", StringComparison.Ordinal));
        Assert.Equal(valve == "limiting", text.Contains("\"limit\"", StringComparison.Ordinal));
        Assert.Equal(valve is "none" or "balance-bar" ? 0 : 1, car.Hydraulics.RearValves.Length);
    }

    [Fact]
    public void A_part_that_no_starter_file_has_is_refused_with_those_there_are() =>
        Assert.Contains("pump, vacuum, none", Assert.Throws<ArgumentException>(() => StarterFile.Text("electric")).Message);

    [Theory]
    [MemberData(nameof(Combinations))]
    public void A_starter_car_locks_its_front_axle_first_on_every_road(string assist, string rear, string valve)
    {
        Vehicle car = VehicleFile.Read(StarterFile.Text(assist, rear, valve), "starter").Vehicle;
        Assert.Null(SettingSearch.RearFirst(car, car.Conditions.AtMiddle));
    }

    [Theory]
    [MemberData(nameof(Combinations))]
    public void A_starter_car_does_not_stand_beyond_its_safe_limit(string assist, string rear, string valve)
    {
        var setting = BrakeBalance.Measurements.Setting.Of(VehicleFile.Read(StarterFile.Text(assist, rear, valve), "starter").Vehicle);
        Assert.False(setting.PresentIsBeyond, string.Join('\n', BrakeBalance.Measurements.SettingWords.Lines(setting, UnitSystem.Si)));
    }

    [Fact]
    public void The_starter_car_locks_its_front_axle_first_on_every_road()
    {
        VehicleReading reading = VehicleFile.TryRead(Starter).Reading!;
        Assert.Null(SettingSearch.RearFirst(reading.Vehicle, reading.Vehicle.Conditions.AtMiddle with { HighestAdhesion = 1.2 }));
    }

    [Theory]
    [InlineData("\"frontShare\": 0.53", "\"frontAxleToCentreOfGravity\": \"1.22 m\"")]
    [InlineData("\"mass\": \"1350 kg\",\"frontShare\": 0.53", "\"frontAxleMass\": \"716 kg\",\"rearAxleMass\": \"634 kg\"")]
    [InlineData("\"effectiveRadius\": \"125 mm\"", "\"padInnerRadius\": \"100 mm\",\"padOuterRadius\": \"150 mm\"")]
    public void Alternatives_of_the_starter_file_are_legal_in_place_of_what_they_replace(string replaced, string by)
    {
        Assert.All(by.Split(','), line => Assert.Contains(": " + line, Starter));
        string text = replaced.Split(',').Aggregate(Starter, (text, line) => text.Replace(line + ",", "", StringComparison.Ordinal));
        string before = replaced.Contains("Radius", StringComparison.Ordinal) ? "\"pistonDiameters\"" : "\"centreOfGravityHeight\"";
        Accepted(text.Replace(before, by + "," + before, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(RepositoryCarTests.Files), MemberType = typeof(RepositoryCarTests))]
    public void Schema_accepts_every_car_of_the_repository(string file) =>
        Assert.Empty(Faults(File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", file))));

    [Fact]
    public void Schema_accepts_ranges_and_every_unit() =>
        Assert.Empty(Faults(VehicleFileTests.Good.Replace("\"1200 kg\"", "\"1150 .. 1250 kg\"").Replace("0.40", "\"0.36 .. 0.44\"")
            .Replace("\"2.50 m\"", "\"98.4 in\"")));

    [Theory]
    [InlineData("\"2.50 m\"", "2.50")]
    [InlineData("\"2.50 m\"", "\"2.50\"")]
    [InlineData("\"2.50 m\"", "\"2,50 m\"")]
    [InlineData("\"2.50 m\"", "null")]
    [InlineData("\"name\": \"Test coupe\",", "")]
    [InlineData("\"wheelbase\"", "\"wheelbas\"")]
    [InlineData("\"rollingResistance\": 0.015", "\"rollingResistance\": 0.5")]
    [InlineData("\"rollingResistance\": 0.015", "\"rollingResistance\": \"little\"")]
    [InlineData("\"type\": \"disc\"", "\"type\": \"discs\"")]
    [InlineData("\"type\": \"disc\", ", "")]
    [InlineData("\"type\": \"proportioning\"", "\"type\": \"magic\"")]
    [InlineData("[\"54 mm\"]", "[]")]
    [InlineData("[\"54 mm\"]", "\"54 mm\"")]
    [InlineData("\"slope\": 0.4", "\"slope\": 1.4")]
    [InlineData("\"friction\": 0.38", "\"friktion\": 0.38")]
    [InlineData("{ \"dragArea\": \"0.7 m²\" }", "{}")]
    [InlineData("{ \"dragArea\": \"0.7 m²\" }", "[]")]
    public void Schema_refuses_what_the_reader_refuses(string replaced, string by)
    {
        Assert.Contains(replaced, VehicleFileTests.Good);
        string text = VehicleFileTests.Good.Replace(replaced, by);
        Assert.NotEmpty(VehicleFile.TryRead(text).Problems);
        Assert.NotEmpty(Faults(text));
    }

    [Fact]
    public void Every_entry_of_every_document_type_is_in_the_schema_and_in_the_starter_or_its_kinds()
    {
        HashSet<string> keys = [];
        HashSet<string> consts = [];
        Collect(JsonNode.Parse(SchemaText)!, keys, consts);
        foreach (Type document in DocumentTypes())
        {
            foreach (FieldInfo field in FieldMap.Of(document))
            {
                Assert.Contains(field.Key, keys);
                Assert.NotEqual("", field.About.Description);
            }

            Assert.All(FieldMap.Kinds(document), kind => Assert.Contains(kind.Name, consts));
        }
    }

    [Fact]
    public void Every_document_property_is_described() =>
        Assert.All(DocumentTypes().Where(type => type.Name.EndsWith("Document", StringComparison.Ordinal)), type => Assert.All(
            type.GetProperties(BindingFlags.Public | BindingFlags.Instance), property =>
                Assert.NotNull(property.GetCustomAttribute<FieldAttribute>())));

    [Fact]
    public void Every_example_is_a_value_the_reader_accepts() => Assert.All(DocumentTypes().SelectMany(FieldMap.Of), field =>
    {
        if (field.Shape == FieldShape.Quantity)
        {
            Assert.NotEqual("", field.About.Example);
            Assert.Null(QuantityText.Read(field.About.Example, field.ValueType, out UnitsNet.IQuantity? value, out _));
            Assert.True(field.LowQuantity is null || value!.As(value.Unit) >= field.LowQuantity.As(value.Unit), field.Key);
            Assert.True(field.HighQuantity is null || value!.As(value.Unit) <= field.HighQuantity.As(value.Unit), field.Key);
        }
    });

    [Fact]
    public void Schema_declares_its_draft_and_forbids_unknown_entries()
    {
        JsonNode root = JsonNode.Parse(SchemaText)!;
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", root["$schema"]!.GetValue<string>());
        Assert.False(root["additionalProperties"]!.GetValue<bool>());
        Assert.EndsWith("\n", SchemaText);
    }

    private static IReadOnlyCollection<Type> DocumentTypes() => Documents.Of(typeof(VehicleDocument));

    private static void Collect(JsonNode? node, HashSet<string> keys, HashSet<string> consts)
    {
        if (node is JsonObject json)
        {
            foreach ((string key, JsonNode? value) in json)
            {
                if (key == "properties" && value is JsonObject properties)
                {
                    keys.UnionWith(properties.Select(property => property.Key));
                }

                if (key == "const")
                {
                    consts.Add(value!.GetValue<string>());
                }

                Collect(value, keys, consts);
            }
        }
        else if (node is JsonArray array)
        {
            foreach (JsonNode? element in array)
            {
                Collect(element, keys, consts);
            }
        }
    }

    internal static string TakenIn(string line) =>
        line.TrimStart().StartsWith(CommentedFile.Optional, StringComparison.Ordinal)
            ? line.Replace(CommentedFile.Optional, "", StringComparison.Ordinal) : line;

    private static void Accepted(string text)
    {
        Assert.Empty(VehicleFile.TryRead(text).Problems);
        Assert.Empty(Faults(text));
    }

    internal static IReadOnlyList<string> Faults(string text)
    {
        using JsonDocument document =
            JsonDocument.Parse(text, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        EvaluationResults results = Schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return results.IsValid ? []
            : [.. (results.Details ?? []).Where(detail => detail.Errors is not null)
            .SelectMany(detail => detail.Errors!.Select(error => detail.InstanceLocation + ": " + error.Value))
            .DefaultIfEmpty("not valid")];
    }
}
