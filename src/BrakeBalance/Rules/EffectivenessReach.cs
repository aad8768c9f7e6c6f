using BrakeBalance.Balance;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Rules;

/// <summary>What the verdicts of <see cref="EffectivenessRules"/> lack at least, whatever foot is put before a car's brakes.</summary>
/// <remarks>Travel, a slow booster and a store that empties only take away, so they are left out.</remarks>
internal sealed class EffectivenessReach
{
    private static readonly Lazy<(EffectivenessRule Rule, double SpeedMetresPerSecond, double LongestMetres)[]> Rules = new(() =>
    [
        .. EffectivenessRule.All.Where(rule => rule.TestSpeed is { } speed && rule.LongestDistance(speed) is not null)
            .Select(rule => (rule, rule.TestSpeed!.Value.MetersPerSecond, rule.LongestDistance(rule.TestSpeed.Value)!.Value.Meters)),
    ]);

    private readonly Foot[] _feet;
    private readonly double _whateverFoot;

    /// <summary>Prepares a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="control">How its circuits are laid out, and whether the foot is helped.</param>
    public EffectivenessReach(Vehicle vehicle, BrakeControl control)
    {
        LoadCase heaviest = vehicle.LoadCases.MaxBy(load => load.Mass)!;
        List<(bool Helped, double Newtons, Stop Stop)> stops = [];
        foreach (FailureCase failure in FailureCase.Of(control, vehicle.Hydraulics.SensesLoad, []))
        {
            foreach (LoadCase load in vehicle.LoadCases)
            {
                (EffectivenessRule Rule, double Speed, double Longest)[] rules =
                    [.. Rules.Value.Where(one => one.Rule.LooksAt(failure.Id, load == heaviest))];
                if (rules.Length == 0)
                {
                    continue;
                }

                if (failure.LostCircuit == LostCircuit.All)
                {
                    _whateverFoot = 1;
                    break;
                }

                BalanceModel model = FailureAnalysis.Damaged(vehicle, load, failure).Model;
                double most = Math.Min(
                    model.FirstLockUp(new FailureConditions().AdhesionOf(failure))?.At.MasterPressure.Pascals ?? double.PositiveInfinity,
                    model.MaximumPressure.Pascals);
                stops.AddRange(rules.Select(one =>
                    (!failure.AssistLost, one.Rule.GreatestPedalForce.Newtons, new Stop(model, most, one.Speed, one.Longest))));
            }
        }

        _feet =
        [
            .. stops.GroupBy(one => (one.Helped, one.Newtons), one => one.Stop)
                .Select(group => new Foot(group.Key.Helped, group.Key.Newtons, [.. group])),
        ];
    }

    /// <summary>What the worst of the rules' verdicts lacks at least.</summary>
    /// <param name="pascals">The most pressure of the front master cylinder by a foot, with help or without, of a force in newtons.</param>
    /// <returns>The distance that is too much over the longest allowed [–]; 0 where all stop in time.</returns>
    public double LacksAtLeast(Func<bool, double, double> pascals)
    {
        double lacks = _whateverFoot;
        foreach (Foot foot in _feet)
        {
            double pressure = pascals(foot.Helped, foot.Newtons);
            lacks = pressure >= foot.EnoughPascals ? lacks : Math.Max(lacks, foot.Stops.Max(stop => -stop.Margin(pressure)));
        }

        return lacks;
    }

    private sealed class Foot(bool helped, double newtons, Stop[] stops)
    {
        // Enough for all to stop in time; without end where one never does.
        private readonly Lazy<double> _enough = new(() => stops.Max(stop => stop.EnoughPascals()));

        public bool Helped => helped;

        public double Newtons => newtons;

        public Stop[] Stops => stops;

        public double EnoughPascals => _enough.Value;
    }

    private sealed record Stop(BalanceModel Model, double MostPascals, double SpeedMetresPerSecond, double LongestMetres)
    {
        public double Margin(double pascals)
        {
            double rate = Model.At(Pressure.FromPascals(Math.Min(pascals, MostPascals))).BrakingRate;
            return rate <= 0 ? -1
                : 1 - (StoppingDistance.From(Speed.FromMetersPerSecond(SpeedMetresPerSecond), rate).FromFirstTouch.Meters / LongestMetres);
        }

        public double EnoughPascals()
        {
            double rate = StoppingDistance.RateFor(Speed.FromMetersPerSecond(SpeedMetresPerSecond), Length.FromMeters(LongestMetres));
            double? pascals = Model.AtRate(rate)?.MasterPressure.Pascals;
            return pascals <= MostPascals ? pascals.Value : double.PositiveInfinity;
        }
    }
}
