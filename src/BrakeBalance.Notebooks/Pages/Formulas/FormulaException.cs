namespace BrakeBalance.Notebooks.Pages.Formulas;

/// <summary>A formula that the converter cannot set: what is wrong and where in the formula.</summary>
/// <param name="problem">What is wrong, in words.</param>
/// <param name="formula">The whole formula.</param>
/// <param name="position">Where in the formula, counted in characters from 0.</param>
internal sealed class FormulaException(string problem, string formula, int position)
    : FormatException($"{problem} at character {position + 1} of the formula \"{formula}\".")
{
    /// <summary>What is wrong, without the place.</summary>
    public string Problem { get; } = problem;

    public string Formula { get; } = formula;

    /// <summary>Where in the formula, counted in characters from 0.</summary>
    public int Position { get; } = position;
}
