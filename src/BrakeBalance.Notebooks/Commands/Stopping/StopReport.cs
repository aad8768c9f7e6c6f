using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Notebooks.Commands.Stopping;

/// <summary>Stops of a car on several surfaces and its heat, for one run of the command.</summary>
/// <param name="Vehicle">The car.</param>
/// <param name="InitialSpeed">Speed when the foot touches the pedal.</param>
/// <param name="Loads">The load cases.</param>
/// <param name="Study">Many stops drawn at random; null when not asked for.</param>
internal sealed record StopReport(Vehicle Vehicle, Speed InitialSpeed, IReadOnlyList<LoadReport> Loads, StopStudyResult? Study)
{
    public static StopReport Of(
        Vehicle vehicle, Speed speed, IReadOnlyList<double> adhesions, IReadOnlyList<LoadCase> loads, StopConditions conditions,
        PressureChangeRate? releaseRate, SpeedTrace? lap, int laps, StopStudyResult? study) =>
        new(vehicle, speed, [.. loads.Select(load => LoadReport.Of(vehicle, load, speed, adhesions, conditions, releaseRate, lap, laps))],
            study)
        {
            Grade = conditions.Grade,
        };

    /// <summary>Slope of the road, uphill positive.</summary>
    public Angle Grade { get; init; }
}

/// <summary>One load case of a report.</summary>
/// <param name="LoadCase">The load case.</param>
/// <param name="Surfaces">The stops on each surface.</param>
/// <param name="Fade">The repeated stops.</param>
/// <param name="Laps">The laps; null when none are given.</param>
internal sealed record LoadReport(LoadCase LoadCase, IReadOnlyList<StopComparisonRow> Surfaces, HeatResult Fade, HeatResult? Laps)
{
    private static readonly Temperature Air = Temperature.FromDegreesCelsius(20);

    public IReadOnlyList<string> Assumptions => [.. Surfaces.SelectMany(row => row.Setup.Assumptions).Distinct()];

    public static LoadReport Of(
        Vehicle vehicle, LoadCase load, Speed speed, IReadOnlyList<double> adhesions, StopConditions conditions,
            PressureChangeRate? releaseRate,
        SpeedTrace? lap, int laps)
    {
        IReadOnlyList<StopComparisonRow> surfaces =
        [
            .. adhesions.SelectMany(adhesion => StopComparison.Of([(vehicle.Name, vehicle)], load.Name, adhesion, speed, conditions,
                releaseRate)),
        ];
        StopSetup setup = surfaces[0].Setup;
        HeatResult Heat(HeatCycle cycle) => BrakeHeat.Run(setup.Car with { Grade = Angle.Zero }, setup.Heat, cycle, Air, setup.Fluid,
            withTrace: false);
        return new LoadReport(
            load, surfaces, Heat(HeatCycle.TypeOne(setup.MaximumSpeed)),
            lap is null ? null : Heat(HeatCycle.Lap(FormattableString.Invariant($"{laps} laps"), lap, laps)));
    }
}
