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
    private readonly Func<string, string> _written;
    private JsonObject? _request;

    private Explorable(string id, IReadOnlyList<Control> controls, Func<Selection, Frame> frame, Func<string, string> written)
    {
        _written = written;
        Id = id;
        Controls = controls;
        _frame = frame;
        _start = new(() => At(AtStart));
    }

    /// <summary>A short name, unique in a page.</summary>
    public string Id { get; }

    /// <summary>The controls.</summary>
    public IReadOnlyList<Control> Controls { get; }

    /// <summary>The state at the start.</summary>
    public Frame Start => _start.Value;

    /// <summary>Makes one.</summary>
    /// <param name="id">A short name: lower-case letters, digits and hyphens.</param>
    /// <param name="controls">The controls.</param>
    /// <param name="frame">The state for a combination of settings; may be called from several threads at once.</param>
    /// <param name="written">Writes a piece of a page as its publisher does; null as it is.</param>
    /// <exception cref="ArgumentException">There are no controls.</exception>
    public static Explorable Of(
        string id, IReadOnlyList<Control> controls, Func<Selection, Frame> frame, Func<string, string>? written = null) =>
        controls.Count > 0 ? new Explorable(id, controls, frame, written ?? (piece => piece))
        : throw new ArgumentException($"The explorable '{id}' needs at least one control.", nameof(controls));

    /// <summary>The state for settings of the controls.</summary>
    /// <param name="places">The place of each control's setting, in the order of the controls.</param>
    public Frame At(IReadOnlyList<int> places) => _frame(new Selection(Controls, places));

    /// <inheritdoc/>
    public string ToHtml() => ToHtml(null);

    /// <summary>The same beside another on its page: what both ask with, such as the car's file, stands with that one only.</summary>
    /// <param name="like">The one above it, which asks with the same names; null for none.</param>
    public string ToHtml(Explorable? like)
    {
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture, $"<div class=\"bb-explorable\" id=\"{Id}\">\n");
        html.Append(ExplorableHtml.Controls(this)).Append(ExplorableHtml.Still(this))
            .Append("<div class=\"bb-shown\">\n").Append(StateHtml(AtStart, size: null)).Append("</div>\n");
        if (_request is not null)
        {
            JsonObject asked = like?._request is not { } other ? _request : new([new("like", like.Id),
                .. _request.Where(one => !JsonNode.DeepEquals(one.Value, other[one.Key]))
                    .Select(one => KeyValuePair.Create(one.Key, one.Value?.DeepClone()))]);
            html.Append("<script type=\"application/json\" class=\"bb-ask\">").Append(PlainJson.Text(asked)).Append("</script>\n");
        }

        return html.Append("</div>\n").ToString();
    }

    /// <summary>What explorables wrote for a notebook client, as an exported page says it: there the controls need scripts only.</summary>
    /// <param name="body">The page's body.</param>
    public static string Exported(string body) =>
        body.Replace(ExplorableHtml.InClient, "need scripts, which are off in this browser.", StringComparison.Ordinal);

    /// <inheritdoc/>
    public string ToPlainText()
    {
        var text = new StringBuilder();
        text.Append(StateText(AtStart)).Append('\n');
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

    internal string StateHtml(IReadOnlyList<int> places, FigureSize? size) =>
        _written(ExplorableHtml.State(places.SequenceEqual(AtStart) ? Start : At(places), StateText(places), size));

    /// <summary>The same controls over other states, made of its own.</summary>
    internal Explorable Shown(Func<Frame, Frame> other) => new(Id, Controls, state => other(_frame(state)), _written);

    /// <summary>Says by which name, and with what, a page can make this explorable again.</summary>
    internal Explorable Again(string name, UnitSystem units, params ReadOnlySpan<(string Key, JsonNode? Value)> more)
    {
        _request = new() { ["do"] = "explore", ["name"] = name, ["id"] = Id, ["units"] = units == UnitSystem.Us ? "us" : "si" };
        foreach ((string key, JsonNode? value) in more)
        {
            _request[key] = value;
        }

        return this;
    }

    /// <summary>The same from what a file was read into; where no source is known of it, the explorable stays as it is.</summary>
    internal Explorable AgainFrom(object read, string name, UnitSystem units, params ReadOnlySpan<(string Key, JsonNode? Value)> more) =>
        SourceText.Of(read) is not { } source ? this : Again(name, units,
        [
            ("text", source.Text),
            ("set", new JsonArray([.. source.Set.Select(one => (JsonNode)new JsonArray(one.Path, one.Value))])),
            ("logs", new JsonObject(source.Logs.Select(log => KeyValuePair.Create(log.Key, (JsonNode?)log.Value)))),
            .. more,
        ]);

    internal string StateText(IReadOnlyList<int> places) => $"Shown: {new Selection(Controls, places).Words}.";

    private int[] AtStart => [.. Controls.Select(control => control.Start)];
}
