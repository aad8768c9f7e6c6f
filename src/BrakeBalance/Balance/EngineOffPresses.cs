using BrakeBalance.Assist;

namespace BrakeBalance.Balance;

/// <summary>
/// How often a car can be braked in a row after its engine has stopped: equal presses, each with a limit on the pedal force.
/// </summary>
/// <remarks>
/// <para>A press counts when the deceleration asked for takes no more than the limit at the end of its stroke; the count ends with the
/// first that takes more.</para>
/// <para>Source: <see cref="BrakeAssist.Reserve(IReadOnlyList{Length})"/> for what each press finds; rate and limit are a choice, stated
/// with every count.</para>
/// </remarks>
public sealed record EngineOffPresses
{
    /// <summary>Deceleration of each press unless another is asked for [–]: 0.5, a firm stop.</summary>
    public const double UsualRate = 0.5;

    private EngineOffPresses(double brakingRate, Force greatestPedalForce, ImmutableArray<ReserveApplication> applications,
        ImmutableArray<Force?> pedalForces)
    {
        BrakingRate = brakingRate;
        GreatestPedalForce = greatestPedalForce;
        Applications = applications;
        PedalForces = pedalForces;
    }

    /// <summary>Greatest pedal force of a press that counts unless another is asked for: 70 lbf (311 N).</summary>
    /// <remarks>Common practice: what a leg gives in comfort, the same as in <see cref="ControlTargets.GreatestPedalForce"/>.</remarks>
    public static Force UsualForce { get; } = new ControlTargets().GreatestPedalForce;

    /// <summary>Deceleration of each press [–].</summary>
    public double BrakingRate { get; }

    /// <summary>Greatest pedal force of a press that counts.</summary>
    public Force GreatestPedalForce { get; }

    /// <summary>The presses out of the store; empty when nothing is stored or the store is not described.</summary>
    public ImmutableArray<ReserveApplication> Applications { get; }

    /// <summary>
    /// Pedal force of each press in <see cref="Applications"/> at <see cref="BrakingRate"/>; null where no pressure reaches that rate.
    /// </summary>
    public ImmutableArray<Force?> PedalForces { get; }

    /// <summary>Pedal force at <see cref="BrakingRate"/> with the store spent; null where no pressure reaches that rate.</summary>
    public required Force? WithoutAssist { get; init; }

    /// <summary>Whether the store is described: false for a vacuum booster whose chamber's volume is not known.</summary>
    public required bool IsDescribed { get; init; }

    /// <summary>Whether any help is stored that a press could use.</summary>
    public bool IsStored => Applications.Any(application => application.MaximumAssist > Force.Zero);

    /// <summary>Whether the count has no end, because a press takes no more than the limit even with the store spent.</summary>
    public bool NeedsNoAssist => WithoutAssist <= GreatestPedalForce;

    /// <summary>How many presses in a row take no more than the limit; null when the store is not described or they never end.</summary>
    public int? Count => !IsDescribed || NeedsNoAssist ? null : PedalForces.TakeWhile(force => force <= GreatestPedalForce).Count();

    /// <summary>The presses of a car.</summary>
    /// <param name="control">The car's control with the engine running.</param>
    /// <param name="brakingRate">Deceleration of each press [–]; <see cref="UsualRate"/> unless said.</param>
    /// <param name="greatestPedalForce">Greatest pedal force of a press that counts; <see cref="UsualForce"/> unless said.</param>
    /// <param name="applications">How many presses are tried; 1 to 100.</param>
    public static EngineOffPresses Of(ControlForce control, double brakingRate = UsualRate, Force? greatestPedalForce = null,
        int applications = 8)
    {
        ArgumentNullException.ThrowIfNull(control);
        BrakeAssist assist = control.Control.Assist;
        Force? Needed(BrakeAssist left) =>
            new ControlForce(control.Model, control.Control with { Assist = left }).AtRate(brakingRate)?.PedalForce;
        ImmutableArray<ReserveApplication> reserve =
            FailureAnalysis.Reserve(control, new FailureConditions { BrakingRate = brakingRate }, applications);
        return new(brakingRate, greatestPedalForce ?? UsualForce, reserve, [.. reserve.Select(application => Needed(application.Assist))])
        {
            WithoutAssist = Needed(assist.WithoutEnergy()),
            IsDescribed = assist is not VacuumBooster { VacuumChamberVolume.Value: 0 },
        };
    }
}
