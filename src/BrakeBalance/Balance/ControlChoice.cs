using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Balance;

/// <summary>Tries bores and pedal ratios on a car and shows which fit the targets, and why the others do not.</summary>
/// <remarks>
/// A small bore needs little force and much travel, a big one the reverse: between too long a pedal and too hard a one lies what fits, if
/// anything. Two bores keep their ratio; where the other one would be no cylinder's, the choice says so. Source: law of the lever and
/// continuity.
/// </remarks>
public static class ControlChoice
{
    /// <summary>The whole grid of choices.</summary>
    /// <param name="model">The balance of the car in one load case; the car must know its circuits' volumes.</param>
    /// <param name="bores">Bores to try (the front cylinder's with a balance bar).</param>
    /// <param name="ratios">Pedal ratios to try [–].</param>
    /// <param name="assist">What helps the foot.</param>
    /// <param name="targets">What is wanted.</param>
    /// <returns>One choice for each combination, bore changing fastest, then ratio.</returns>
    /// <exception cref="ArgumentException">
    /// The car does not say what lies between foot and line pressure, or not what its circuits swallow.
    /// </exception>
    public static ImmutableArray<ControlChoiceResult> Sweep(
        BalanceModel model,
        IReadOnlyList<Length> bores,
        IReadOnlyList<double> ratios,
        BrakeAssist assist,
        ControlTargets targets)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(targets);
        BrakeControl present = new ControlForce(model).Control;
        Refuse.If(present.Circuits is null, "The pedal's travel cannot be told: the car's file has no fluid section.", nameof(model));

        double reference = present.MasterCylinderFor(model.Vehicle.Hydraulics.Split) is TwinMasterCylinders twin
            ? twin.FrontBore.Meters : 0;
        return [.. from ratio in ratios from bore in bores select Try(model, present, bore, ratio, assist, targets, reference)];
    }

    private static ControlChoiceResult Try(BalanceModel model, BrakeControl present, Length bore, double ratio,
        BrakeAssist assist, ControlTargets targets, double presentFrontBoreMetres)
    {
        var bar = model.Vehicle.Hydraulics.Split as BalanceBarSplit;
        Length? otherBore = bar is null ? null : bar.RearBore * (bore.Meters / presentFrontBoreMetres);
        if (WithBore(present.MasterCylinder, bore, otherBore) is not { } cylinder)
        {
            return new ControlChoiceResult(
                Bore: bore,
                PedalRatio: ratio,
                PedalForce: null,
                Travel: null,
                FailSafePedalForce: null,
                TooHard: false,
                TooLight: false,
                TooLong: false,
                TooHardWithoutAssist: false,
                NotPossible: Invariant.Text($"no such cylinder: a bore would lie outside "
                    + $"{MasterCylinder.SmallestBore.Millimeters:0} to {MasterCylinder.LargestBore.Millimeters:0} mm"));
        }

        BrakeControl tried = present with
        {
            Pedal = present.Pedal with { Lever = new FixedRatioLever { Ratio = ratio } },
            Assist = assist,
            MasterCylinder = cylinder,
        };
        BalanceModel on = bar is not null && otherBore is { } rear
            ? new BalanceModel(
                model.Vehicle with
                {
                    Hydraulics = model.Vehicle.Hydraulics with
                    {
                        Split = bar with
                        {
                            FrontBore = bore,
                            RearBore = rear
                        }
                    }
                },
                model.LoadCase,
                model.Speed)
            : model;
        var control = new ControlForce(on, tried);
        var dead = new ControlForce(on, tried with { Assist = assist.WithoutEnergy() });
        ControlForcePoint? hard = control.AtRate(targets.BrakingRate);
        PedalTravel? travel = hard is null ? null : control.TravelAt(hard.Balance.MasterPressure);
        Force? failSafe = dead.AtRate(targets.FailSafeRate)?.PedalForce;
        return new ControlChoiceResult(
            Bore: bore,
            PedalRatio: ratio,
            PedalForce: hard?.PedalForce,
            Travel: travel,
            FailSafePedalForce: failSafe,
            TooHard: hard is null || hard.PedalForce > targets.GreatestPedalForce,
            TooLight: hard is not null && hard.PedalForce < targets.LeastPedalForce,
            TooLong: travel is null || !travel.Reaches || travel.PadLeft < targets.LeastTravelLeft,
            TooHardWithoutAssist: failSafe is null || failSafe > targets.GreatestFailSafeForce);
    }

    private static MasterCylinder? WithBore(MasterCylinder master, Length bore, Length? otherBore) => master switch
    {
        TandemMasterCylinder tandem => tandem.Scaled(bore),
        SingleMasterCylinder single => MasterCylinder.IsSensible(bore) ? single with { Bore = bore } : null,
        _ => MasterCylinder.IsSensible(bore) && otherBore is { } other && MasterCylinder.IsSensible(other) ? master : null,
    };
}

/// <summary>What is wanted of pedal, booster and master cylinder together.</summary>
public sealed record ControlTargets
{
    /// <summary>Deceleration of a hard stop [–]; 0.8 unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.1 to 2.</exception>
    public double BrakingRate { get; init => field = Require.Between(value, 0.1, 2); } = 0.8;

    /// <summary>Greatest pedal force at that rate; above zero; 70 lbf unless said, a comfortable push (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Force GreatestPedalForce { get; init => field = Require.Positive(value); } = Force.FromPoundsForce(70);

    /// <summary>
    /// Least pedal force at that rate, below which the pedal is touchy; not negative; 20 lbf unless said (common practice).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Force LeastPedalForce { get; init => field = Require.NotNegative(value); } = FootForce.Touchy;

    /// <summary>Least travel of the pad left to the floor at that rate; not negative; 50 mm unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Length LeastTravelLeft { get; init => field = Require.NotNegative(value); } = PedalTravel.WantedReserve;

    /// <summary>Deceleration to be had without assist [–]; 0.25 unless said: 168 m from 100 km/h.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public double FailSafeRate { get; init => field = Require.Between(value, 0.05, 2); } = 0.25;

    /// <summary>Greatest pedal force at that rate without assist; above zero; 500 N unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Force GreatestFailSafeForce { get; init => field = Require.Positive(value); } = Force.FromNewtons(500);
}

/// <summary>One bore, pedal ratio and booster on a car.</summary>
/// <param name="Bore">Bore of the master cylinder (the front one's with a balance bar).</param>
/// <param name="PedalRatio">Pedal ratio [–].</param>
/// <param name="PedalForce">Pedal force at the rate wanted; null when the highest pressure does not reach it.</param>
/// <param name="Travel">The pedal's travel at that rate; null when it cannot be told.</param>
/// <param name="FailSafePedalForce">
/// Pedal force without assist at the fail-safe rate; null when the highest pressure does not reach it.
/// </param>
/// <param name="TooHard">Whether the pedal is harder than wanted.</param>
/// <param name="TooLight">Whether the pedal is lighter than wanted.</param>
/// <param name="TooLong">Whether the pedal comes closer to the floor than wanted, or reaches it.</param>
/// <param name="TooHardWithoutAssist">Whether the car cannot be stopped as wanted once the assist is dead.</param>
/// <param name="NotPossible">Why there is no such cylinder, in words, and then nothing else is told; null when there is.</param>
public sealed record ControlChoiceResult(
    Length Bore, double PedalRatio, Force? PedalForce, PedalTravel? Travel, Force? FailSafePedalForce, bool TooHard,
    bool TooLight, bool TooLong, bool TooHardWithoutAssist, string? NotPossible = null)
{
    /// <summary>Whether every target is met.</summary>
    public bool Fits => NotPossible is null && !TooHard && !TooLight && !TooLong && !TooHardWithoutAssist;

    /// <summary>What does not fit, in words.</summary>
    /// <returns>"fits", or the reasons.</returns>
    public string Describe()
    {
        List<string> reasons = NotPossible is null ? [] : [NotPossible];
        if (TooLong)
        {
            reasons.Add("pedal too long: bore too small or ratio too high");
        }

        if (TooHard)
        {
            reasons.Add("pedal too hard: bore too big, ratio too low or assist too weak");
        }

        if (TooLight)
        {
            reasons.Add("pedal touchy: bore too small, ratio too high or assist too strong");
        }

        if (TooHardWithoutAssist)
        {
            reasons.Add("too hard without assist");
        }

        return reasons.Count == 0 ? "fits" : string.Join("; ", reasons);
    }
}
