using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands.Summaries;

/// <summary>The setting on the terminal and in JSON, the same in every command.</summary>
internal static class SettingOutput
{
    private const int LabelWidth = 21;

    /// <summary>Writes the answer: at most a dozen lines where nothing unusual is to be said.</summary>
    public static void WriteAnswer(IAnsiConsole console, Setting setting, UnitSystem units)
    {
        foreach ((string label, string text) in SettingWords.Lines(setting, units))
        {
            Labelled(console, label, text);
        }

        Labelled(console, "Caution", SettingWords.Caution);
    }

    /// <summary>Writes what stands behind the answer.</summary>
    public static void WriteDetails(IAnsiConsole console, Setting setting, UnitSystem units)
    {
        console.WriteLine("");
        foreach ((string label, string text) in SettingWords.Behind(setting, units))
        {
            Labelled(console, label, text);
        }

        if (setting.Costs.Count > 0)
        {
            string by = setting.Rule == SettingRule.Chance ? ", without the stops" : setting.Band is null ? "" : ", ranges at their middle";
            var costs = new TextTable("Without this condition", "the limit would be" + by);
            foreach (ConditionCost cost in setting.Costs)
            {
                costs.Row(cost.Name, SettingWords.Number(cost.Limit, units));
            }

            costs.Write(console);
        }
        else if (setting is { SafeLimit: null, Rule: SettingRule.Corners })
        {
            Labelled(console, "Costs", "leaving out any one condition would bring no setting either.");
        }

        foreach (string words in SettingWords.Findings(setting, units))
        {
            Labelled(console, "Beside these", words);
        }
    }

    /// <summary>A label and a text beside it, folded at the console's width.</summary>
    public static void Labelled(IAnsiConsole console, string label, string text)
    {
        int width = Math.Max(20, console.Profile.Width - LabelWidth - 1);
        if (label.Length >= LabelWidth)
        {
            console.WriteLine(label);
            label = "";
        }

        foreach ((int number, string line) in TextTable.Folded(text, width).Index())
        {
            console.WriteLine((number == 0 ? label : "").PadRight(LabelWidth) + line);
        }
    }
}
