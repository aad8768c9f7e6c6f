namespace BrakeBalance.Charts.Exploring;

/// <summary>One combination of settings of the controls.</summary>
public sealed class Selection
{
    private readonly IReadOnlyList<Control> _controls;
    private readonly IReadOnlyList<int> _places;

    internal Selection(IReadOnlyList<Control> controls, IReadOnlyList<int> places)
    {
        _controls = controls;
        _places = places;
    }

    /// <summary>The place of the setting of a control.</summary>
    /// <param name="control">The control's id.</param>
    /// <returns>Its place among the control's settings, from 0.</returns>
    /// <exception cref="ArgumentException">There is no such control.</exception>
    public int this[string control] => _controls.Index().FirstOrDefault(one => one.Item.Id == control) is (var place, not null)
        ? _places[place]
        : throw new ArgumentException($"There is no control '{control}'; there are {string.Join(", ", _controls.Select(c => c.Id))}.",
            nameof(control));

    /// <summary>The settings in words: <c>Knee 38 bar, load driver only</c>.</summary>
    public string Words => string.Join(", ",
        _controls.Select((control, i) => $"{control.Label.ToLowerInvariant()} {control.Settings[_places[i]]}"));
}
