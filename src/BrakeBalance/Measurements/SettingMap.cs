using BrakeBalance.Balance;

namespace BrakeBalance.Measurements;

/// <summary>Settings round the answer's: knees and slopes evenly spaced, with the safe limit on one of them.</summary>
public static class SettingMap
{
    private const int Knees = 25;
    private const double SlopeStep = 0.06;
    private const int Slopes = 11;

    /// <summary>A round pressure a little above all the knees of an answer.</summary>
    /// <param name="setting">The answer.</param>
    /// <returns>The pressure, gauge; at most the car's highest.</returns>
    public static Pressure Highest(Setting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        double shown = new[] { setting.Middle.Knee, LimitOf(setting).Knee, setting.Present?.Knee }.Max(knee => knee?.Pascals ?? 0);
        double highest = setting.Vehicle.Hydraulics.MaximumPressure.Pascals;
        return Pressure.FromPascals(Math.Min(Math.Max(40e5, Math.Ceiling(shown * 1.4 / 10e5) * 10e5), highest));
    }

    /// <summary>How each knee with each slope does over the conditions.</summary>
    /// <param name="setting">The answer; with a balance bar the knees are those of a valve besides the bar.</param>
    /// <returns>An outcome each, slopes within knees.</returns>
    public static IReadOnlyList<SettingOutcome> Of(Setting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        SettingLimit limit = LimitOf(setting);
        (double top, double slope) = (Highest(setting).Pascals, limit.Slope ?? SettingSearch.AddedSlope);
        double knee = Step(top / (Knees - 1), limit.Knee?.Pascals ?? 0), rise = Step(SlopeStep, slope);
        return SettingSearch.Sweep(
            setting.Vehicle,
            setting.Conditions with { AdhesionSteps = 16 },
            [.. Enumerable.Range(0, (int)(top / knee + 1.5)).Select(i => Pressure.FromPascals(knee * i))],
            [.. Enumerable.Range(0, Slopes).Select(i => rise * i).Where(value => value <= 1)]);
    }

    // The safe limit's own corner of the map; with a bar, what a valve of the usual slope would allow.
    private static SettingLimit LimitOf(Setting setting) => setting.SafeLimit?.Knee is { } knee
        ? setting.Middle with { Knee = knee }
        : SettingSearch.Limit(setting.Vehicle, setting.Conditions, setting.Middle.Slope ?? SettingSearch.AddedSlope);

    private static double Step(double wanted, double met) => met < 0.5 * wanted ? wanted : met / Math.Round(met / wanted);
}
