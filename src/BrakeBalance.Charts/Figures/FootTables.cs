using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts.Figures;

/// <summary>Tables of pedal and assist as data frames, in display units rounded as running text is.</summary>
public static class FootTables
{
    /// <summary>Every force and pressure from the foot to the road at a series of decelerations.</summary>
    /// <param name="control">The car's control in one load case.</param>
    /// <param name="brakingRates">Decelerations [–]; above zero; those that the highest pressure does not reach are left out.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>A row a rate.</returns>
    public static DataFrame Path(ControlForce control, IReadOnlyList<double> brakingRates, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        ControlForcePoint[] points = [.. brakingRates.Select(control.AtRate).OfType<ControlForcePoint>()];
        return new TableBuilder(shown)
            .Column("Rate z", Measure.Number, Rounded(Measure.Number, shown, points.Select(p => p.Balance.BrakingRate)))
            .Column("Pedal F", Measure.ControlForce, Rounded(Measure.ControlForce, shown, points.Select(p => p.PedalForce.Newtons)))
            .Column("Rod in", Measure.ControlForce, Rounded(Measure.ControlForce, shown, points.Select(p => p.InputRodForce.Newtons)))
            .Column("Rod out", Measure.ControlForce, Rounded(Measure.ControlForce, shown, points.Select(p => p.OutputRodForce.Newtons)))
            .Column("Cylinder", Measure.LinePressure,
                Rounded(Measure.LinePressure, shown, points.Select(p => p.OutletPressures.Front.Pascals)))
            .Column("Front", Measure.LinePressure,
                Rounded(Measure.LinePressure, shown, points.Select(p => p.Balance.LinePressures.Front.Pascals)))
            .Column("Rear", Measure.LinePressure,
                Rounded(Measure.LinePressure, shown, points.Select(p => p.Balance.LinePressures.Rear.Pascals)))
            .Build().Frame;
    }

    private static IEnumerable<double?> Rounded(Measure measure, UnitSystem units, IEnumerable<double> si)
    {
        DisplayUnit unit = measure.In(units);
        return si.Select(value =>
            (double?)unit.ToSi(Math.Round(unit.FromSi(value) / unit.RoundTo, MidpointRounding.AwayFromZero) * unit.RoundTo));
    }
}
