namespace BrakeBalance.Notebooks.Pages;

/// <summary>Something in a notebook that a page cannot show as it was meant.</summary>
internal sealed record PageProblem(string Notebook, string CellId, string Message)
{
    /// <summary>One line that names notebook and cell.</summary>
    public override string ToString() => $"{Notebook}, cell {CellId}: {Message}";
}
