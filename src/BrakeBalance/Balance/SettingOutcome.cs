using BrakeBalance.Vehicles;

namespace BrakeBalance.Balance;

/// <summary>How one knee and slope do over all conditions.</summary>
/// <param name="Knee">The knee, gauge.</param>
/// <param name="Slope">The slope above it [–].</param>
/// <param name="FrontFirstEverywhere">Whether the front locks first, or both together, in every case, friction spread included.</param>
/// <param name="RearFirstShare">Part of all cases in which the rear locks first [–].</param>
/// <param name="MeanEfficiency">Mean braking efficiency over surfaces, loads and speeds at nominal friction [–].</param>
/// <param name="WorstEfficiency">Least braking efficiency over surfaces, loads and speeds at nominal friction [–].</param>
public sealed record SettingOutcome(Pressure Knee, double Slope, bool FrontFirstEverywhere, double RearFirstShare, double MeanEfficiency,
    double WorstEfficiency);

/// <summary>The highest setting that keeps the front first.</summary>
/// <param name="Variable">What is set.</param>
/// <param name="Knee">The knee, gauge; null when a bar is set, or when no knee keeps the front first.</param>
/// <param name="FrontForceShare">
/// The bar's least share on the front cylinder [–]; null when a knee is set, or when no share keeps the front first.
/// </param>
/// <param name="Slope">Slope above the knee [–]; null for a bar.</param>
/// <param name="Binding">
/// The first condition in which the rear would lock first with a little more, or already with the least; null when nothing binds.
/// </param>
public sealed record SettingLimit(
    SettingVariable Variable, Pressure? Knee, double? FrontForceShare, double? Slope, BindingCondition? Binding)
{
    /// <summary>Whether every setting keeps the front first, so that the number is but the end of the scale.</summary>
    public bool AtAnySetting { get; init; }

    /// <summary>Whether the rear would lock first somewhere without one more valve; true where the car has one to set.</summary>
    public bool Needed => Variable != SettingVariable.AddedKnee || !AtAnySetting;

    internal bool IsEndOfScale(Vehicle vehicle) => Knee >= vehicle.Hydraulics.MaximumPressure || FrontForceShare < 0.2 + 1e-9;

    /// <summary>Whether any setting keeps the front first.</summary>
    public bool Exists => Knee is not null || FrontForceShare is not null;

    /// <summary>The car set at the limit.</summary>
    /// <param name="vehicle">The car the limit was found for.</param>
    /// <returns>A copy; null when no setting keeps the front first.</returns>
    public Vehicle? Set(Vehicle vehicle) => Knee is { } knee ? vehicle.WithRearKnee(knee, Slope)
        : FrontForceShare is { } share ? vehicle.WithFrontForceShare(share) : null;
}

/// <summary>A condition in which the rear locks first: what holds a setting back.</summary>
/// <param name="LoadCase">Name of the load case.</param>
/// <param name="Adhesion">Coefficient of adhesion of the surface [–].</param>
/// <param name="Speed">Speed.</param>
/// <param name="BrakeState">Name of the state of the brakes.</param>
/// <param name="Spread">How much lower the front friction and how much higher the rear was taken [–].</param>
public sealed record BindingCondition(string LoadCase, double Adhesion, Speed Speed, string BrakeState, PerAxle<double> Spread)
{
    /// <summary>
    /// The condition in words, such as "driver only, adhesion 0.98, 180 km/h, brakes hot in front, friction 8 % low in front and 8 %
    /// high at the rear".
    /// </summary>
    /// <param name="units">The system of units.</param>
    public string Words(UnitSystem units) =>
        Invariant.Text($"{Vehicles.LoadCase.Listed(LoadCase)}, adhesion {Adhesion:0.00}, {SpeedRange.Words(Speed, units)}, ")
            + $"brakes {BrakeState}"
        + (Spread.Front + Spread.Rear > 0
            ? Invariant.Text($", friction {100 * Spread.Front:0.#} % low in front, {100 * Spread.Rear:0.#} % high at the rear")
            : "");
}
