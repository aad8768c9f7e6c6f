using System.Text.Json.Nodes;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Exploring;

/// <summary>Figures with controls. A state is computed when it is asked for.</summary>
/// <remarks>
/// <para>A page shows the state at the start, and asks the calculation assembly that it carries for every other one. One set of controls
/// may drive several figures. How to make one:</para>
/// <code>
/// var explorable = Explorable.Of(
///     "knee", [Control.Slider("knee", "Knee", Measure.LinePressure, knees, start: 8)],
///     settings => new Frame(
///         [BrakeForces(results[settings["knee"]])],
///         [new Readout("Locks first", results[settings["knee"]].First)]));
/// </code>
/// </remarks>
public sealed class Explorable : IHtmlOutput
{
    private readonly Func<Selection, Frame> _frame;
    private readonly Lazy<Frame> _start;
    private readonly Lazy<IReadOnlyList<Frame>> _frames;
    private JsonObject? _request;

    private Explorable(string id, IReadOnlyList<Control> controls, Func<Selection, Frame> frame)
    {
        Id = id;
        Controls = controls;
        _frame = frame;
        _start = new(() => At([.. controls.Select(control => control.Start)]));
        _frames = new(() =>
        {
            var all = new Frame[controls.Aggregate(1, (product, control) => product * control.Settings.Count)];
            Parallel.For(0, all.Length, index => all[index] = At(Places(index)));
            return all;
        });
    }

    /// <summary>A short name, unique in a page.</summary>
    public string Id { get; }

    /// <summary>The controls.</summary>
    public IReadOnlyList<Control> Controls { get; }

    /// <summary>The state at the start.</summary>
    public Frame Start => _start.Value;

    /// <summary>All states, each computed; the setting of the last control changes fastest.</summary>
    public IReadOnlyList<Frame> Frames => _frames.Value;

    /// <summary>Makes one.</summary>
    /// <param name="id">A short name: lower-case letters, digits and hyphens.</param>
    /// <param name="controls">The controls.</param>
    /// <param name="frame">The state for a combination of settings; may be called from several threads at once.</param>
    /// <returns>The explorable.</returns>
    /// <exception cref="ArgumentException">There are no controls.</exception>
    public static Explorable Of(string id, IReadOnlyList<Control> controls, Func<Selection, Frame> frame) => controls.Count > 0
        ? new Explorable(id, controls, frame)
        : throw new ArgumentException($"The explorable '{id}' needs at least one control.", nameof(controls));

    /// <summary>The state for settings of the controls.</summary>
    /// <param name="places">The place of each control's setting, in the order of the controls.</param>
    /// <returns>The state.</returns>
    public Frame At(IReadOnlyList<int> places) => _frame(new Selection(Controls, places));

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture, $"<div class=\"bb-explorable\" id=\"{Id}\">\n");
        html.Append(ExplorableHtml.Controls(this)).Append("<div class=\"bb-shown\">\n")
            .Append(ExplorableHtml.State(Start, StateText(null), size: null)).Append("</div>\n");
        if (_request is not null)
        {
            html.Append("<script type=\"application/json\" class=\"bb-ask\">").Append(PlainJson.Text(_request)).Append("</script>\n");
        }

        return html.Append("</div>\n").ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText()
    {
        var text = new StringBuilder();
        text.Append(StateText(null)).Append('\n');
        foreach (Readout readout in Start.Readouts)
        {
            text.Append(readout.Label).Append(": ").Append(readout.Value).Append('\n');
        }

        if (Start.Verdict is { } verdict)
        {
            text.Append(verdict.Text).Append('\n');
        }

        return text.AppendJoin('\n', Start.Figures.Select(figure => figure.ToPlainText())).ToString();
    }

    /// <summary>Says by which name, and from what, a page can make this explorable again; without a source it stays as it is.</summary>
    internal Explorable Again(string name, UnitSystem units, object? read, params ReadOnlySpan<(string Key, JsonNode? Value)> more)
    {
        SourceText? source = read is null ? null : SourceText.Of(read);
        if (read is not null && source is null)
        {
            return this;
        }

        var request = new JsonObject { ["do"] = "explore", ["name"] = name, ["id"] = Id, ["units"] = units == UnitSystem.Us ? "us" : "si" };
        foreach ((string key, JsonNode? value) in more)
        {
            request[key] = value;
        }

        if (source is not null)
        {
            request["text"] = source.Text;
            request["set"] = new JsonArray([.. source.Set.Select(one => (JsonNode)new JsonArray(one.Path, one.Value))]);
            request["logs"] = new JsonObject(source.Logs.Select(log => KeyValuePair.Create(log.Key, (JsonNode?)log.Value)));
        }

        _request = request;
        return this;
    }

    /// <summary>Which settings are shown; null for those at the start.</summary>
    internal string StateText(IReadOnlyList<int>? places) =>
        $"Shown: {new Selection(Controls, places ?? [.. Controls.Select(control => control.Start)]).Words}.";

    private int[] Places(int index)
    {
        int[] places = new int[Controls.Count];
        for (int c = Controls.Count - 1; c >= 0; c--)
        {
            (index, places[c]) = Math.DivRem(index, Controls[c].Settings.Count);
        }

        return places;
    }
}
