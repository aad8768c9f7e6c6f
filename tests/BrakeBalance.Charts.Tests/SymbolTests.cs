using System.Text.Json;
using System.Text.RegularExpressions;
using BrakeBalance.Charts.Lessons;
using BrakeBalance.Teaching;

namespace BrakeBalance.Charts.Tests;

public partial class SymbolTests
{
    private static readonly HashSet<string> Known = [.. CourseSymbol.All.Select(symbol => Plain(symbol.Formula))];

    // Each formula of the lessons and of the keys of forty students, with where it stands.
    private static readonly (string Where, string Formula)[] Formulas =
    [
        .. Directory.GetFiles(RepositoryRoot.File("notebooks/lessons"), "*.ipynb").Order(StringComparer.Ordinal)
            .SelectMany(path => JsonDocument.Parse(File.ReadAllText(path)).RootElement.GetProperty("cells").EnumerateArray()
                .Where(cell => cell.GetProperty("cell_type").GetString() == "markdown")
                .SelectMany(cell => Of(Path.GetFileName(path), string.Concat(
                    cell.GetProperty("source").EnumerateArray().Select(line => line.GetString()))))),
        .. Enumerable.Range(1, 40).SelectMany(student => Exercises.For(new ClassNumber { Seed = 2026, Student = student }))
            .SelectMany(exercise => exercise.Steps.Append(exercise.Question).SelectMany(text => Of(exercise.Id, text))),
    ];

    [Fact]
    public void Every_symbol_of_every_formula_is_in_the_table()
    {
        Assert.True(Formulas.Length > 1000);
        Assert.Empty(Formulas.SelectMany(one => Symbols(one.Formula).Where(symbol => !Known.Contains(symbol))
            .Select(symbol => $"{symbol} in {one.Where}: {one.Formula}")).Distinct());
    }

    [Fact]
    public void Every_symbol_of_the_table_is_used_and_has_one_meaning_of_its_own()
    {
        Assert.Equal(CourseSymbol.All.Count, Known.Count);
        Assert.Equal(CourseSymbol.All.Count, CourseSymbol.All.Select(symbol => symbol.Text).Distinct().Count());
        Assert.Equal(CourseSymbol.All.Count, CourseSymbol.All.Select(symbol => symbol.Meaning).Distinct().Count());
        Assert.Empty(Known.Except(Formulas.SelectMany(one => Symbols(one.Formula))));
    }

    [Fact]
    public void Symbols_of_the_data_and_of_the_axes_are_those_of_the_table()
    {
        HashSet<string> texts = [.. CourseSymbol.All.SelectMany(symbol => symbol.Text.Split(", "))];
        Assert.All(CarData.Of(ExerciseCar.For(new ClassNumber { Student = 1 }), UnitSystem.Si), row => Assert.Contains(row.Symbol, texts));
        Axis[] axes = [.. Lesson.All.SelectMany(lesson => LessonSheet.Of(lesson.Id, units: UnitSystem.Si).Figure.Start.Figures)
            .SelectMany(figure => new[] { figure.XAxis, figure.YAxis }).Where(axis => axis.Symbol.Length > 0)];
        Assert.True(axes.Length > 15);
        Assert.All(axes.SelectMany(axis => axis.Symbol.Split(", ")), symbol => Assert.Contains(symbol, texts));
    }

    private static IEnumerable<(string Where, string Formula)> Of(string where, string markdown) =>
        Delimited().Matches(markdown).Select(formula => (where, formula.Groups["of"].Value));

    // A Δ belongs to the letter behind it. Words and units are no symbols, nor are π and a bare index.
    // An index 1, 2 or i is one symbol's.
    private static IEnumerable<string> Symbols(string formula) =>
        Letter().Matches(Words().Replace(formula, " ")).Select(letter => Plain(letter.Value))
            .Where(symbol => symbol is not (@"\pi" or "i"));

    private static string Plain(string symbol) => Index().Replace(symbol.Replace(" ", "", StringComparison.Ordinal), "_i");

    [GeneratedRegex(@"\$\$(?<of>.+?)\$\$|\$(?<of>[^$]+?)\$", RegexOptions.Singleline)]
    private static partial Regex Delimited();

    [GeneratedRegex(@"\\(text|mathrm)\{[^}]*\}|\\(begin|end)\{cases\}|\\(t?frac|cdot|q?quad|Rightarrow|le|left|right|approx)(?![a-zA-Z])")]
    private static partial Regex Words();

    [GeneratedRegex(@"(\\Delta\s*)?(\\[a-zA-Z]+|[a-zA-Z])(_(\{[^}]*\}|\w))?")]
    private static partial Regex Letter();

    [GeneratedRegex(@"_[12i]$")]
    private static partial Regex Index();
}
