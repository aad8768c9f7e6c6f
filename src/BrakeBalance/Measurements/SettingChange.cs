using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>What sort of change brings a setting in reach.</summary>
public enum SettingChangeKind
{
    /// <summary>Rear brakes of less force per pressure: the share of the present force.</summary>
    WeakerRear,

    /// <summary>A valve of lower slope: the slope.</summary>
    LowerSlope,

    /// <summary>A proportioning valve besides the balance bar: its slope.</summary>
    AddedValve,

    /// <summary>None of these within reason: an input is wrong.</summary>
    NothingHelps,
}

/// <summary>A change of parts that brings a setting in reach.</summary>
/// <param name="Kind">What sort.</param>
/// <param name="Amount">How much [–], as the sort says.</param>
public sealed record SettingChange(SettingChangeKind Kind, double Amount)
{
    internal static IReadOnlyList<SettingChange> Of(Vehicle vehicle)
    {
        List<SettingChange> changes = [];
        double factor = Enumerable.Range(1, 30).Select(i => 1 - 0.025 * i).FirstOrDefault(share => InReach(Weaker(vehicle, share)));
        if (factor > 0)
        {
            changes.Add(new(SettingChangeKind.WeakerRear, factor));
        }

        if (vehicle.Hydraulics.RearProportioningValve is { Slope: > 0.05 } valve)
        {
            double lower = Enumerable.Range(1, 20).Select(i => Math.Round(valve.Slope - 0.05 * i, 2))
                .FirstOrDefault(s => s >= 0 && InReach(vehicle, s), -1);
            if (lower >= 0)
            {
                changes.Add(new(SettingChangeKind.LowerSlope, lower));
            }
        }
        else if (vehicle.Hydraulics.Split is BalanceBarSplit && InReach(vehicle, SettingSearch.AddedSlope))
        {
            changes.Add(new(SettingChangeKind.AddedValve, SettingSearch.AddedSlope));
        }

        return changes.Count > 0 ? changes : [new(SettingChangeKind.NothingHelps, 0)];
    }

    private static bool InReach(Vehicle vehicle, double? slope = null)
    {
        SettingLimit limit = SettingSearch.Limit(vehicle, vehicle.Conditions, slope);
        return limit.FrontForceShare is not null
            || limit.Knee is { } knee && knee >= (vehicle.Hydraulics.RearProportioningValve?.Adjustment?.KneeBackedOff ?? Pressure.Zero);
    }

    // Force at the road goes with torque over radius, so a larger radius stands for any weaker brake.
    private static Vehicle Weaker(Vehicle vehicle, double share) => vehicle with
    {
        Tyres = new(vehicle.Tyres.Front, vehicle.Tyres.Rear with { LoadedRadius = vehicle.Tyres.Rear.LoadedRadius / share }),
    };
}
