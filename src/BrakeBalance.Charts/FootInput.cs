namespace BrakeBalance.Charts;

/// <summary>The car of the notebooks on pedal, assist and travel.</summary>
/// <param name="Vehicle">The car; it says what lies between foot and line pressure, and how much fluid its circuits displace.</param>
/// <param name="Note">Which car it is, and why when it is not the one asked for.</param>
/// <param name="IsAsked">Whether it is the one asked for.</param>
public sealed record FootInput(Vehicle Vehicle, string Note, bool IsAsked)
{
    /// <summary>The car asked for, or the invented one in its place when its file does not go as far as the foot.</summary>
    /// <param name="input">What the notebook is run for; <see cref="NotebookInput.Current"/> unless said.</param>
    /// <returns>The car and a note.</returns>
    public static FootInput Load(NotebookInput? input = null)
    {
        Vehicle asked = (input ?? NotebookInput.Current).Load().Vehicle;
        string? lacks = asked.Control is null ? "pedal, assist and masterCylinder" : asked.Control.Circuits is null ? "fluid" : null;
        if (lacks is null)
        {
            return new(asked, $"{asked.Name}: {asked.Note}", true);
        }

        Vehicle stand = NotebookInput.Example.Load().Vehicle;
        return new(stand, $"The file of \"{asked.Name}\" does not give {lacks}, so \"{stand.Name}\" stands in for it here. Add "
            + $"{lacks} to the file to see your own car. {stand.Note}", false);
    }
}
