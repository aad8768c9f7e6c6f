namespace BrakeBalance.Notebooks.Pages;

/// <summary>Something in a notebook that a page cannot show as it was meant.</summary>
/// <param name="Notebook">The notebook's name.</param>
/// <param name="CellId">The id of the cell.</param>
/// <param name="Message">What is wrong, in words.</param>
internal sealed record PageProblem(string Notebook, string CellId, string Message)
{
    /// <summary>One line that names notebook and cell.</summary>
    /// <returns>Notebook, cell and message.</returns>
    public override string ToString() => $"{Notebook}, cell {CellId}: {Message}";
}
