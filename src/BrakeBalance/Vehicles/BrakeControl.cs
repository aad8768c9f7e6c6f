using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;

namespace BrakeBalance.Vehicles;

/// <summary>All that lies between the driver's foot and the master cylinder's outlets.</summary>
public sealed record BrakeControl
{
    /// <summary>The pedal.</summary>
    public required Pedal Pedal { get; init; }

    /// <summary>The booster, or none.</summary>
    public required BrakeAssist Assist { get; init; }

    /// <summary>The master cylinder or cylinders.</summary>
    public required MasterCylinder MasterCylinder { get; init; }

    /// <summary>Which wheels each circuit serves.</summary>
    public CircuitLayout Layout { get; init; } = CircuitLayout.FrontRear;

    /// <summary>What each axle's brakes and hoses swallow; null when it is not known, and then no travel is told.</summary>
    public PerAxle<CircuitVolume>? Circuits { get; init; }

    /// <summary>The measured fit of the booster's push rod; null when it was not measured.</summary>
    public PushRodFit? PushRod { get; init; }

    /// <summary>Residual pressure valves in the front and rear line; null where there is none.</summary>
    public PerAxle<ResidualPressureValve?> Residual { get; init; }

    /// <summary>What the driver's foot will do.</summary>
    public FootForce Foot { get; init; } = new();

    /// <summary>The gap that the push rod has to cross before it pushes; zero when not measured or when it is a preload.</summary>
    public Length PushRodGap => PushRod is { } fit && fit.Gap > Length.Zero ? fit.Gap : Length.Zero;

    /// <summary>The master cylinder with the bores and the bar's position that the circuit split of a car's hydraulics names.</summary>
    /// <param name="split">The split.</param>
    /// <returns>
    /// This control's cylinders with the split's bores and force share, or a tandem with the split's ratio of areas; else the cylinder as
    /// it is.
    /// </returns>
    public MasterCylinder MasterCylinderFor(MasterSplit split) => (split, MasterCylinder) switch
    {
        (BalanceBarSplit bar, TwinMasterCylinders twin) =>
            twin with { FrontBore = bar.FrontBore, RearBore = bar.RearBore, FrontForceShare = bar.FrontForceShare },
        (TandemSplit { FrontToRearAreaRatio: var ratio }, TandemMasterCylinder tandem)
            when Math.Abs((TandemMasterCylinder.AreaRatio(tandem.Bore, tandem.RearBore ?? tandem.Bore) / ratio) - 1) > 1e-9
            => tandem with { RearBore = tandem.Bore / Math.Sqrt(ratio) },
        _ => MasterCylinder,
    };
}
