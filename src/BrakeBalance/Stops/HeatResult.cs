using BrakeBalance.Hydraulics;

namespace BrakeBalance.Stops;

/// <summary>Outcome of a heat cycle.</summary>
public sealed record HeatResult
{
    /// <summary>Name of the car.</summary>
    public required string Car { get; init; }

    /// <summary>Name of the cycle.</summary>
    public required string Cycle { get; init; }

    /// <summary>The fluid whose boiling points count.</summary>
    public required BrakeFluidGrade Fluid { get; init; }

    /// <summary>The stops in order.</summary>
    public required IReadOnlyList<HeatStop> Stops { get; init; }

    /// <summary>Temperatures over time, in order, the parked car after the cycle included; empty when no trace was asked for.</summary>
    public required IReadOnlyList<HeatSample> Trace { get; init; }

    /// <summary>Highest bulk temperature of the ring of each axle.</summary>
    public required PerAxle<Temperature> HottestRing { get; init; }

    /// <summary>Highest temperature of the fluid at each axle, in the cycle or while the car is parked after it.</summary>
    public required PerAxle<Temperature> HottestFluid { get; init; }

    /// <summary>Highest temperature of the fluid at each axle up to the end of the cycle.</summary>
    public required PerAxle<Temperature> HottestFluidDriving { get; init; }

    /// <summary>What the fluid does once the car is parked after the cycle.</summary>
    public required HeatSoak Soak { get; init; }

    /// <summary>True for an axle whose ring went past the last point of its fade curve, where the last value was held.</summary>
    public required PerAxle<bool> BeyondFadeCurve { get; init; }

    /// <summary>Heat of braking that the sums of stored and lost heat leave unexplained, over the heat of braking [–].</summary>
    public required double Imbalance { get; init; }

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
