using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Vehicles.Files;
using FsCheck;
using FsCheck.Fluent;

namespace BrakeBalance.Fuzz;

/// <summary>Files of any document type, changed in a few places.</summary>
internal static class FuzzDocuments
{
    private static readonly JsonDocumentOptions Lenient = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };
    private static readonly JsonSerializerOptions Written = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Changed files.</summary>
    /// <param name="kind">What they are, for the report.</param>
    /// <param name="type">Their document type.</param>
    /// <param name="sound">Files to change.</param>
    public static Gen<FuzzCase> Of(string kind, Type type, IReadOnlyList<string> sound)
    {
        (JsonObject Root, Place[] Places)[] bases =
            [.. sound.Select(text => (JsonObject)JsonNode.Parse(text, documentOptions: Lenient)!)
            .Select(root => (root, Places(root, type, []).ToArray()))];
        return from start in Gen.Elements(bases)
               from harsh in Gen.Choose(1, 100).Select(n => n > 65)
               from count in Gen.Frequency((9, Gen.Choose(1, 5)), (1, Gen.Choose(6, 25)))
               from edits in Gen.ArrayOf(Gen.Elements(start.Places).SelectMany(place => EditOf(place, harsh)), count)
               from end in harsh ? Gen.Frequency((6, Gen.Constant<Func<string, string>>(text => text)), (1, TextEdit()))
                   : Gen.Constant<Func<string, string>>(text => text)
               select new FuzzCase(kind, end(Apply(start.Root, edits)), string.Join("; ", edits.Select(edit => edit.ToString())));
    }

    private static string Apply(JsonObject root, Edit[] edits)
    {
        JsonNode changed = root.DeepClone();
        foreach (Edit edit in edits)
        {
            edit.Apply(changed);
        }

        return changed.ToJsonString(Written);
    }

    private static Gen<Edit> EditOf(Place place, bool harsh)
    {
        Gen<Edit> sound = FuzzValues.Sound(place.Field, place.Now).Select(value => new Edit(place.Path, EditKind.Set, value, 0));
        return harsh
            ? Gen.Frequency(
                (6, FuzzValues.Any(place.Field, place.Now).Select(value => new Edit(place.Path, EditKind.Set, value, 0))),
                (1, Gen.Constant(new Edit(place.Path, EditKind.Drop, null, 0))),
                (1, Gen.Elements(1, 2, 3000).Select(times => new Edit(place.Path, EditKind.Repeat, null, times))),
                (1, FuzzValues.Any(place.Field, place.Now)
                    .Select(value => new Edit([.. place.Path.SkipLast(1), "unknown"], EditKind.Set, value, 0))))
            : place.Field.About.Required
                ? sound : Gen.Frequency((8, sound), (1, Gen.Constant(new Edit(place.Path, EditKind.Drop, null, 0))));
    }

    private static Gen<Func<string, string>> TextEdit() =>
        from at in Gen.Choose(0, 1_000_000)
        from what in Gen.Choose(0, 7)
        select (Func<string, string>)(text =>
        {
            int i = at % text.Length;
            return what switch
            {
                0 => text[..i],
                1 => text.Insert(i, "\u0001"),
                2 => text.Insert(i, "\\ud800"),
                3 => text.Insert(i, "{"),
                4 => text.Insert(i, new string('[', 5000)),
                5 => "\uFEFF" + text,
                6 => text.Replace("\"name\"", "\"name\": \"twice\", \"name\"", StringComparison.Ordinal),
                _ => text.Remove(i, Math.Min(7, text.Length - i)),
            };
        });

    // Every entry that stands in the file, and every one that could.
    private static IEnumerable<Place> Places(JsonObject json, Type type, object[] path)
    {
        IReadOnlyList<KindAttribute> kinds = FieldMap.Kinds(type);
        Type kind = kinds.Count == 0 ? type : kinds.FirstOrDefault(k => k.Name == (string?)json["type"])?.Document ?? kinds[0].Document;
        foreach (FieldInfo field in FieldMap.Of(kind))
        {
            JsonNode? now = json[field.Key];
            object[] here = [.. path, field.Key];
            yield return new Place(here, field, now);
            IEnumerable<Place> inner = (field.Shape, now) switch
            {
                (FieldShape.Document, JsonObject child) => Places(child, field.ValueType, here),
                (FieldShape.List, JsonArray list) when FieldMap.ShapeOf(field.ValueType) is (FieldShape.Document, var element) =>
                    list.Index().Where(item => item.Item is JsonObject)
                        .SelectMany(item => Places((JsonObject)item.Item!, element, [.. here, item.Index])),
                _ => [],
            };
            foreach (Place place in inner)
            {
                yield return place;
            }
        }
    }

    private enum EditKind
    {
        Set,
        Drop,
        Repeat,
    }

    private sealed record Place(object[] Path, FieldInfo Field, JsonNode? Now);

    private sealed record Edit(object[] Path, EditKind Kind, JsonNode? Value, int Times)
    {
        private const int Shown = 80;

        public void Apply(JsonNode root)
        {
            JsonNode? node = root;
            foreach (object step in Path.SkipLast(1))
            {
                node = (node, step) switch
                {
                    (JsonObject json, string key) => json[key],
                    (JsonArray list, int index) when index < list.Count => list[index],
                    _ => null,
                };
            }

            if (node is not JsonObject parent)
            {
                return;
            }

            string name = (string)Path[^1];
            if (Kind == EditKind.Drop)
            {
                parent.Remove(name);
            }
            else if (Kind == EditKind.Set)
            {
                parent[name] = Value?.DeepClone();
            }
            else if (parent[name] is JsonArray { Count: > 0 } array)
            {
                for (int i = 0; i < Times; i++)
                {
                    array.Add(array[0]?.DeepClone());
                }
            }
        }

        public override string ToString()
        {
            string value = Value?.ToJsonString() ?? "null";
            string edit = Kind switch
            {
                EditKind.Drop => "dropped",
                EditKind.Repeat => $"+{Times}",
                _ => "= " + (value.Length > Shown ? value[..Shown] + "…" : value),
            };
            return $"{string.Join('.', Path)} {edit}";
        }
    }
}
