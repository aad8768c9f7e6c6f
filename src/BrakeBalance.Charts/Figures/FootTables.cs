using BrakeBalance.Charts.Tables;
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
    public static DataFrame Path(ControlForce control, IReadOnlyList<double> brakingRates, UnitSystem? units = null) =>
        BalanceTables.OverRanges(control.Model, model =>
    {
        var own = new ControlForce(model, ReferenceEquals(control.Control, control.Model.Vehicle.Control) ? null : control.Control);
        ControlForcePoint[] points = [.. brakingRates.Select(own.AtRate).OfType<ControlForcePoint>()];
        return new TableBuilder(units)
            .Rounded("Deceleration z", Measure.InG, points.Select(p => (double?)p.Balance.BrakingRate))
            .Rounded("Pedal F", Measure.ControlForce, points.Select(p => (double?)p.PedalForce.Newtons))
            .Rounded("Rod in", Measure.ControlForce, points.Select(p => (double?)p.InputRodForce.Newtons))
            .Rounded("Rod out", Measure.ControlForce, points.Select(p => (double?)p.OutputRodForce.Newtons))
            .Rounded("Cylinder", Measure.LinePressure, points.Select(p => (double?)p.OutletPressures.Front.Pascals))
            .Rounded("Front", Measure.LinePressure, points.Select(p => (double?)p.Balance.LinePressures.Front.Pascals))
            .Rounded("Rear", Measure.LinePressure, points.Select(p => (double?)p.Balance.LinePressures.Rear.Pascals))
            .Build().Frame;
    });
}
