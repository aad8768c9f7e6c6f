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
            (EffectivenessRule Rule, double Speed, double Longest)[] rules =
                [.. Rules.Value.Where(rule => rule.Rule.Cases.Contains(failure.Id))];
            if (rules.Length > 0 && failure.LostCircuit == LostCircuit.All)
            {
                _whateverFoot = 1;
                continue;
            }

            foreach (LoadCase load in vehicle.LoadCases.Where(load => rules.Any(rule => !rule.Rule.GrossWeightOnly || load == heaviest)))
            {
                BalanceModel model = FailureAnalysis.Damaged(vehicle, load, failure).Model;
                double adhesion = new FailureConditions().Adhesion / (failure.LostCircuit == LostCircuit.Diagonal ? 2 : 1);
                double most = Math.Min(model.FirstLockUp(adhesion)?.At.MasterPressure.Pascals ?? double.PositiveInfinity,
                    model.MaximumPressure.Pascals);
                foreach ((EffectivenessRule rule, double speed, double longest) in rules)
                {
                    if (!rule.GrossWeightOnly || load == heaviest)
                    {
                        stops.Add((!failure.AssistLost, rule.GreatestPedalForce.Newtons, new(model, most, speed, longest)));
                    }
                }
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

        // S = v t/2 + v²/(2 d) − d t²/24 for a rise of t, solved for d (StoppingDistance).
        public double EnoughPascals()
        {
            double rise = StoppingDistance.UsualBuildUp.Seconds;
            double braking = LongestMetres - (SpeedMetresPerSecond * rise / 2);
            double square = rise * rise / 12;
            double v2 = SpeedMetresPerSecond * SpeedMetresPerSecond;
            double deceleration = v2 / (braking + Math.Sqrt((braking * braking) + (square * v2)));
            double? pascals = Model.AtRate(deceleration / Gravity.StandardMetresPerSecondSquared)?.MasterPressure.Pascals;
            return pascals <= MostPascals ? pascals.Value : double.PositiveInfinity;
        }
    }
}
