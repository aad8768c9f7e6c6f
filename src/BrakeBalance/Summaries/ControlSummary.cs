using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Rules;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Summaries;

/// <summary>
/// What lies between foot and line pressure, in numbers: effort, run-out, gauge readings, travel, reserve, failures and rules.
/// </summary>
/// <param name="Vehicle">The car.</param>
/// <param name="LoadCases">One part a load case.</param>
/// <param name="Verdicts">The rules on stopping distance; informative, no type approval.</param>
/// <param name="Choices">
/// Bores in steps of 1/16 in and pedal ratios in steps of a half around the car's own, in its first load case; empty when travel cannot
/// be told.
/// </param>
/// <param name="Notices">What the reader should be told in words.</param>
public sealed record ControlSummary(
    Vehicle Vehicle,
    IReadOnlyList<ControlLoadCaseSummary> LoadCases,
    IReadOnlyList<RuleVerdict> Verdicts,
    IReadOnlyList<ControlChoiceResult> Choices,
    IReadOnlyList<string> Notices)
{
    /// <summary>What makes the brakes drag by the numbers of the file; empty when nothing does.</summary>
    public IReadOnlyList<DragCause> Drags { get; } = DragCause.Of(Vehicle);

    /// <summary>Decelerations whose pedal force is listed unless others are asked for [–].</summary>
    public static IReadOnlyList<double> UsualRates { get; } = [0.2, 0.4, 0.6, 0.8];

    /// <summary>Pedal forces at which gauge readings are listed: 20 to 120 lbf in steps of 20.</summary>
    public static IReadOnlyList<Force> GaugeForces { get; } = [.. Enumerable.Range(1, 6).Select(i => Force.FromPoundsForce(20 * i))];

    /// <summary>The summary of a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="brakingRates">Decelerations to list [–]; <see cref="UsualRates"/> unless said.</param>
    /// <param name="loadCase">Only this load case; all unless said.</param>
    /// <param name="numbersOnly">Whether the choices of bore and pedal ratio are left out.</param>
    /// <returns>The summary; null when the car does not say what lies between foot and line pressure.</returns>
    public static ControlSummary? Of(Vehicle vehicle, IReadOnlyList<double>? brakingRates = null, string? loadCase = null,
        bool numbersOnly = false)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        if (vehicle.Control is not { } control)
        {
            return null;
        }

        IEnumerable<LoadCase> loads = loadCase is null ? vehicle.LoadCases : [vehicle.LoadCase(loadCase)];
        return new(
            vehicle,
            [.. loads.Select(load => ControlLoadCaseSummary.Of(vehicle, load, brakingRates ?? UsualRates))],
            EffectivenessRules.Check(vehicle),
            numbersOnly ? [] : Around(vehicle, control),
            Warnings(control));
    }

    private static IReadOnlyList<ControlChoiceResult> Around(Vehicle vehicle, BrakeControl control)
    {
        if (control.Circuits is null)
        {
            return [];
        }

        MasterCylinder cylinder = control.MasterCylinderFor(vehicle.Hydraulics.Split);
        Length own = cylinder is TwinMasterCylinders twin
            ? twin.FrontBore : Length.FromMeters(Math.Sqrt(cylinder.PistonAreas.Front.SquareMeters * 4 / Math.PI));
        double ratio = control.Pedal.Lever.RatioAt(Length.Zero);
        return ControlChoice.Sweep(
            new BalanceModel(vehicle, vehicle.LoadCases[0]),
            [.. Enumerable.Range(-3, 7).Select(i => own + Length.FromInches(i / 16.0))
                .Where(bore => bore >= MasterCylinder.SmallestBore && bore <= MasterCylinder.LargestBore)],
            [.. Enumerable.Range(-3, 7).Select(i => ratio + (i / 2.0)).Where(tried => tried is >= 1 and <= 12)],
            control.Assist,
            new ControlTargets());
    }

    private static List<string> Warnings(BrakeControl control)
    {
        List<string> notices = [];
        if (control.PushRod is { } fit)
        {
            notices.Add("Push rod: " + fit.Describe());
        }

        if (control.Circuits is null)
        {
            notices.Add("The file has no fluid section: the pedal's travel is not told.");
        }

        return notices;
    }
}

/// <summary>Foot and line pressure of a car in one load case.</summary>
/// <param name="LoadCase">The state of load.</param>
/// <param name="RunOut">The car at the pedal force at which the assist runs out; null without assist.</param>
/// <param name="Rates">Pedal force and travel at each deceleration asked for.</param>
/// <param name="Gauges">What gauges should show at <see cref="ControlSummary.GaugeForces"/>.</param>
/// <param name="EngineOff">Presses in a row after the engine has stopped.</param>
/// <param name="Failures">What the car still does when something fails; the sound car first.</param>
public sealed record ControlLoadCaseSummary(
    LoadCase LoadCase,
    ControlForcePoint? RunOut,
    IReadOnlyList<ControlRateSummary> Rates,
    IReadOnlyList<ControlForcePoint> Gauges,
    EngineOffPresses EngineOff,
    IReadOnlyList<FailureOutcome> Failures)
{
    internal static ControlLoadCaseSummary Of(Vehicle vehicle, LoadCase load, IReadOnlyList<double> rates)
    {
        var control = new ControlForce(new BalanceModel(vehicle, load));
        var bare = new ControlForce(control.Model, control.Control with { Assist = control.Control.Assist.WithoutEnergy() });
        return new(
            load,
            control.RunOut(),
            [.. rates.Select(rate => control.AtRate(rate) is { } point
                ? new ControlRateSummary(
                    rate,
                    point,
                    bare.AtRate(rate)?.PedalForce,
                    control.TravelAt(point.Balance.MasterPressure),
                    control.TravelAt(point.Balance.MasterPressure, drumsHot: true))
                : new ControlRateSummary(rate, null, null, null, null, control.WhyNotAtRate(rate)))],
            [.. ControlSummary.GaugeForces.Select(control.At)],
            EngineOffPresses.Of(control),
            FailureAnalysis.Of(vehicle, load));
    }
}

/// <summary>Pedal force and travel at one deceleration.</summary>
/// <param name="BrakingRate">z [–].</param>
/// <param name="Point">The car at that rate; null when the highest pressure or the pedal's linkage does not reach it.</param>
/// <param name="WithoutAssist">Pedal force with the assist dead; null when the rate is not reached.</param>
/// <param name="Travel">Where the pedal's travel goes; null when it cannot be told.</param>
/// <param name="TravelDrumsHot">The same with hot drums; null when it cannot be told or the car has no drums.</param>
/// <param name="WhyNot">Why the rate cannot be had, in words; null when it can.</param>
public sealed record ControlRateSummary(
    double BrakingRate, ControlForcePoint? Point, Force? WithoutAssist, PedalTravel? Travel, PedalTravel? TravelDrumsHot = null,
        string? WhyNot = null)
{
    /// <summary>What is wrong with the pedal's travel at that rate, or why the rate cannot be had; null when nothing is.</summary>
    public string? Remark =>
        WhyNot
        ?? (Travel is { Reaches: false } ? Travel.Warning
        : TravelDrumsHot is { Reaches: false, Warning: { } warning } ? "Drums hot: " + warning
        : null);
}
