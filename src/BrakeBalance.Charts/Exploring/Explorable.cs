namespace BrakeBalance.Charts.Exploring;

/// <summary>Figures with controls, all of whose states were computed beforehand.</summary>
/// <remarks>
/// <para>The page's script picks a state; it computes nothing. Only what differs between states is stored more than once.
/// One set of controls may drive several figures. How to make one:</para>
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
    /// <summary>The most combinations of settings an explorable may have.</summary>
    public const int CombinationLimit = 3000;

    private readonly IReadOnlyList<Frame> _frames;
    private readonly IReadOnlyList<string> _words;
    private readonly int _start;

    private Explorable(string id, IReadOnlyList<Control> controls, IReadOnlyList<Frame> frames, IReadOnlyList<string> words, int start)
    {
        Id = id;
        Controls = controls;
        _frames = frames;
        _words = words;
        _start = start;
    }

    /// <summary>A short name, unique in a page.</summary>
    public string Id { get; }

    /// <summary>The controls.</summary>
    public IReadOnlyList<Control> Controls { get; }

    /// <summary>The state at the start.</summary>
    public Frame Start => _frames[_start];

    /// <summary>All states; the setting of the last control changes fastest.</summary>
    public IReadOnlyList<Frame> Frames => _frames;

    /// <summary>Computes every state.</summary>
    /// <param name="id">A short name: lower-case letters, digits and hyphens.</param>
    /// <param name="controls">The controls.</param>
    /// <param name="frame">The state for a combination of settings; may be called from several threads at once.</param>
    /// <returns>The explorable.</returns>
    /// <exception cref="ArgumentException">There are no controls, too many combinations, or states that do not match.</exception>
    public static Explorable Of(string id, IReadOnlyList<Control> controls, Func<Selection, Frame> frame)
    {
        int count = controls.Aggregate(1, (product, control) => product * control.Settings.Count);
        if (controls.Count == 0 || count > CombinationLimit)
        {
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture,
                $"The explorable '{id}' needs at least one control and at most {CombinationLimit} combinations; "
                    + $"it has {controls.Count} and {count}."));
        }

        var selections = Enumerable.Range(0, count).Select(index => new Selection(controls, Places(controls, index))).ToList();
        var frames = new Frame[count];
        Parallel.For(0, count, index => frames[index] = frame(selections[index]));
        int odd = Array.FindIndex(frames, f =>
            !f.Figures.Select(figure => figure.Id).SequenceEqual(frames[0].Figures.Select(figure => figure.Id))
            || !f.Readouts.Select(readout => readout.Label).SequenceEqual(frames[0].Readouts.Select(readout => readout.Label)));
        if (odd >= 0)
        {
            throw new ArgumentException(
                $"The explorable '{id}' shows other figures or readouts for '{selections[odd].Words}' than for '{selections[0].Words}'.",
                    nameof(frame));
        }

        int start = controls.Aggregate(0, (index, control) => index * control.Settings.Count + control.Start);
        return new Explorable(id, controls, frames, [.. selections.Select(selection => selection.Words)], start);
    }

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder();
        html.Append(CultureInfo.InvariantCulture, $"<div class=\"bb-explorable\" id=\"{Id}\">\n");
        ControlHtml.Controls(html, this);
        ControlHtml.Answers(html, Start);
        foreach (Figure figure in Start.Figures)
        {
            HtmlRenderer.Figure(html, figure, StateText(_start));
        }

        html.Append(HtmlRenderer.Script(Id, FrameStore.Of(this)));
        return html.Append("</div>\n").ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText()
    {
        var text = new StringBuilder();
        text.Append(StateText(_start)).Append('\n');
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

    internal int StartIndex => _start;

    internal string StateText(int index) => $"Shown: {_words[index]}.";

    private static int[] Places(IReadOnlyList<Control> controls, int index)
    {
        int[] places = new int[controls.Count];
        for (int c = controls.Count - 1; c >= 0; c--)
        {
            (index, places[c]) = Math.DivRem(index, controls[c].Settings.Count);
        }

        return places;
    }
}
