using BrakeBalance.Hydraulics;

namespace BrakeBalance.Stops;

/// <summary>Outcome of a heat cycle.</summary>
/// <param name="Car">Name of the car.</param>
/// <param name="Cycle">Name of the cycle.</param>
/// <param name="Fluid">The fluid whose boiling points count.</param>
/// <param name="Stops">The stops in order.</param>
/// <param name="Trace">
/// Temperatures over time, in order, the parked car after the cycle included; empty when no trace was asked for.
/// </param>
/// <param name="HottestRing">Highest bulk temperature of the ring of each axle.</param>
/// <param name="HottestFluid">Highest temperature of the fluid at each axle, in the cycle or while the car is parked after it.</param>
/// <param name="HottestFluidDriving">Highest temperature of the fluid at each axle up to the end of the cycle.</param>
/// <param name="Soak">What the fluid does once the car is parked after the cycle.</param>
/// <param name="BeyondFadeCurve">
/// True for an axle whose ring went past the last point of its fade curve, where the last value was held.
/// </param>
/// <param name="Imbalance">Heat of braking that the sums of stored and lost heat leave unexplained, over the heat of braking [–].</param>
public sealed record HeatResult(
    BrakedCar Car, string Cycle, BrakeFluidGrade Fluid, IReadOnlyList<HeatStop> Stops, IReadOnlyList<HeatSample> Trace,
    PerAxle<Temperature> HottestRing, PerAxle<Temperature> HottestFluid, PerAxle<Temperature> HottestFluidDriving, HeatSoak Soak,
    PerAxle<bool> BeyondFadeCurve, double Imbalance)
{
    /// <summary>
    /// Temperature still left to the wet boiling point at the hotter axle at its hottest, parked or driving; negative when it would boil.
    /// </summary>
    public TemperatureDelta WetBoilingMargin => Margin(Fluid.WetBoilingPoint);

    /// <summary>
    /// Temperature still left to the dry boiling point at the hotter axle at its hottest, parked or driving; negative when it would boil.
    /// </summary>
    public TemperatureDelta DryBoilingMargin => Margin(Fluid.DryBoilingPoint);

    /// <summary>The first stop at whose end the fluid is past its wet boiling point, or null when there is none.</summary>
    /// <remarks>Vapour is not modelled: figures after this stop assume a pedal that the car no longer has.</remarks>
    public int? FirstBoilingStop => FirstStopBeyond(Fluid.WetBoilingPoint);

    /// <summary>The first stop at whose end the fluid is past its dry boiling point, or null when there is none.</summary>
    public int? FirstDryBoilingStop => FirstStopBeyond(Fluid.DryBoilingPoint);

    /// <summary>Mean deceleration of the last stop over that of the first [–]; below 1 when brakes at a held pressure fade.</summary>
    /// <remarks>
    /// The rules ask for at least 0.60 of the car's own cold deceleration at no more than the cold stop's pedal force: 49 CFR 571.135
    /// S7.14.4 (read; its formula is a picture there) and UN R13, hot performance, which also wants 80 % of what is prescribed cold (read).
    /// </remarks>
    public double HotOverCold => Stops[^1].MeanDeceleration / Stops[0].MeanDeceleration;

    private int? FirstStopBeyond(Temperature boiling) => Stops
        .FirstOrDefault(s => Math.Max(s.FluidAtEnd.Front.DegreesCelsius,
            s.FluidAtEnd.Rear.DegreesCelsius) >= boiling.DegreesCelsius)?.Number;

    private TemperatureDelta Margin(Temperature boiling) => TemperatureDelta.FromKelvins(
        boiling.Kelvins - Math.Max(HottestFluid.Front.Kelvins, HottestFluid.Rear.Kelvins));
}
