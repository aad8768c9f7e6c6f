using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Exploring;

/// <summary>Stores all states of an explorable: one in full, and of the others only what differs, each differing value once.</summary>
internal static class FrameStore
{
    /// <summary>The most points of a line in a state.</summary>
    private const int PointLimit = 40;

    /// <summary>The data of the page's script.</summary>
    public static JsonObject Of(Explorable explorable)
    {
        // Labels would rather stay where they are in the state shown first, so that they do not jump about.
        var before = explorable.Start.Figures.Select(figure => PlotlyRenderer.Layouts(figure)).ToList();
        JsonObject[] states = new JsonObject[explorable.Frames.Count];

        // A figure that several states share is laid out once.
        var drawn = new ConcurrentDictionary<(Figure Figure, int Place), Lazy<JsonObject>>(new SameFigure());
        Parallel.For(0, states.Length, index => states[index] = State(explorable, index, (figure, place) =>
            (JsonObject)drawn.GetOrAdd((figure, place), _ => new(() => Figure(figure, before[place]))).Value.DeepClone()));
        Align(states);
        List<(JsonNode[] Path, string[] Leaves)> differing = [];
        Differences(states, [], differing);
        Dictionary<string, int> places = [];
        JsonArray pool = [];
        int[] sizes = [.. explorable.Controls.Select(control => control.Settings.Count)];
        var paths = new JsonArray();
        foreach ((JsonNode[] path, string[] leaves) in differing)
        {
            int[] values = [.. leaves.Select(Place)];
            int[] controls = [.. Enumerable.Range(0, sizes.Length).Where(control => Matters(values, sizes, control))];
            paths.Add(new JsonObject
            {
                ["p"] = new JsonArray([.. path.Select(step => step.DeepClone())]),
                ["c"] = new JsonArray([.. controls.Select(control => JsonValue.Create(control))]),
                ["v"] = new JsonArray([.. Reduced(values, sizes, controls).Select(value => JsonValue.Create(value))]),
            });
        }

        return new JsonObject
        {
            ["id"] = explorable.Id,
            ["controls"] = new JsonArray([.. explorable.Controls.Select(Control)]),
            ["start"] = explorable.StartIndex,
            ["frame"] = states[explorable.StartIndex],
            ["paths"] = paths,
            ["pool"] = pool,
        };

        int Place(string text)
        {
            if (!places.TryGetValue(text, out int place))
            {
                place = pool.Count;
                places.Add(text, place);
                pool.Add(JsonNode.Parse(text));
            }

            return place;
        }
    }

    /// <summary>Gives the traces and the labels of a figure the same places in all states: by name, null where a state has none.</summary>
    private static void Align(JsonObject[] states)
    {
        for (int figure = 0; figure < ((JsonArray)states[0]["figures"]!).Count; figure++)
        {
            int at = figure;
            var parts = states.Select(state => (JsonObject)state["figures"]![at]!).ToList();
            Align([.. parts.Select(part => (Holder: part, Key: "data"))]);
            Align([.. parts.Select(part => (Holder: (JsonObject)part["wide"]!, Key: "annotations"))]);
            Align([.. parts.Select(part => (Holder: (JsonObject)part["narrow"]!, Key: "annotations"))]);
        }
    }

    private static void Align(IReadOnlyList<(JsonObject Holder, string Key)> arrays)
    {
        List<string> names = [];
        foreach ((JsonObject holder, string key) in arrays)
        {
            int after = -1;
            foreach (string name in Names((JsonArray)holder[key]!))
            {
                int known = names.IndexOf(name);
                if (known < 0)
                {
                    names.Insert(after + 1, name);
                    known = after + 1;
                }

                after = known;
            }
        }

        foreach ((JsonObject holder, string key) in arrays)
        {
            var array = (JsonArray)holder[key]!;
            var byName = Names(array).Zip(array).ToDictionary(item => item.First, item => item.Second);
            array.Clear();
            holder[key] = new JsonArray([.. names.Select(name => byName.GetValueOrDefault(name))]);
        }
    }

    /// <summary>The names of the items, made different where they are not.</summary>
    private static IReadOnlyList<string> Names(JsonArray array)
    {
        Dictionary<string, int> seen = [];
        return [.. array.Select(item =>
        {
            string name = item!["name"]!.GetValue<string>();
            int count = seen[name] = seen.GetValueOrDefault(name) + 1;
            return count == 1 ? name : FormattableString.Invariant($"{name} {count}");
        })];
    }

    /// <summary>Whether a value changes with a control while the others rest.</summary>
    private static bool Matters(int[] values, int[] sizes, int control)
    {
        int stride = sizes.Skip(control + 1).Aggregate(1, (product, size) => product * size);
        return Enumerable.Range(0, values.Length).Any(index => values[index] != values[index - index / stride % sizes[control] * stride]);
    }

    /// <summary>The values over the combinations of the controls that matter only.</summary>
    private static IEnumerable<int> Reduced(int[] values, int[] sizes, int[] controls)
    {
        for (int index = 0; index < values.Length; index++)
        {
            int rest = index;
            bool first = true;
            for (int control = sizes.Length - 1; control >= 0; control--)
            {
                (rest, int place) = Math.DivRem(rest, sizes[control]);
                first &= place == 0 || controls.Contains(control);
            }

            if (first)
            {
                yield return values[index];
            }
        }
    }

    private static JsonObject Control(Control control)
    {
        var node = new JsonObject
        {
            ["id"] = control.Id,
            ["label"] = control.Label.ToLowerInvariant(),
            ["texts"] = new JsonArray([.. control.Settings.Select(text => JsonValue.Create(text))])
        };
        if (control.FrameMilliseconds is { } play)
        {
            node["play"] = play;
        }

        return node;
    }

    private static JsonObject State(Explorable explorable, int index, Func<Figure, int, JsonObject> draw)
    {
        Frame frame = explorable.Frames[index];
        return new JsonObject
        {
            ["figures"] = new JsonArray([.. frame.Figures.Select(draw)]),
            ["readouts"] = new JsonArray([.. frame.Readouts.Select(readout => JsonValue.Create(readout.Value))]),
            ["verdict"] = frame.Verdict?.Text,
            ["kind"] = frame.Verdict is { } verdict ? ControlHtml.Kind(verdict) : null,
        };
    }

    private static JsonObject Figure(Figure figure, (FigureLayout Wide, FigureLayout Narrow) before)
    {
        JsonObject state = HtmlRenderer.State(figure, PlotlyRenderer.Layouts(figure, before), PointLimit);
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
            ["rows"] = new JsonArray(
                [.. table.Columns.Select((_, i) => (JsonNode)new JsonArray([.. rows.Select(row => JsonValue.Create(row[i]))]))]),
        };
        return state;
    }

    /// <summary>
    /// Finds the leaves in which states differ: objects and arrays of objects or arrays are entered, everything else is a leaf.
    /// </summary>
    private static void Differences(IReadOnlyList<JsonNode?> states, IReadOnlyList<JsonNode> path,
        List<(JsonNode[] Path, string[] Leaves)> differing)
    {
        if (states.All(state => state is JsonObject) && SameKeys(states))
        {
            foreach (string key in ((JsonObject)states[0]!).Select(p => p.Key).ToList())
            {
                Differences([.. states.Select(state => state![key])], [.. path, JsonValue.Create(key)], differing);
            }
        }
        else if (states.All(state => state is JsonArray) && Entered(states))
        {
            for (int i = 0; i < ((JsonArray)states[0]!).Count; i++)
            {
                int at = i;
                Differences([.. states.Select(state => state![at])], [.. path, JsonValue.Create(i)], differing);
            }
        }
        else
        {
            string[] leaves = [.. states.Select(PlainJson.Text)];
            if (leaves.Any(leaf => leaf != leaves[0]))
            {
                differing.Add(([.. path], leaves));
            }
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
            && ((JsonArray)state).All(item => item is null or JsonObject or JsonArray));
    }

    private sealed class SameFigure : IEqualityComparer<(Figure Figure, int Place)>
    {
        public bool Equals((Figure Figure, int Place) x, (Figure Figure, int Place) y) =>
            ReferenceEquals(x.Figure, y.Figure) && x.Place == y.Place;

        public int GetHashCode((Figure Figure, int Place) key) =>
            HashCode.Combine(System.Runtime.CompilerServices.RuntimeHelpers.GetHashCode(key.Figure), key.Place);
    }
}
