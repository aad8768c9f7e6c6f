namespace BrakeBalance.Vehicles.Files;

/// <summary>An entry of a form.</summary>
/// <param name="Path">Path of the entry in the file.</param>
/// <param name="Entry">What is known of it.</param>
/// <param name="Value">What the file says, a list parted by commas; empty when it says nothing.</param>
/// <param name="Beside">What the value is in the chosen system of units; empty where it is in them.</param>
/// <param name="FromClass">What the car's class says in its place, in the chosen system of units; empty for nothing.</param>
/// <param name="Usual">The usual range in the chosen system of units; empty for none.</param>
/// <param name="Slide">How far the value can be moved; null when it is no single number.</param>
/// <param name="Units">The chosen system of units.</param>
internal sealed record FormField(
    string Path, FieldInfo Entry, string Value, string Beside, string FromClass, string Usual, Slide? Slide, UnitSystem Units)
{
    /// <summary>What is told of it, in the chosen system of units.</summary>
    public string Told(string text) => OtherUnits.Within(text, Units, Entry);

    /// <summary>What it is called.</summary>
    public string Label => CarForm.Label(Entry.Key);
}
