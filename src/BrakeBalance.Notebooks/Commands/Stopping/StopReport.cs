namespace BrakeBalance.Notebooks.Commands.Stopping;

/// <summary>What a report on stops is to hold.</summary>
/// <param name="InitialSpeed">Speed when the foot touches the pedal.</param>
/// <param name="Adhesions">The surfaces.</param>
/// <param name="Road">Shape of the road.</param>
/// <param name="Uneven">Whether stops on an uneven road were asked for.</param>
/// <param name="Bends">Whether bends were asked for.</param>
/// <param name="Lap">A lap; null for none.</param>
/// <param name="Laps">How often it is driven.</param>
internal sealed record StopAsk(Speed InitialSpeed, IReadOnlyList<double> Adhesions, StopRoad Road, bool Uneven, bool Bends,
    SpeedTrace? Lap, int Laps)
{
    /// <summary>Force of the foot; null for the vehicle's or the usual one.</summary>
    public Force? PedalForce { get; init; }

    /// <summary>Fall per second of the pressure that an easing foot asks for; null for no such stop.</summary>
    public PressureChangeRate? ReleaseRate { get; init; }

    /// <summary>Slope and foot.</summary>
    public StopConditions Conditions => new() { Grade = Road.Grade, PedalForce = PedalForce };
}

/// <summary>Stops of a car on several surfaces and its heat, for one run of the command.</summary>
internal sealed record StopReport(Vehicle Vehicle, StopAsk Ask, IReadOnlyList<LoadReport> Loads, StopStudyResult? Study)
{
    public Speed InitialSpeed => Ask.InitialSpeed;

    public static StopReport Of(Vehicle vehicle, StopAsk ask, IReadOnlyList<LoadCase> loads, StopStudyResult? study) =>
        new(vehicle, ask, [.. loads.Select(load => LoadReport.Of(vehicle, load, ask))], study);
}

/// <summary>One load case of a report.</summary>
/// <param name="LoadCase">The load case.</param>
/// <param name="Surfaces">The stops on each surface.</param>
/// <param name="Uneven">Stops on an uneven road or with uneven brakes; none when neither was given.</param>
/// <param name="Bends">A map of bends for each surface; none when not asked for.</param>
/// <param name="Fade">The repeated stops; null when the foot cannot stop the car.</param>
/// <param name="Laps">The laps; null when none are given.</param>
internal sealed record LoadReport(
    LoadCase LoadCase, IReadOnlyList<StopComparisonRow> Surfaces, IReadOnlyList<UnevenStop> Uneven, IReadOnlyList<BendMap> Bends,
        HeatResult? Fade, HeatResult? Laps)
{
    private static readonly Temperature Air = Temperature.FromDegreesCelsius(20);

    /// <summary>Why there are no stops; null when there are.</summary>
    public string? NoStop { get; init; }

    public IReadOnlyList<string> Assumptions => [.. Surfaces.SelectMany(row => row.Setup.Assumptions).Distinct()];

    public static LoadReport Of(Vehicle vehicle, LoadCase load, StopAsk ask)
    {
        if (StopSetup.WhyNoStop(vehicle, load, ask.Conditions) is { } why)
        {
            return new LoadReport(load, [], [], [], null, null) { NoStop = why };
        }

        Speed speed = ask.InitialSpeed;
        IReadOnlyList<StopComparisonRow> surfaces =
        [
            .. ask.Adhesions.SelectMany(adhesion => StopComparison.Of(
                [(vehicle.Name, vehicle)], load.Name, adhesion, speed, ask.Conditions, ask.ReleaseRate, ask.Road.CrossSlope)),
        ];
        StopSetup setup = surfaces[0].Setup;
        HeatResult Heat(HeatCycle cycle) =>
            BrakeHeat.Run(setup.Car with { Grade = Angle.Zero }, setup.Heat, cycle, Air, setup.Fluid, withTrace: false);
        bool uneven = ask.Uneven || vehicle.AxleDynamics.Front.BrakeImbalance != 0 || vehicle.AxleDynamics.Rear.BrakeImbalance != 0;
        IEnumerable<double> sides = !uneven ? [] : ask.Road.Split is null ? ask.Adhesions : ask.Adhesions.Take(1);
        return new LoadReport(
            load, surfaces, [.. sides.SelectMany(adhesion => UnevenStop.Of(vehicle, load, adhesion, ask.Road, speed, ask.PedalForce))],
            ask.Bends ? [.. ask.Adhesions.Select(adhesion => TrailBraking.Map(vehicle, load, adhesion, speed))] : [],
            Heat(HeatCycle.TypeOne(setup.MaximumSpeed)),
            ask.Lap is null ? null : Heat(HeatCycle.Lap(Invariant.Text($"{ask.Laps} laps"), ask.Lap, ask.Laps)));
    }
}
