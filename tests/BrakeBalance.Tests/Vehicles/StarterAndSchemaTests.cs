using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Balance;
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

    /// <summary>Every entry of the starter file that is there as a comment, by the number of its first line.</summary>
    public static TheoryData<int> LeftOut
    {
        get
        {
            string[] lines = Starter.Split('\n');
            TheoryData<int> starts = [];
            for (int i = 0; i < lines.Length; i++)
            {
                if (lines[i].TrimStart().StartsWith("//~ \"", StringComparison.Ordinal))
                {
                    starts.Add(i);
                }
            }

            return starts;
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
    [MemberData(nameof(LeftOut))]
    public void Each_entry_left_out_can_be_taken_in(int line)
    {
        string text = TakenIn(Starter, line);
        string key = text.Split('\n')[line].Trim().Split('"')[1];
        IReadOnlyList<Problem> problems = VehicleFile.TryRead(text).Problems;

        // An alternative way to say what the starter already says is told as such; anything else has to be accepted as it stands.
        string[] alternatives =
        [
            "frontAxleToCentreOfGravity", "frontAxleMass", "rearAxleMass", "padInnerRadius", "padOuterRadius", "geometry", "duoServoGeometry",
            "pedal", "assist", "masterCylinder", "fluid",
        ];
        if (!alternatives.Contains(key))
        {
            Assert.Empty(problems);
        }

        Assert.All(problems, problem => Assert.DoesNotContain("known here", problem.What));
        Assert.All(problems, problem => Assert.DoesNotContain("outside the range", problem.What));
        Assert.Empty(Faults(text));
    }

    [Fact]
    public void The_starter_car_locks_its_front_axle_first_on_every_road()
    {
        VehicleReading reading = VehicleFile.TryRead(Starter).Reading!;
        Assert.True(SettingSearch.FrontFirstEverywhere(reading.Vehicle, new SettingConditions { FrictionSpread = 0, HighestAdhesion = 1.2 }));
    }

    [Fact]
    public void Alternatives_of_the_starter_file_are_legal_in_place_of_what_they_replace()
    {
        Assert.Empty(VehicleFile.TryRead(Starter
            .Replace("\"frontShare\": 0.53,", "", StringComparison.Ordinal)
            .Replace("//~ \"frontAxleToCentreOfGravity\"", "\"frontAxleToCentreOfGravity\"", StringComparison.Ordinal)).Problems);
        Assert.Empty(VehicleFile.TryRead(Starter
            .Replace("\"frontShare\": 0.53,", "", StringComparison.Ordinal)
            .Replace("\"mass\": \"1350 kg\",", "", StringComparison.Ordinal)
            .Replace("//~ \"frontAxleMass\"", "\"frontAxleMass\"", StringComparison.Ordinal)
            .Replace("//~ \"rearAxleMass\"", "\"rearAxleMass\"", StringComparison.Ordinal)).Problems);
        Assert.Empty(VehicleFile.TryRead(Starter
            .Replace("\"effectiveRadius\": \"125 mm\",", "", StringComparison.Ordinal)
            .Replace("//~ \"padInnerRadius\"", "\"padInnerRadius\"", StringComparison.Ordinal)
            .Replace("//~ \"padOuterRadius\"", "\"padOuterRadius\"", StringComparison.Ordinal)).Problems);
    }

    // Pedal, assist and master cylinder belong together; the fluid's volumes come on top.
    [Theory]
    [InlineData("pedal", "assist", "masterCylinder")]
    [InlineData("pedal", "assist", "masterCylinder", "fluid")]
    public void Parts_between_foot_and_line_pressure_can_be_taken_in_together(params string[] keys)
    {
        string text = keys.Aggregate(Starter, (taken, key) => TakenIn(taken, key));
        Assert.Empty(VehicleFile.TryRead(text).Problems);
        Assert.Empty(Faults(text));
        Assert.NotNull(VehicleFile.Read(text, "starter").Vehicle.Control);
    }

    [Theory]
    [MemberData(nameof(RepositoryCarTests.Files), MemberType = typeof(RepositoryCarTests))]
    public void Schema_accepts_every_car_of_the_repository(string file) =>
        Assert.Empty(Faults(File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", file))));

    [Fact]
    public void Schema_accepts_ranges_and_every_unit() =>
        Assert.Empty(Faults(VehicleFileTests.Good.Replace("\"1200 kg\"", "\"1150 .. 1250 kg\"").Replace("0.40", "\"0.36 .. 0.44\"").Replace("\"2.50 m\"", "\"98.4 in\"")));

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
        Assert.All(DocumentTypes(), type => Assert.All(
            type.GetProperties(BindingFlags.Public | BindingFlags.Instance), property => Assert.NotNull(property.GetCustomAttribute<FieldAttribute>())));

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

    private static IReadOnlyCollection<Type> DocumentTypes()
    {
        HashSet<Type> found = [];
        void Visit(Type type)
        {
            if (!found.Add(type))
            {
                return;
            }

            foreach (KindAttribute kind in FieldMap.Kinds(type))
            {
                Visit(kind.Document);
            }

            foreach (FieldInfo field in FieldMap.Of(type))
            {
                (FieldShape shape, Type inner) = field.Shape == FieldShape.List ? FieldMap.ShapeOf(field.ValueType) : (field.Shape, field.ValueType);
                if (shape == FieldShape.Document)
                {
                    Visit(inner);
                }
            }
        }

        Visit(typeof(VehicleDocument));
        return found;
    }

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

    internal static string TakenIn(string starter, string key) =>
        TakenIn(starter, starter.Split('\n').ToList().FindIndex(line => line.TrimStart().StartsWith($"//~ \"{key}\"", StringComparison.Ordinal)));

    // An entry left out goes on to the line that closes it, which is as deep as its first.
    internal static string TakenIn(string starter, int first)
    {
        string[] lines = starter.Split('\n');
        int mark = lines[first].IndexOf("//~ ", StringComparison.Ordinal);
        for (int i = first; i < lines.Length; i++)
        {
            lines[i] = lines[i].Remove(mark, 4);
            if (i == first ? lines[i].TrimEnd()[^1] == ',' : lines[i].Length > mark && lines[i][mark] is '}' or ']')
            {
                break;
            }
        }

        return string.Join('\n', lines);
    }

    private static IReadOnlyList<string> Faults(string text)
    {
        using JsonDocument document = JsonDocument.Parse(text, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        EvaluationResults results = Schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return results.IsValid ? [] : [.. (results.Details ?? []).Where(detail => detail.Errors is not null).SelectMany(detail => detail.Errors!.Select(error => detail.InstanceLocation + ": " + error.Value)).DefaultIfEmpty("not valid")];
    }
}
