using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Vehicles;

public class CarFormTests
{
    public static TheoryData<string> Cars => [.. RepositoryFiles.Vehicles];

    [Theory]
    [MemberData(nameof(Cars))]
    public void Every_value_of_a_file_stands_in_its_form_under_the_path_of_the_reader(string file)
    {
        string text = File.ReadAllText(file);
        FormField[] fields = [.. Fields(CarForm.Of(text).Parts)];
        Assert.Equal(fields.Length, fields.Select(field => field.Path).Distinct().Count());
        using JsonDocument car = JsonDocument.Parse(text,
            new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        (string Path, string Value)[] leaves = [.. Leaves(car.RootElement, "").Where(leaf => !leaf.Path.EndsWith("type",
            StringComparison.Ordinal))];
        Assert.NotEmpty(leaves);
        Assert.All(leaves, leaf => Assert.Equal(leaf.Value, Assert.Single(fields, field => field.Path == leaf.Path).Value));
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void Filling_a_form_in_again_with_what_it_shows_changes_no_car(string file)
    {
        string text = File.ReadAllText(file);
        string before = text;
        foreach (FormField field in Fields(CarForm.Of(text).Parts).Where(field => field.Value.Length > 0))
        {
            text = VehicleText.Set(text, field.Path, field.Value);
        }

        Assert.True(JsonNode.DeepEquals(DocumentFile.Parse(before).Root, DocumentFile.Parse(text).Root));
        Assert.Equal(before.Count(letter => letter == '\n'), text.Count(letter => letter == '\n'));
    }

    [Fact]
    public void Entries_stand_in_the_order_of_the_starter_in_whatever_order_they_are_typed()
    {
        JsonNode starter = DocumentFile.Parse(StarterFile.Text("vacuum")).Root!;
        string text = VehicleText.Add("{\n  // mine\n  \"name\": \"My car\" // and its remark\n}\n", "loadCases");
        text = VehicleText.ChangeKind(VehicleText.ChangeKind(VehicleText.Add(text, "front"), "front.brake", "disc"), "assist", "vacuum");
        string[] paths =
        [
            "pedal.ratio", "front.brake.effectiveRadius", "front.brake.friction", "front.tyre.loadedRadius", "wheelbase",
            "loadCases[0].centreOfGravityHeight", "loadCases[0].name", "loadCases[0].mass", "assist.boostRatio", "assist.vacuum", "note",
        ];
        foreach (string path in paths)
        {
            text = VehicleText.Set(text, path, path.EndsWith("atio", StringComparison.Ordinal) ? "4" : "3 m");
        }

        Assert.Contains("{\n  // mine\n  \"name\": \"My car\", // and its remark\n  \"note\": \"3 m\",\n", text, StringComparison.Ordinal);
        InOrder(DocumentFile.Parse(text).Root!, starter);

        static void InOrder(JsonNode mine, JsonNode all)
        {
            if (mine is JsonArray list)
            {
                InOrder(list[0]!, all[0]!);
            }
            else if (mine is JsonObject part)
            {
                string[] keys = [.. part.Select(entry => entry.Key)];
                Assert.Equal(all.AsObject().Select(entry => entry.Key).Where(keys.Contains), keys);
                Assert.All(part, entry => InOrder(entry.Value!, all[entry.Key]!));
            }
        }
    }

    [Fact]
    public void A_car_known_by_its_class_only_shows_what_the_class_says_and_takes_any_of_it()
    {
        string text = VehicleText.New("track coupe");
        FormField wheelbase = Assert.Single(Fields(CarForm.Of(text).Parts), field => field.Path == "wheelbase");
        Assert.Equal(("", "2.45 m .. 2.70 m"), (wheelbase.Value, wheelbase.FromClass));
        Assert.NotNull(VehicleFile.TryRead(text).Reading);
        foreach ((string path, string value) in new[]
        {
            ("wheelbase", "2.5 m"), ("loadCases[0].mass", "1100 kg"), ("front.brake.pistonDiameters", "38 mm, 41.3 mm"),
            ("rear.tyre.loadedRadius", "12.2 in"),
        })
        {
            text = VehicleText.Set(text, path, value);
            Assert.Equal(value, Assert.Single(Fields(CarForm.Of(text).Parts), field => field.Path == path).Value);
        }

        VehicleReading reading = VehicleFile.Read(text, "test");
        Assert.Equal(2.5, reading.Vehicle.Wheelbase.Meters, 1e-12);
        Assert.Equal(1100, reading.Vehicle.LoadCases[0].Mass.Kilograms, 1e-9);
    }

    [Fact]
    public void Parts_are_added_empty_changed_in_kind_and_taken_out_and_comments_stay()
    {
        const string Start = "{\n  // my car\n  \"name\": \"x\",\n  \"carClass\": \"track coupe\" // chosen\n}\n";
        string text = VehicleText.ChangeKind(Start, "assist", "vacuum");
        Assert.Contains(VehicleFile.TryRead(text).Problems, problem => problem.Path == "pedal");
        text = VehicleText.Add(text, "pedal");
        text = VehicleText.Set(text, "pedal.ratio", "4.2");
        text = VehicleText.ChangeKind(text, "masterCylinder", "tandem");
        text = VehicleText.Set(text, "masterCylinder.bore", "7/8 in");
        text = VehicleText.Set(text, "assist.vacuum", "0.6 bar");
        text = VehicleText.ChangeKind(text, "assist", "none");
        Assert.DoesNotContain("0.6 bar", text, StringComparison.Ordinal);
        Assert.Empty(VehicleFile.TryRead(text).Problems);
        foreach (string part in (string[])["assist", "pedal", "masterCylinder"])
        {
            text = VehicleText.Remove(text, part);
        }

        Assert.Contains("// my car", text, StringComparison.Ordinal);
        Assert.Contains("// chosen", text, StringComparison.Ordinal);
        Assert.Null(VehicleFile.Read(text, "test").Vehicle.Control);
    }

    [Fact]
    public void A_list_grows_and_shrinks_by_elements()
    {
        string text = VehicleText.Add(VehicleText.Set(VehicleText.New("track coupe"), "loadCases[0].mass", "1100 kg"), "loadCases");
        Assert.Contains(VehicleFile.TryRead(text).Problems, problem => problem.Path == "loadCases[1].name");
        text = VehicleText.Set(text, "loadCases[1].name", "laden");
        Assert.Equal(2, VehicleFile.Read(text, "test").Vehicle.LoadCases.Length);
        Assert.Single(VehicleFile.Read(VehicleText.Remove(text, "loadCases[0]"), "test").Vehicle.LoadCases);
        Assert.Equal("laden", VehicleFile.Read(VehicleText.Remove(text, "loadCases[0]"), "test").Vehicle.LoadCases[0].Name);
    }

    [Fact]
    public void One_element_of_a_list_of_values_is_set_by_its_number()
    {
        string text = File.ReadAllText(RepositoryFiles.Vehicles.Single(file => Path.GetFileName(file) == "coupe-1960s.json"));
        string set = VehicleText.Set(text, "front.brake.pistonDiameters[0]", "50 mm");
        Assert.NotEqual(text, set);
        Assert.Empty(VehicleText.Lacking(set, [new("front.brake.pistonDiameters[0]", "50 mm")]));
        Assert.Single(VehicleText.Lacking(text, [new("front.brake.pistonDiameters[0]", "50 mm")]));
        Assert.Empty(VehicleFile.TryRead(set).Problems);
    }

    [Fact]
    public void A_value_is_set_by_the_paths_of_the_command_line_too()
    {
        string text = File.ReadAllText(RepositoryFiles.Vehicles.Single(file => Path.GetFileName(file) == "coupe-1960s.json"));
        string name = VehicleFile.Read(text, "test").Vehicle.LoadCases[^1].Name;
        foreach (var change in (ValueOverride[])[new($"loadCases[{name}].mass", "1801 kg"), new("conditions.highestAdhesion", "1.1")])
        {
            string set = VehicleText.Set(text, change.Path, change.Value);
            VehicleReading here = VehicleFile.Read(set, "test"), there = VehicleFile.Read(text, "test", change);
            Assert.NotEqual(text, set);
            Assert.Equal(there.Vehicle.LoadCases[^1].Mass, here.Vehicle.LoadCases[^1].Mass);
            Assert.Equal(there.Vehicle.Conditions.HighestAdhesion, here.Vehicle.Conditions.HighestAdhesion);
        }
    }

    [Fact]
    public void A_wrong_value_is_kept_as_it_was_typed_and_told_beside_its_entry()
    {
        string text = VehicleText.Set(VehicleText.New("track coupe"), "wheelbase", "two \"metres\" <b>");
        Assert.Equal("two \"metres\" <b>", Assert.Single(Fields(CarForm.Of(text).Parts), field => field.Path == "wheelbase").Value);
        Assert.Contains(VehicleFile.TryRead(text).Problems, problem => problem.Path == "wheelbase");
        Assert.Equal(text, VehicleText.Set(text, "nonsense.here", "1"));
        Assert.NotNull(CarForm.Of("{ no json").Problem);
    }

    [Fact]
    public void A_slider_reaches_half_of_its_value_either_way_within_what_is_accepted()
    {
        string text = VehicleText.Set(VehicleText.New("track coupe"), "wheelbase", "2.5 m .. 2.7 m");
        Slide wheelbase = Assert.Single(Fields(CarForm.Of(text).Parts), field => field.Path == "wheelbase").Slide!;
        Assert.Equal((1.3, 3.9, "m"), (wheelbase.Low, Math.Round(wheelbase.High, 12), wheelbase.Unit));
        text = VehicleText.Set(text, "loadCases[0].frontShare", "0.8");
        Slide share = Assert.Single(Fields(CarForm.Of(text).Parts), field => field.Path == "loadCases[0].frontShare").Slide!;
        Assert.Equal((0.4, 0.85, ""), (share.Low, share.High, share.Unit));
    }

    [Fact]
    public void Usual_range_and_class_value_speak_the_chosen_units_and_the_file_stays_as_written()
    {
        string text = VehicleText.Set(VehicleText.New("track coupe"), "front.tyre.loadedRadius", "12.2 in");
        FormField Of(string path, UnitSystem units) =>
            Assert.Single(Fields(CarForm.Of(text, units).Parts), field => field.Path == path);
        FormField wheelbase = Of("wheelbase", UnitSystem.Us);
        Assert.Equal(("96.5 in .. 106 in", "82.7 in .. 136 in", ""), (wheelbase.FromClass, wheelbase.Usual, wheelbase.Beside));
        FormField radius = Of("front.tyre.loadedRadius", UnitSystem.Si);
        Assert.Equal(("12.2 in", "310 mm", "275 mm .. 385 mm"), (radius.Value, radius.Beside, radius.Usual));
        text = File.ReadAllText(RepositoryFiles.Vehicles.Single(file => Path.GetFileName(file) == "coupe-1960s.json"));
        Assert.Equal("13.8 bar .. 62.1 bar", Of("hydraulics.rearValves[0].knee", UnitSystem.Si).Usual);
        Assert.Equal("200 psi .. 900 psi", Of("hydraulics.rearValves[0].knee", UnitSystem.Us).Usual);
    }

    [Fact]
    public void One_of_several_load_cases_bears_its_own_name()
    {
        string text = VehicleText.Set(VehicleText.New("track coupe"), "loadCases[0].mass", "1100 kg");
        text = VehicleText.Set(VehicleText.Add(text, "loadCases"), "loadCases[1].name", "laden");
        FormPart loads = Assert.Single(CarForm.Of(text).Parts, part => part.Path == "loadCases");
        Assert.Equal("Load case 2, laden", loads.Parts[1].Label);
    }

    private static IEnumerable<FormField> Fields(IEnumerable<FormPart> parts) =>
        parts.SelectMany(part => part.Fields.Concat(Fields(part.Parts)));

    private static IEnumerable<(string Path, string Value)> Leaves(JsonElement element, string path) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(entry => Leaves(entry.Value, DocumentReader.Join(path, entry.Name))),
        JsonValueKind.Array when element.EnumerateArray().FirstOrDefault().ValueKind != JsonValueKind.Object =>
            [(path, string.Join(", ", element.EnumerateArray().Select(one => one.ToString())))],
        JsonValueKind.Array => element.EnumerateArray().SelectMany((one, i) => Leaves(one, $"{path}[{i}]")),
        JsonValueKind.True or JsonValueKind.False => [(path, element.GetRawText())],
        _ => [(path, element.ToString())],
    };
}
