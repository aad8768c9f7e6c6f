namespace BrakeBalance.Measurements;

/// <summary>What a column of a time series was taken for, and why.</summary>
/// <param name="Index">Place of the column, from 0.</param>
/// <param name="Name">Its name in the file.</param>
/// <param name="Meaning">What it was taken for.</param>
/// <param name="Unit">Its unit as this program writes it; empty for none, <c>clock</c> for a time of day.</param>
/// <param name="Reason">Why, in words.</param>
public sealed record LogColumn(int Index, string Name, ColumnMeaning Meaning, string Unit, string Reason)
{
    /// <summary>The meaning in words, as <see cref="ColumnChoice.Read"/> takes it.</summary>
    public string Words => ColumnChoice.WordsOf(Meaning);
}
