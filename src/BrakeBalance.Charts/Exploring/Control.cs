namespace BrakeBalance.Charts.Exploring;

/// <summary>Something the reader of a page moves: a slider, a choice, a clock.</summary>
public sealed record Control
{
    private Control()
    {
    }

    /// <summary>A short name: lower-case letters, digits and hyphens.</summary>
    public required string Id { get; init; }

    /// <summary>What it sets, in words.</summary>
    public required string Label { get; init; }

    /// <summary>The settings as text with unit, in order.</summary>
    public required IReadOnlyList<string> Settings { get; init; }

    /// <summary>The setting at the start, as its place in <see cref="Settings"/>.</summary>
    public required int Start { get; init; }

    /// <summary>Whether it is shown as a slider; otherwise as a list.</summary>
    public required bool IsSlider { get; init; }

    /// <summary>Milliseconds a frame lasts when played; null when it cannot be played.</summary>
    public int? FrameMilliseconds { get; init; }

    /// <summary>Whether it plays once by itself when it is first in sight; never for readers who asked for less motion.</summary>
    public bool PlaysItself { get; init; }

    /// <summary>A slider over numbers.</summary>
    /// <param name="id">A short name.</param>
    /// <param name="label">What it sets, in words.</param>
    /// <param name="measure">The measure of the numbers.</param>
    /// <param name="values">The numbers in SI, or quantities.</param>
    /// <param name="start">The place of the number at the start.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Control Slider(string id, string label, Measure measure, Series values, int start, UnitSystem? units = null) =>
        Checked(new Control
        {
            Id = id,
            Label = label,
            Settings = [.. values.Values.Select(value => measure.Text(value, units ?? Display.Units))],
            Start = start,
            IsSlider = true,
        });

    /// <summary>A slider over settings named in words, such as load cases from light to heavy.</summary>
    /// <param name="id">A short name.</param>
    /// <param name="label">What it sets, in words.</param>
    /// <param name="settings">The settings in order.</param>
    /// <param name="start">The place of the setting at the start.</param>
    public static Control Slider(string id, string label, IEnumerable<string> settings, int start) =>
        Checked(new Control { Id = id, Label = label, Settings = [.. settings], Start = start, IsSlider = true });

    /// <summary>A choice from a list.</summary>
    /// <param name="id">A short name.</param>
    /// <param name="label">What it sets, in words.</param>
    /// <param name="settings">The settings.</param>
    /// <param name="start">The place of the setting at the start.</param>
    public static Control Choice(string id, string label, IEnumerable<string> settings, int start = 0) =>
        Checked(new Control { Id = id, Label = label, Settings = [.. settings], Start = start, IsSlider = false });

    /// <summary>A clock: a slider over moments with a button that plays them.</summary>
    /// <param name="id">A short name.</param>
    /// <param name="moments">The moments in seconds.</param>
    /// <param name="frameMilliseconds">How long a frame lasts when played.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Control Clock(string id, Series moments, int frameMilliseconds = 100, UnitSystem? units = null) =>
        Slider(id, "Time", Measure.Time, moments, 0, units) with { FrameMilliseconds = frameMilliseconds };

    private static Control Checked(Control control) =>
        control.Settings.Count > 0 && control.Start >= 0 && control.Start < control.Settings.Count
            ? control
            : throw new ArgumentException(
                Invariant.Text($"The control '{control.Id}' has {control.Settings.Count} settings and starts at {control.Start}."));
}
