namespace BrakeBalance.Charts.Figures;

/// <summary>
/// What a reader may set on a car: only what its adjuster reaches, with the present and the recommended setting among them.
/// </summary>
internal static class SettingChoices
{
    /// <summary>Knees to choose from, rising; gauge.</summary>
    /// <returns>The knees, and the place of the present one: of the recommended one, or of 30 bar, when no valve is fitted.</returns>
    public static (Pressure[] Knees, int Start) Knees(Setting setting, int count, UnitSystem units)
    {
        BrakeHydraulics hydraulics = setting.Vehicle.Hydraulics;
        Pressure own = hydraulics.RearProportioningValve?.Knee ?? (setting.Recommended ?? setting.SafeLimit)?.Knee ?? Pressure.FromBars(30);
        DisplayUnit unit = Measure.LinePressure.In(units);
        double highest = Math.Min(Math.Max(own.Pascals * 1.8, SettingMap.Highest(setting).Pascals), hydraulics.MaximumPressure.Pascals);
        double step = Rendering.Ticks.Step(unit.FromSi(highest), count - 1);
        double[] knees = hydraulics.RearProportioningValve?.Adjustment is { } adjuster
            ? [.. Enumerable.Range(0, count)
                .Select(i => adjuster.KneeAt(Math.Min(adjuster.Turns, adjuster.Turns * i / (count - 1))).Pascals)]
            : [.. Enumerable.Range(1, count).Select(i => unit.ToSi(i * step)).Where(knee => knee <= hydraulics.MaximumPressure.Pascals)];
        int start = Put(knees, own.Pascals, setting.Recommended?.Knee?.Pascals);
        return ([.. knees.Select(knee => Pressure.FromPascals(knee))], start);
    }

    /// <summary>Knees as a slider names them: to the digit to which the setting itself is shown.</summary>
    /// <returns>A text each; a no-break space stands before the symbol.</returns>
    public static IEnumerable<string> Texts(IEnumerable<Pressure> knees, UnitSystem units) =>
        knees.Select(knee => SettingWords.Knee(knee, units).Replace(' ', '\u00a0'));

    /// <summary>Front shares of a balance bar to choose from, rising.</summary>
    /// <returns>The shares, and the place of the present one.</returns>
    public static (double[] Shares, int Start) Shares(Setting setting, double present, int count)
    {
        double[] shares = [.. Enumerable.Range(0, count).Select(i => 0.4 + 0.3 * i / (count - 1))];
        return (shares, Put(shares, present, setting.Recommended?.FrontForceShare));
    }

    /// <summary>Puts one more value among others, in place of the nearest that is none of those to keep.</summary>
    public static void Put(double[] values, double? wanted, IReadOnlyList<double> kept)
    {
        if (wanted is { } value && value > values[0] && value < values[^1] && !values.Contains(value))
        {
            values[values.Index().Where(one => !kept.Contains(one.Item)).MinBy(one => Math.Abs(one.Item - value)).Index] = value;
            Array.Sort(values);
        }
    }

    /// <summary>Puts the present and the recommended value among others, where the nearest make room.</summary>
    /// <returns>The place of the present one.</returns>
    public static int Put(double[] values, double present, double? recommended)
    {
        int Nearest(double wanted, int taken) =>
            values.Index().Where(value => value.Index != taken).MinBy(value => Math.Abs(value.Item - wanted)).Index;
        int at = Nearest(present, -1);
        values[at] = present;
        if (recommended is { } other && other != present)
        {
            values[Nearest(other, at)] = other;
        }

        Array.Sort(values);
        return Array.IndexOf(values, present);
    }
}
