namespace BrakeBalance.Notebooks.Publishing;

/// <summary>Where more is said about a common question.</summary>
/// <param name="Notebooks">Numbers of the notebooks that treat it, such as <c>03</c>.</param>
/// <param name="Commands">Commands that do, without the program's name.</param>
internal sealed record QuestionPointers(IReadOnlyList<string> Notebooks, IReadOnlyList<string> Commands)
{
    private static readonly QuestionPointers[] All =
    [
        To("03"), To("03"), To("03", "bench"), To("03"), To("03"), To("08", "bench"), To("03"), To("03"),
        To("03"), To("03"), To("02"), To("04"), To("04", "bench"), To("03"),
        new(["01", "02"], ["measure bands"]), To("05", "measure setting"), To("01"), To("01"), To("04"), To("05", "measure gauges"),
        new(["01", "06"], []), To("02"),
        To("01"), To("02"), To("01"), To("07", "stops"), To("02", "measure setting"),
    ];

    public string Words => string.Join(", ", (IEnumerable<string>)
    [
        (Notebooks.Count == 1 ? "notebook " : "notebooks ") + string.Join(" and ", Notebooks),
        .. Commands.Select(command => "command " + command),
    ]);

    /// <summary>Where more is said about a question.</summary>
    public static QuestionPointers Of(int question) => All[question - 1];

    private static QuestionPointers To(string notebook, params IReadOnlyList<string> commands) => new([notebook], commands);
}
