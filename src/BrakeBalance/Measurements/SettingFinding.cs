using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>Something beside the conditions that has a limit of its own.</summary>
public enum SettingFindingKind
{
    /// <summary>Slipperier roads than the conditions name, down to adhesion 0.05.</summary>
    Ice,

    /// <summary>Grippier tyres than the conditions name, up to adhesion 1.3.</summary>
    OtherTyres,

    /// <summary>Braking in a bend at 0.3 g.</summary>
    Bend,

    /// <summary>The foot eased with both axles locked, past a valve with hysteresis.</summary>
    Release,
}

/// <summary>A limit beside the conditions, and whether the setting keeps it.</summary>
/// <param name="Kind">Which.</param>
/// <param name="FrontFirst">Whether the front locks first there (on release: lets go last) at the setting looked at.</param>
/// <param name="Limit">The highest setting at which it does; null when none does.</param>
public sealed record SettingFinding(SettingFindingKind Kind, bool FrontFirst, SettingLimit? Limit)
{
    /// <summary>Lateral acceleration in the bend, over g [–].</summary>
    public const double BendRate = 0.3;

    /// <summary>Speed in the bend.</summary>
    public static Speed BendSpeed { get; } = Speed.FromKilometersPerHour(80);

    private const double IceAdhesion = 0.05;
    private const double TrackTyreAdhesion = 1.3;

    // What a locked wheel keeps of its adhesion (common practice).
    private const double SlidingShare = 0.75;

    /// <summary>Whether it holds however the car is set.</summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>True when nothing up to the highest pressure, or down to the least front share, breaks it.</returns>
    public bool AtAnySetting(Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        return Limit?.IsEndOfScale(vehicle) == true;
    }

    internal static IReadOnlyList<SettingFinding> Of(Vehicle set, Conditions conditions)
    {
        List<SettingFinding> findings = [];
        void Within(SettingFindingKind kind, Conditions there)
        {
            SettingLimit limit = SettingSearch.Limit(set, there);
            findings.Add(new(kind, SettingSearch.RearFirst(set, there) is null, limit.Exists ? limit : null));
        }

        if (conditions.LowestAdhesion > IceAdhesion)
        {
            Within(SettingFindingKind.Ice, conditions with { LowestAdhesion = IceAdhesion, HighestAdhesion = conditions.LowestAdhesion });
        }

        if (conditions.HighestAdhesion < TrackTyreAdhesion)
        {
            Within(SettingFindingKind.OtherTyres,
                conditions with { LowestAdhesion = conditions.HighestAdhesion, HighestAdhesion = TrackTyreAdhesion });
        }

        LoadCase load = conditions.LoadCasesOf(set)[0];
        if (set.Hydraulics.RearProportioningValve is { } valve)
        {
            if (Bend(set, load, valve) is { } bend)
            {
                findings.Add(bend);
            }

            if (set.Hydraulics.RearValves.Any(part => part.LetsGoLate))
            {
                var model = new BalanceModel(set, load);
                Pressure? highest = ReleaseBehaviour.HighestKnee(set, load, model.MaximumPressure, Conditions.DryAdhesion, SlidingShare,
                    Speed.Zero);
                findings.Add(new(
                    SettingFindingKind.Release,
                        ReleaseBehaviour.Of(model, model.MaximumPressure, Conditions.DryAdhesion, SlidingShare).RearIsFreeWithFront,
                        Of(valve, highest)));
            }
        }

        return findings;
    }

    // A car without a foot that reaches its brakes has no stop in a bend, nor a limit there.
    private static SettingFinding? Bend(Vehicle set, LoadCase load, ProportioningValve valve)
    {
        try
        {
            var setup = StopSetup.From(set, load, Conditions.DryAdhesion);
            Pressure? knee = TrailBraking.SafeKnee(set, setup, Acceleration.FromStandardGravity(BendRate), BendSpeed);
            return new(SettingFindingKind.Bend, knee is { } highest && valve.Knee <= highest, Of(valve, knee));
        }
        catch (ArgumentException)
        {
            return null;
        }
    }

    private static SettingLimit? Of(ProportioningValve valve, Pressure? knee) =>
        knee is null ? null : new(SettingVariable.Knee, knee, null, valve.Slope, Binding: null);
}
