using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Choosing;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>All that there is to say of a set of parts: old against new, figures overlaid, the bench, the shop, the first stops.</summary>
internal static class ChoicePage
{
    /// <summary>The page; it needs no other file.</summary>
    /// <param name="choice">What was asked.</param>
    /// <param name="result">What the search found.</param>
    /// <param name="at">Which of the sets shown, from 0.</param>
    /// <param name="units">The system of units.</param>
    public static string Html(Choice choice, ChoiceResult result, int at, UnitSystem units)
    {
        var words = new ChoiceWords(choice, result, units);
        Proposal set = result.Sets[at];
        (string Name, Vehicle Car)[] both = [("present", choice.Car), ("new parts", set.Vehicle)];
        string title = Invariant.Text($"Set {at + 1} for {choice.Car.InText}");
        StringBuilder body = ComparisonPage.Opened(
            title, $"{ChoiceWords.PartsOf(set)}{words.PriceOf(set, ", ")}. Breaks {words.Broken(set)}.", ChoiceResult.Cautions);
        SetUpComparison comparison = ChoiceResult.Compare(choice.Car, set, units);
        body.Append("<p>").Append(HtmlText.Escape($"{words.Conditions} {words.LogsLeft}".Trim())).Append("</p>\n")
            .Append("<h2>Old against new</h2>\n").Append(new ComparisonTable(comparison).ToHtml());
        ComparisonPage.Figures(body, both, comparison, words.LoadCase, units);
        ChangePlan plan = ChoiceResult.Change(choice.Car, set);
        body.Append("<h2>On the bench</h2>\n").Append(BenchTables.Changes(plan, plan.Rows(), units).ToHtml()).Append("<ul>\n");
        foreach (string line in ChoiceResult.OnTheBench(set))
        {
            body.Append("<li>").Append(HtmlText.Escape(line)).Append("</li>\n");
        }

        body.Append("</ul>\n<h2>To buy</h2>\n").Append(ChoiceTables.Shopping(choice, result, set, units).ToHtml())
            .Append("<h2>Before the road</h2>\n")
            .Append(new TickLists(Checklist.Bleeding, Checklist.LeakCheck, Checklist.FirstApplication).ToHtml());
        body.Append("<h2>The first test stops</h2>\n")
            .Append(MeasurementTables.Plan(TestPlanner.Make(set.Vehicle, ["dry"]), units).ToHtml()).Append("</main>\n");
        return ComparisonPage.Alone(title, body.ToString(), units);
    }
}
