using BrakeBalance.Assist;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Balance;

/// <summary>The same pedal and master cylinder with the assist in other states, for comparison.</summary>
public static class ControlVariants
{
    /// <summary>The control as it is, with its assist at other supplies, and with none.</summary>
    /// <param name="control">Pedal, assist and master cylinder.</param>
    /// <returns>The variants with a name each, the control as it is first.</returns>
    public static IReadOnlyList<(string Name, BrakeControl Control)> Assists(BrakeControl control)
    {
        ArgumentNullException.ThrowIfNull(control);
        BrakeControl With(BrakeAssist assist) => control with { Assist = assist };
        return control.Assist switch
        {
            VacuumBooster vacuum =>
            [
                (Invariant.Text($"as it is, {vacuum.Supply.Vacuum.InchesOfMercury:0.#} inHg"), control),
                .. new[] { ("stock camshaft, 18 inHg", VacuumSupply.StockCamshaft),
                    ("long-duration camshaft, 10 inHg", VacuumSupply.LongDurationCamshaft) }
                    .Where(one => Math.Abs(vacuum.Supply.Vacuum.InchesOfMercury - one.Item2.Vacuum.InchesOfMercury) > 1.5)
                    .Select(one => (one.Item1, With(vacuum with { Supply = one.Item2 }))),
                ("no vacuum", With(vacuum.WithoutEnergy())),
            ],
            HydraulicBooster hydraulic =>
            [
                (Invariant.Text($"as it is, relief at {hydraulic.ReliefPressure.Bars:0} bar"), control),
                (Invariant.Text($"worn pump, {hydraulic.ReliefPressure.Bars * 0.6:0} bar"),
                    With(hydraulic with { ReliefPressure = Pressure.FromBars(hydraulic.ReliefPressure.Bars * 0.6) })),
                ("pump stopped", With(hydraulic.WithoutEnergy())),
            ],
            _ => [("as it is, no assist", control)],
        };
    }
}
