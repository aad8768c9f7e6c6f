using System.Text.Json.Nodes;
using BrakeBalance.Bench.Files;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using Json.Schema;
using FieldInfo = BrakeBalance.Vehicles.Files.FieldInfo;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>What the JSON Schema requires and lists is what the reader requires and accepts.</summary>
public class SchemaAndReaderTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(VehicleSchema.Text());

    private static readonly Dictionary<string, string> Closed = new()
    {
        ["carClass"] = "1960s coupe, track coupe, small sports car, rear-engined car, pickup",
        ["slipCurve"] = "",
        ["drivenAxle"] = "front, rear",
        ["shoes"] = "leading-trailing, two-leading, two-trailing, duo-servo",
        ["support"] = "pivoted, sliding",
        ["construction"] = "disc, drum",
        ["circuits"] = "front-rear, diagonal",
        ["grade"] = "DOT 3, DOT 4, DOT 5, DOT 5.1",
        ["caliper"] = "sliding, fixed",
        ["frictionMaterial"] = "",
        ["class"] = "",
        ["side"] = "pressure, return",
        ["kind"] = "heat, moving, edge",
        ["part"] = "reservoir, pump, pump with reservoir, booster, steering gear, cooler, filter, tee",
    };

    /// <summary>Cars that together have every part a starter file can have.</summary>
    public static TheoryData<string, string, string> Cars => new()
    {
        { "pump", "drum", "adjustable" }, { "vacuum", "disc", "load-sensing" }, { "none", "disc", "balance-bar" },
            { "none", "drum", "limiting" },
    };

    [Theory]
    [MemberData(nameof(Cars))]
    public void The_reader_does_without_no_entry_that_the_schema_requires(string assist, string rear, string valve)
    {
        JsonObject car = Everything(assist, rear, valve);
        foreach (string? name in (string?[])["1960s coupe", "track coupe", null])
        {
            if (name is null)
            {
                car.Remove("carClass");
            }
            else
            {
                car["carClass"] = name;
            }

            List<string> required = [];
            foreach (string path in Paths(car, ""))
            {
                JsonNode without = Without(car, path);
                if (!Valid(without))
                {
                    required.Add(path);
                    Assert.True(VehicleFile.TryRead(without.ToJsonString()).Problems.Count > 0,
                        $"{path}: required by the schema, but not by the reader of a {name ?? "car without class"}");
                }
            }

            Assert.Contains("name", required);
            Assert.Contains("loadCases[0].name", required);
            Assert.Equal(name is null, required.Contains("front.brake.type"));
            Assert.Equal(name is null, required.Contains("wheelbase"));
        }
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void Without_a_class_the_schema_requires_all_that_the_reader_calls_missing(string assist, string rear, string valve)
    {
        JsonObject car = Everything(assist, rear, valve);
        car.Remove("carClass");
        int missing = 0;
        foreach (string path in Paths(car, ""))
        {
            JsonNode without = Without(car, path);
            if (FieldOf(car, path) is { About.Required: true })
            {
                missing++;
                Assert.False(Valid(without), path);
                Assert.Contains(VehicleFile.TryRead(without.ToJsonString()).Problems, problem =>
                    problem.Path == path && problem.What == "is missing.");
            }
        }

        Assert.True(missing > 20, $"{missing} entries required");
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void With_a_class_that_fills_them_reader_and_schema_do_without_the_entries_that_a_class_may_fill(string assist, string rear,
        string valve)
    {
        JsonObject car = Everything(assist, rear, valve);
        int filled = 0;
        foreach (string path in Paths(car, "").Where(path => FieldOf(car, path) is { About.Required: true, MayComeFromClass: true }))
        {
            JsonObject without = Without(car, path);
            Assert.Contains(CarClassNames.Words, name =>
            {
                without["carClass"] = name;
                return VehicleFile.TryRead(without.ToJsonString()).Problems.Count == 0;
            });
            Assert.True(Valid(without), path);
            filled++;
        }

        Assert.True(filled > 10, $"{filled} entries");
    }

    [Fact]
    public void Every_closed_list_is_in_the_schema_and_accepted_word_by_word_and_nothing_else_is()
    {
        HashSet<string> seen = [];
        foreach ((Type root, string schema) in new[] { (typeof(VehicleDocument), VehicleSchema.Text()),
            (typeof(BenchDocument), BenchFile.Schema()) })
        {
            List<(string Key, string Words)> listed = [];
            Collect(JsonNode.Parse(schema), listed);
            foreach ((Type type, FieldInfo field) in Documents.Of(root).SelectMany(type => FieldMap.Of(type).Select(field => (type, field)))
                .Where(pair => pair.field.Words.Count > 0))
            {
                string words = string.Join(", ", field.Words.Select(known => known.Word));
                seen.Add(field.Key);
                Assert.Contains((field.Key, words), listed);
                Assert.True(Closed.TryGetValue(field.Key, out string? expected), field.Key);
                Assert.True(expected!.Length == 0 ? field.Words.Count > 1 : expected == words, $"{field.Key}: {words}");
                Assert.All(field.Words, known => Assert.Empty(Said(type, field.Key, known.Word)));
                Assert.Contains("is not known", Assert.Single(Said(type, field.Key, "no such word")).What);
            }
        }

        Assert.Equal(Closed.Keys.Order(), seen.Order());
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void A_whole_file_is_accepted_with_each_word_of_its_closed_lists_and_refused_with_another(string assist, string rear,
        string valve)
    {
        JsonObject car = Everything(assist, rear, valve);
        foreach (string path in Paths(car, "").Where(path => FieldOf(car, path) is { Words.Count: > 0 }))
        {
            foreach ((string word, object _) in FieldOf(car, path)!.Words)
            {
                JsonObject with = Without(car, path, word);
                Assert.True(Valid(with), $"{path} {word}");
                Assert.Empty(VehicleFile.TryRead(with.ToJsonString()).Problems);
            }

            JsonObject wrong = Without(car, path, "no such word");
            Assert.False(Valid(wrong), path);
            Assert.Contains(VehicleFile.TryRead(wrong.ToJsonString()).Problems, problem => problem.Path == path);
        }
    }

    [Fact]
    public void Every_entry_that_holds_a_value_says_how_it_is_found() => Assert.All(
        Documents.Of(typeof(VehicleDocument)).Concat(Documents.Of(typeof(BenchDocument)))
            .SelectMany(type => FieldMap.Of(type).Select(field => (type, field)))
            .Where(pair => (pair.field.Shape == FieldShape.List ? FieldMap.ShapeOf(pair.field.ValueType).Shape : pair.field.Shape)
                is not (FieldShape.Document or FieldShape.Text or FieldShape.Json)),
        pair => Assert.True(pair.field.About.HowToMeasure.Length > 0, $"{pair.type.Name}.{pair.field.Key}"));

    [Fact]
    public void Every_part_that_is_read_as_it_stands_is_kept_for_the_page()
    {
        string roots = File.ReadAllText(Path.Combine(RepositoryFiles.Root, "src", "BrakeBalance.Live", "Roots.xml"));
        Assert.All(
            Documents.Of(typeof(VehicleDocument)).Concat(Documents.Of(typeof(BenchDocument)))
                .Where(type => !type.Name.EndsWith("Document", StringComparison.Ordinal)),
            type => Assert.Contains($"<type fullname=\"{type.FullName}\" />", roots));
    }

    [Fact]
    public void A_usual_range_is_a_range_within_the_limits_and_is_told_as_common_practice()
    {
        FieldInfo[] usual = [.. Documents.Of(typeof(VehicleDocument)).SelectMany(FieldMap.Of)
            .Where(field => field.About.Typical.Length > 0)];
        string[] asked = ["ratio", "boostRatio", "effectiveAreaShare", "pumpFlow", "reliefPressure", "stroke", "bore", "vacuum",
            "diaphragmDiameter", "powerPiston", "friction", "knee"];
        Assert.Empty(asked.Except(usual.Select(field => field.Key)));
        Assert.All(usual, field => Assert.Contains($"Usual: {field.About.Typical} (common practice).", field.Told));
        Assert.All(usual, field =>
        {
            string[] ends = field.About.Typical.Split(" .. ");
            Assert.Equal(2, ends.Length);
            Assert.True(Size(field, ends[0]) < Size(field, ends[1]), field.Key);
            Assert.True((field.About.Low is null || Size(field, ends[0]) >= Size(field, field.About.Low))
                && (field.About.High is null || Size(field, ends[1]) <= Size(field, field.About.High)), field.Key);
        });
    }

    [Fact]
    public void The_ranges_of_every_class_lie_within_the_usual_ranges()
    {
        FieldInfo[] fields = [.. Documents.Of(typeof(VehicleDocument)).SelectMany(FieldMap.Of)];
        foreach (string name in CarClassNames.Words)
        {
            foreach (ValueRange range in VehicleFile.Read(
                $$"""{ "name": "x", "carClass": "{{name}}", "hydraulics": { "rearValves": [{ "type": "proportioning" }] } }""", "x").Ranges)
            {
                FieldInfo field = fields.First(field =>
                    field.About.Description == range.Description && range.Path.Split('.', '[').Contains(field.Key));
                string[] ends = field.About.Typical.Split(" .. ");
                Assert.True(Size(field, range.Low) >= 0.995 * Size(field, ends[0])
                    && Size(field, range.High) <= 1.005 * Size(field, ends[1]), $"{name}: {range.Path} {range.Low} .. {range.High}");
            }
        }
    }

    [Theory]
    [InlineData("\"pedal\": {}, \"assist\": { \"type\": \"vacuum\" }, \"masterCylinder\": { \"type\": \"tandem\" }",
        "pedal.ratio, assist.boostRatio, assist.vacuum, "
            + "assist.diaphragmDiameter, assist.effectiveAreaShare, masterCylinder.stroke, masterCylinder.bore")]
    [InlineData("\"pedal\": { \"ratio\": 4.4 }, \"assist\": "
        + "{ \"type\": \"hydraulic\", \"pumpFlow\": \"8 l/min\" }, \"masterCylinder\": { \"type\": \"single\" }",
        "assist.boostRatio, assist.reliefPressure, assist.powerPiston, masterCylinder.stroke, masterCylinder.bore")]
    [InlineData("\"aerodynamics\": {}, \"engineBraking\": { \"drivenAxle\": \"rear\" }",
        "aerodynamics.dragArea, engineBraking.brakingForce")]
    [InlineData("\"rollingResistance\": 0.01", "")]
    public void A_class_fills_the_usual_ranges_of_the_parts_that_a_file_has(string parts, string expected)
    {
        string text = $$"""{ "name": "x", "carClass": "1960s coupe", {{parts}} }""";
        VehicleReading reading = VehicleFile.Read(text, "x");
        string[] found = [.. reading.Ranges.Where(range =>
            !range.Path.StartsWith("front", StringComparison.Ordinal) && !range.Path.StartsWith("rear.", StringComparison.Ordinal)
            && !range.Path.StartsWith("loadCases", StringComparison.Ordinal) && range.Path != "wheelbase").Select(range => range.Path)];
        Assert.Equal(expected.Split(", ", StringSplitOptions.RemoveEmptyEntries).Order(), found.Order());
        Assert.All(reading.Ranges, range => Assert.True(range.IsTypical));
        Assert.True(Valid(JsonNode.Parse(text)!));
    }

    [Fact]
    public void A_linkage_keeps_the_class_from_adding_a_pedal_ratio() => Assert.DoesNotContain(
        VehicleFile.Read(
            """
            { "name": "x", "carClass": "pickup", "assist": { "type": "none" }, "masterCylinder": { "type": "tandem" },
              "pedal": { "geometry": { "pivotToPad": "320 mm", "pivotToPin": "80 mm", "linkLength": "120 mm",
                "rodAxisDepth": "80 mm", "pinAngleAtRest": "-10 °" } } }
            """, "x").FromCarClass,
        path => path == "pedal.ratio");

    private static double Size(FieldInfo field, string text)
    {
        (FieldShape shape, Type type) = field.Shape == FieldShape.List ? FieldMap.ShapeOf(field.ValueType) : (field.Shape, field.ValueType);
        if (shape == FieldShape.Number)
        {
            return double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
        }

        Assert.Null(QuantityText.Read(text, type, out UnitsNet.IQuantity? value, out _));
        return value!.As(UnitsNet.Quantity.Infos.First(info => info.ValueType == type).BaseUnitInfo.Value);
    }

    private static JsonObject Everything(string assist, string rear, string valve) => (JsonObject)DocumentFile.Parse(
        StarterFile.Text(assist, rear, valve).Replace(CommentedFile.Optional, "", StringComparison.Ordinal)).Root!;

    private static bool Valid(JsonNode node) => Schema.Evaluate(System.Text.Json.JsonSerializer.SerializeToElement(node)).IsValid;

    private static IReadOnlyList<Problem> Said(Type type, string key, string word)
    {
        var reader = new DocumentReader();
        reader.ReadDocument(type, new JsonObject { [key] = word }, "");
        return [.. reader.Problems.Where(problem => problem.Path == key)];
    }

    private static IEnumerable<string> Paths(JsonNode node, string path)
    {
        IEnumerable<(string Path, JsonNode? Node)> inner = node switch
        {
            JsonObject json => json.Select(pair => (DocumentReader.Join(path, pair.Key), pair.Value)),
            JsonArray list => list.Select((one, i) => ($"{path}[{i}]", one)),
            _ => [],
        };
        return inner.SelectMany(part => part.Node is null ? [] : Paths(part.Node, part.Path).Concat(node is JsonObject ? [part.Path] : []));
    }

    // The entry of a path; null for the kind of a part, which is no entry of its own.
    private static FieldInfo? FieldOf(JsonObject car, string path)
    {
        (Type type, JsonNode? node, FieldInfo? found) = (typeof(VehicleDocument), car, null);
        foreach (string step in path.Split('.'))
        {
            string key = step.Split('[')[0];
            type = FieldMap.Kinds(type).FirstOrDefault(kind => kind.Name == node!["type"]?.ToString())?.Document ?? type;
            found = FieldMap.Of(type).FirstOrDefault(field => field.Key == key);
            node = step.Contains('[') ? node![key]![0] : node![key];
            type = found is null ? type : found.Shape == FieldShape.List ? FieldMap.ShapeOf(found.ValueType).ValueType : found.ValueType;
        }

        return found;
    }

    private static JsonObject Without(JsonObject car, string path, string? instead = null)
    {
        var changed = (JsonObject)car.DeepClone();
        string[] steps = path.Split('.');
        JsonNode parent = steps[..^1].Aggregate((JsonNode)changed, (node, step) =>
            step.Contains('[') ? node[step.Split('[')[0]]![0]! : node[step]!);
        ((JsonObject)parent).Remove(steps[^1]);
        if (instead is not null)
        {
            parent[steps[^1]] = instead;
        }

        return changed;
    }

    private static void Collect(JsonNode? node, List<(string Key, string Words)> listed)
    {
        if (node is JsonObject json)
        {
            foreach ((string key, JsonNode? value) in json)
            {
                if (value is JsonObject { } part && part["enum"] is JsonArray words)
                {
                    listed.Add((key, string.Join(", ", words.Select(word => word!.ToString()))));
                }

                Collect(value, listed);
            }
        }

        foreach (JsonNode? element in node as JsonArray ?? [])
        {
            Collect(element, listed);
        }
    }
}
