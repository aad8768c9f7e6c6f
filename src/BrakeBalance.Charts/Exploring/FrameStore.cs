using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Exploring;

/// <summary>Stores all states of an explorable: one in full, and of the others only what differs, each differing value once.</summary>
internal static class FrameStore
{
    /// <summary>The data of the page's script.</summary>
    public static JsonObject Of(Explorable explorable)
    {
        JsonObject[] states = new JsonObject[explorable.Frames.Count];
        Parallel.For(0, states.Length, index => states[index] = State(explorable, index));
        List<JsonNode[]> paths = [];
        Differences(states, [], paths);
        Dictionary<string, int> places = [];
        JsonArray pool = [];
        JsonArray frames = [.. states.Select(state => (JsonNode)new JsonArray([.. paths.Select(path => (JsonNode)Place(At(state, path)))]))];
        return new JsonObject
        {
            ["id"] = explorable.Id,
            ["controls"] = new JsonArray([.. explorable.Controls.Select(Control)]),
            ["start"] = explorable.StartIndex,
            ["frame"] = states[explorable.StartIndex],
            ["paths"] = new JsonArray([.. paths.Select(path => (JsonNode)new JsonArray([.. path.Select(step => step.DeepClone())]))]),
            ["pool"] = pool,
            ["frames"] = frames,
        };

        int Place(JsonNode? value)
        {
            string text = PlainJson.Text(value);
            if (!places.TryGetValue(text, out int place))
            {
                place = pool.Count;
                places.Add(text, place);
                pool.Add(value?.DeepClone());
            }

            return place;
        }
    }

    private static JsonObject Control(Control control)
    {
        var node = new JsonObject { ["id"] = control.Id, ["texts"] = new JsonArray([.. control.Settings.Select(text => JsonValue.Create(text))]) };
        if (control.FrameMilliseconds is { } play)
        {
            node["play"] = play;
        }

        return node;
    }

    private static JsonObject State(Explorable explorable, int index)
    {
        Frame frame = explorable.Frames[index];
        return new JsonObject
        {
            ["figures"] = new JsonArray([.. frame.Figures.Select(Figure)]),
            ["readouts"] = new JsonArray([.. frame.Readouts.Select(readout => JsonValue.Create(readout.Value))]),
            ["verdict"] = frame.Verdict?.Text,
            ["kind"] = frame.Verdict is { } verdict ? ControlHtml.Kind(verdict) : null,
            ["state"] = explorable.StateText(index),
        };
    }

    private static JsonObject Figure(Figure figure)
    {
        JsonObject state = HtmlRenderer.State(figure);
        FigureTable table = figure.Table;
        state["title"] = figure.Title;
        state["caption"] = figure.Caption;
        state["alt"] = figure.AltText;
        state["long"] = figure.LongDescription;
        var rows = Enumerable.Range(0, (int)table.Frame.Rows.Count).Select(row => table.Row(row)).ToList();
        state["table"] = new JsonObject
        {
            ["columns"] = new JsonArray([.. table.Columns.Select(name => JsonValue.Create(name))]),
            ["numeric"] = new JsonArray([.. table.Columns.Select((_, i) => JsonValue.Create(table.IsNumeric(i)))]),
            ["rows"] = new JsonArray([.. table.Columns.Select((_, i) => (JsonNode)new JsonArray([.. rows.Select(row => JsonValue.Create(row[i]))]))]),
        };
        return state;
    }

    /// <summary>Finds the paths below which states differ: objects and arrays of objects are entered, everything else is a leaf.</summary>
    private static void Differences(IReadOnlyList<JsonNode?> states, IReadOnlyList<JsonNode> path, List<JsonNode[]> paths)
    {
        string first = PlainJson.Text(states[0]);
        if (states.All(state => PlainJson.Text(state) == first))
        {
            return;
        }

        if (states.All(state => state is JsonObject) && SameKeys(states))
        {
            foreach (string key in ((JsonObject)states[0]!).Select(p => p.Key).ToList())
            {
                Differences([.. states.Select(state => state![key])], [.. path, JsonValue.Create(key)], paths);
            }
        }
        else if (states.All(state => state is JsonArray) && Entered(states))
        {
            for (int i = 0; i < ((JsonArray)states[0]!).Count; i++)
            {
                int at = i;
                Differences([.. states.Select(state => state![at])], [.. path, JsonValue.Create(i)], paths);
            }
        }
        else
        {
            paths.Add([.. path]);
        }
    }

    private static bool SameKeys(IReadOnlyList<JsonNode?> states)
    {
        var keys = ((JsonObject)states[0]!).Select(p => p.Key).ToList();
        return states.All(state => ((JsonObject)state!).Select(p => p.Key).SequenceEqual(keys));
    }

    private static bool Entered(IReadOnlyList<JsonNode?> states)
    {
        int count = ((JsonArray)states[0]!).Count;
        return states.All(state => ((JsonArray)state!).Count == count
            && ((JsonArray)state).All(item => item is JsonObject or JsonArray || item?.GetValueKind() == JsonValueKind.String));
    }

    private static JsonNode? At(JsonNode state, IReadOnlyList<JsonNode> path) =>
        path.Aggregate((JsonNode?)state, (node, step) => step.GetValueKind() == JsonValueKind.String ? node![step.GetValue<string>()] : node![step.GetValue<int>()]);
}
