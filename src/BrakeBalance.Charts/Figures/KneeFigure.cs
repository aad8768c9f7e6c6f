using BrakeBalance.Balance;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Figures;

/// <summary>What the knee of the valve does to efficiency, and how far it may go.</summary>
public static class KneeFigure
{
    private const string RearFirst = "rear first somewhere";

    /// <summary>Efficiency against the knee for one slope, with the greatest knee that keeps the front first.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="conditions">Surfaces, loads and friction spread.</param>
    /// <param name="slope">The slope above the knee [–]; the car's own valve's when null.</param>
    /// <param name="highest">The highest knee to show, gauge; a little above the greatest safe one when null.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">No slope is given and the car has no proportioning valve.</exception>
    public static Figure Of(
        Vehicle vehicle, SettingConditions conditions, double? slope = null, Pressure? highest = null, UnitSystem? units = null, string id = "knee-setting")
    {
        SettingAdvice advice = SettingSearch.GreatestSafeKnee(vehicle, conditions, slope);
        double used = slope ?? vehicle.Hydraulics.RearProportioningValve!.Slope;
        double top = (highest ?? Top(vehicle, advice)).Pascals;
        Pressure[] knees = [.. Enumerable.Range(0, 61).Select(i => Pressure.FromPascals(top * i / 60))];
        IReadOnlyList<SettingOutcome> outcomes = SettingSearch.Sweep(vehicle, conditions, knees, [used]);
        var figure = new FigureBuilder(id, units);
        double floor = Math.Max(0, Math.Floor(outcomes.Min(outcome => outcome.WorstEfficiency) * 20 - 0.5) / 20);
        figure
            .Title(KneeTitle(figure, advice, used, top))
            .Describe(
                $"Braking efficiency of the {vehicle.Name} over all load cases, speeds and surfaces from {Finding.Rate(conditions.LowestAdhesion)} to {Finding.Rate(conditions.HighestAdhesion)}, against the valve's knee.",
                "Mean and least braking efficiency against the knee; beyond a marked knee the rear axle locks first somewhere.",
                $"A higher knee lets the rear brakes work more. {advice.Sentence} Friction may be {Measure.Percent.Text(conditions.FrictionSpread, figure.Units)} off at either axle.")
            .X("Knee", "p", Measure.LinePressure, 0, top)
            .Y("Braking efficiency", "", Measure.Percent, floor, 1);
        double safe = advice.Outcome?.Knee.Pascals ?? 0;
        if (safe < top)
        {
            figure.Region(RearFirst, [safe, top, top, safe], [floor, floor, 1, 1], Tone.Rear, Hatch.Rising);
        }

        figure
            .Line("mean of all cases", knees, outcomes.Select(outcome => outcome.MeanEfficiency).ToArray(), Tone.Ideal, Dash.Solid, 2.6)
            .Line("least of all cases", knees, outcomes.Select(outcome => outcome.WorstEfficiency).ToArray(), Tone.Front, Dash.Dash, 2.2);
        if (advice.Outcome is not null && safe < top)
        {
            figure.Upright("greatest safe knee", safe, Tone.Main, Dash.Solid);
        }

        if (vehicle.Hydraulics.RearProportioningValve is { } present && present.Knee.Pascals < top && Math.Abs(present.Knee.Pascals - safe) > 0.01 * top)
        {
            figure.Upright("present knee", present.Knee.Pascals, Tone.Other, Dash.Dot);
        }

        SettingOutcome[] listed = [.. outcomes.Where((_, i) => i % 5 == 0)];
        return figure.Table(table => table
            .Column("Knee", Measure.LinePressure, listed.Select(outcome => outcome.Knee).ToArray())
            .Column("Mean efficiency", Measure.Percent, listed.Select(outcome => outcome.MeanEfficiency).ToArray())
            .Column("Least efficiency", Measure.Percent, listed.Select(outcome => outcome.WorstEfficiency).ToArray())
            .Column("Cases with the rear first", Measure.Percent, listed.Select(outcome => outcome.RearFirstShare).ToArray())).Build();
    }

    private static Pressure Top(Vehicle vehicle, SettingAdvice advice)
    {
        double shown = Math.Max(
            advice.NominalKnee?.Pascals ?? 0, Math.Max(advice.Outcome?.Knee.Pascals ?? 0, vehicle.Hydraulics.RearProportioningValve?.Knee.Pascals ?? 0));
        return Pressure.FromPascals(Math.Min(Math.Max(40e5, Math.Ceiling(shown * 1.4 / 10e5) * 10e5), vehicle.Hydraulics.MaximumPressure.Pascals));
    }

    private static string KneeTitle(FigureBuilder figure, SettingAdvice advice, double slope, double top)
    {
        string withSlope = $"with a slope of {Finding.Rate(slope)}";
        return advice.Outcome is not { } outcome
            ? $"No knee keeps the front first {withSlope}"
            : outcome.Knee.Pascals >= top
                ? $"Every knee shown keeps the front first {withSlope}"
                : $"Up to a knee of {figure.Text(Measure.LinePressure, outcome.Knee)} the front locks first everywhere {withSlope}";
    }
}
