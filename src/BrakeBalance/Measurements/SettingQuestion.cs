using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

internal sealed record SettingQuestion
{
    public required Vehicle Vehicle { get; init; }

    /// <summary>What test stops say of it; null to go by the file and <see cref="Spread"/>.</summary>
    public CarEstimate? Estimate { get; init; }

    /// <summary>How far friction and height of the centre of gravity may lie off the
    /// file's values; by the car's conditions unless said. Not used with an estimate.</summary>
    public ParameterSpread Spread
    {
        get => field ?? ParameterSpread.Under(Vehicle);
        init;
    }

    /// <summary>Surfaces; five over the adhesions of the car's conditions unless said.</summary>
    public IReadOnlyList<SurfaceCondition> Surfaces
    {
        get => field ?? SurfaceCondition.Over(Vehicle.Conditions);
        init;
    }

    /// <summary>States of the brakes; those of the car's conditions unless said.</summary>
    public IReadOnlyList<BrakeState> States
    {
        get => field ?? Vehicle.Conditions.BrakeStates;
        init;
    }

    /// <summary>
    /// Highest probability that the rear locks first, in any one load case, surface, state and speed [–]; 0.001 to 0.5; that of the car's
    /// conditions unless said.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.001 to 0.5.</exception>
    public double Level
    {
        get => field == 0 ? Vehicle.Conditions.RearFirstChance : field;
        init => field = Require.Between(value, 0.001, 0.5);
    }

    /// <summary>Relative scatter of each axle's adhesion from stop to stop [–]; 0 to 0.3.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.3.</exception>
    public double StopScatter { get; init => field = Require.Between(value, 0, 0.3); } = 0.03;

    /// <summary>Standard deviation with which a knee can be set, gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Pressure KneeScatter { get; init => field = Require.NotNegative(value); } = Pressure.FromBars(1);

    /// <summary>Speeds to hold at; those of the car's conditions unless said.</summary>
    public SpeedRange Speeds
    {
        get => field ?? Vehicle.Conditions.Speeds;
        init;
    }

    /// <summary>Number of draws over all conditions; 1000 to 10 million.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside that range.</exception>
    public int Draws { get; init => field = (int)Require.Between(value, 1000, 1e7); } = 100_000;

    /// <summary>Seed of the random numbers.</summary>
    public int Seed { get; init; } = 1;
}
