using BrakeBalance.Charts.Exploring;

namespace BrakeBalance.Charts.Figures;

/// <summary>Which axle locks first over knee, or share of a balance bar, and adhesion; sliders for load and friction.</summary>
public static class SettingExplorer
{
    private static readonly double[] FrictionFactors = [0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.15];

    /// <summary>Makes the explorable.</summary>
    /// <param name="setting">The answer for the car; a car without valve and bar is shown with a valve, wide open.</param>
    /// <param name="highest">The highest knee to show, gauge; a little above the answer's knees when null.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">Its short name.</param>
    public static Explorable Of(Setting setting, Pressure? highest = null, UnitSystem? units = null, string id = "explore-setting")
    {
        ArgumentNullException.ThrowIfNull(setting);
        Pressure top = highest ?? SettingMap.Highest(setting);
        Vehicle file = setting.Vehicle;
        Vehicle vehicle = setting.Variable == SettingVariable.AddedKnee
            ? file.WithRearKnee(file.Hydraulics.MaximumPressure, setting.Middle.Slope ?? SettingSearch.AddedSlope) : file;
        string[] changes = [.. FrictionFactors.Select(factor =>
            factor == 1 ? "nominal" : Invariant.Text($"{(factor > 1 ? "+" : "−")}{Math.Abs(factor - 1) * 100:0} %"))];
        return Explorable.Of(
            id,
            [
                Control.Choice("load", "Load", vehicle.LoadCases.Select(load => load.Name)),
                Control.Slider("front", "Front pad friction", changes, 3),
                Control.Slider("rear", "Rear friction", changes, 3),
            ],
            selection => Frame(
                setting,
                vehicle.WithFrictionFactors(FrictionFactors[selection["front"]], FrictionFactors[selection["rear"]]),
                vehicle.LoadCases[selection["load"]],
                top,
                units,
                id))
            .AgainFrom(file, "setting", units ?? Display.Units, ("highest", highest?.Pascals));
    }

    private static Frame Frame(Setting setting, Vehicle vehicle, LoadCase load, Pressure highest, UnitSystem? units, string id)
    {
        double[] adhesions = [.. Enumerable.Range(0, Math.Max(23, (int)Math.Ceiling(20 * vehicle.Conditions.HighestAdhesion - 1 - 1e-9)))
            .Select(i => 0.1 + i * 0.05)];
        bool bar = setting.Variable == SettingVariable.BalanceBar, own = setting.Variable != SettingVariable.AddedKnee;
        double Value(double part) => bar ? 0.8 - 0.6 * part : highest.Pascals * part;
        double[] parts = FrontFirst(vehicle, load, adhesions, (car, part) =>
            bar ? car.WithFrontForceShare(Value(part)) : car.WithRearKnee(Pressure.FromPascals(Value(part))));
        double[] limits = [.. parts.Select(Value)];
        double least = parts.Min();
        (string thing, string limit) = bar ? ("front share", "Least front share") : ("knee", "Highest knee");
        Measure measure = bar ? Measure.Pure(thing, "%", 100, 0.1) : Measure.LinePressure;
        var figure = new FigureBuilder(id + "-map", units, vehicle);
        SettingLimit here = bar ? setting.Middle with { Knee = null, FrontForceShare = Value(least), AtAnySetting = false }
            : setting.Middle with { Knee = Pressure.FromPascals(Value(least)), FrontForceShare = null, AtAnySetting = false };
        string upTo = SettingWords.Number(here, figure.Units);
        string everywhere = least >= 1 ? $"the front locks first on every surface at every {thing} shown"
            : least <= 0 ? $"the rear locks first somewhere at every {thing}"
                : $"{(bar ? "from" : "up to a knee of")} {upTo} {(bar ? "on " : "")}the front locks first on every surface";
        figure
            .Title($"{Finding.Capital(load.Name)}, at rest and with this friction: {everywhere}; safe limit in all conditions "
                + (setting.HoldsAtAnySetting ? SettingWords.Any
                    : setting.SafeLimit is { } safe ? SettingWords.Number(safe, figure.Units) : "none"))
            .Describe(
                $"The {(bar ? "least front share of the rod force" : "highest knee")} with which the front axle of "
                    + $"{vehicle.InText} locks first, standing still, by adhesion."
                    + (least < 1 ? $" {(bar ? "Below" : "Above")} the line the rear locks first." : "")
                    + (own ? "" : " The car has no such valve: one is tried besides what it has."),
                $"{Finding.Capital(load.Name)}: {everywhere}. {SettingWords.Sentence(setting, figure.Units)}")
            .X("Adhesion", "k", Measure.Number, adhesions[0], adhesions[^1])
            .Y(bar ? "Front cylinder's share of the rod force" : "Knee", bar ? "" : "p", measure, bar ? 0.2 : 0, bar ? 0.8 : Value(1));
        if (least < 1)
        {
            figure.Region("rear first", [.. adhesions, adhesions[^1], adhesions[0]], [.. limits, Value(1), Value(1)],
                Tone.Rear, Hatch.Rising);
        }

        figure.Line($"front first {(bar ? "down" : "up")} to here", adhesions, limits, Tone.Front, Dash.Solid, 2.6);
        void Mark(string name, SettingValue? value, Tone tone, Dash dash)
        {
            if ((value?.FrontForceShare ?? value?.Knee?.Pascals) is { } at && at <= Value(bar ? 0 : 1))
            {
                figure.Level(name, at, tone, dash);
            }
        }

        Mark("present setting", setting.Present, Tone.Main, Dash.Dash);
        Mark("safe limit", setting.MarkedLimit, Tone.Other, Dash.Dot);

        int[] listed = [.. Enumerable.Range(0, adhesions.Length).Where(i => i % 2 == 0)];
        figure.Table(table => table
            .Column("Adhesion k", Measure.Number, listed.Select(i => adhesions[i]).ToArray())
            .Column($"{limit} with the front first, as far as shown", measure, listed.Select(i => limits[i]).ToArray()));
        var now = new BalanceModel(vehicle, load);
        double[] roads = [.. Finding.Roads(Finding.Highest(vehicle))];
        string stands = setting.Present is null ? "As the car stands" : "At the present setting";
        HashSet<double> rearFirst = [.. roads.Where(adhesion => RearFirst(now, adhesion))];
        var verdict = rearFirst.Count == 0
            ? new Verdict($"{stands} the front locks first on every surface shown"
                + (setting.PresentIsBeyond ? ", but not in all conditions: it lies beyond the safe limit."
                    : setting.IsBuiltBeyond ? ", but not in all conditions." : "."),
                setting.StandsBeyond ? VerdictKind.Caution : VerdictKind.Good)
            : new Verdict(
                $"{stands} the rear locks first at {Finding.Adhesions(roads, k => k, rearFirst.Contains)}: the car can spin.",
                VerdictKind.Caution);
        return new Frame(
            [figure.Build()],
            [
                new Readout("Present setting", SettingWords.Present(setting, figure.Units)),
                new Readout(
                    $"{limit} with the front first here",
                    least >= 1 ? (bar ? "below " : "above ") + figure.Text(measure, Value(1))
                        : least <= 0 ? SettingWords.None : upTo),
                new Readout("Safe limit in all conditions", SettingWords.SafeLimit(setting, figure.Units)),
                new Readout("Recommended setting", SettingWords.Recommended(setting, figure.Units)),
            ],
            verdict);
    }

    // How far the rear can be let in at each adhesion with the front first [0 to 1]: more of it never brakes the rear less.
    private static double[] FrontFirst(Vehicle vehicle, LoadCase load, double[] adhesions, Func<Vehicle, double, Vehicle> set)
    {
        const int steps = 2048;
        Dictionary<int, BalanceModel> models = [];
        return [.. adhesions.Select(Greatest)];

        double Greatest(double adhesion)
        {
            (int safe, int unsafeStep) = (-1, steps + 1);
            while (unsafeStep - safe > 1)
            {
                int middle = (safe + unsafeStep) / 2;
                (safe, unsafeStep) = RearFirst(At(middle), adhesion) ? (safe, middle) : (middle, unsafeStep);
            }

            return Math.Max(0.0, safe) / steps;
        }

        BalanceModel At(int step) => models.TryGetValue(step, out BalanceModel? known) ? known
            : models[step] = new(set(vehicle, (double)step / steps), load);
    }

    private static bool RearFirst(BalanceModel model, double adhesion) =>
        model.TryFirstLockUp(adhesion, out _, out Axle? first, out _) && first == Axle.Rear;
}
