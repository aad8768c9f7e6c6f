using BrakeBalance.Charts.Publishing;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>What readers of the story can try, and what the car answers.</summary>
internal sealed class BalanceTrials
{
    private const double Dry = Conditions.DryAdhesion;
    private readonly Vehicle _vehicle;
    private readonly UnitSystem _units;
    private readonly Pressure _lowest;
    private readonly Pressure _knee;
    private readonly double _slope;

    public BalanceTrials(Setting setting, UnitSystem units)
    {
        _vehicle = setting.Vehicle;
        _units = units;
        (IReadOnlyList<Pressure> knees, int start) = KneeStory.Knees(setting, units);
        (_lowest, _knee) = (knees[0], knees[start]);
        (IReadOnlyList<double> slopes, int own) = KneeStory.SlopesOf(setting);
        _slope = slopes[own];
    }

    /// <summary>Task and answer.</summary>
    public IEnumerable<(string Task, string Answer)> All
    {
        get
        {
            LockUp? start = At(_knee, _slope, 0, Dry), open = At(_knee, 1, 0, Dry), slippery = At(_knee, _slope, 0, 0.3);
            LockUp? laden = At(_knee, _slope, _vehicle.LoadCases.Length - 1, Dry), cautious = At(_lowest, 0, 0, Dry);
            yield return ("Take the valve out:", $"let all of it through. With the valve {Words(start)}. Without it {Words(open)}.");
            yield return ("Be too careful:",
                $"set the lowest knee and let nothing more through. Now {Words(cautious)}, with {Used(cautious)} of the road's grip used; "
                + $"at the start it was {Used(start)}."
                + (cautious?.Efficiency < start?.Efficiency ? " The car takes longer to stop." : ""));
            yield return ("Go to a slippery road:", slippery is null
                ? "no wheel locks."
                : $"{Words(slippery)}, at a pressure of {Measure.LinePressure.Text(slippery.At.LinePressures.Front, _units)} at the front. "
                    + (slippery.At.LinePressures.Front < _knee
                        ? "That is below the knee, so the valve never comes into it."
                        : "That is above the knee."));
            yield return ("Load the car:", $"{Words(laden)}, with {Used(laden)} of the grip used; without the load it was {Used(start)}. "
                + (laden?.Efficiency < start?.Efficiency
                    ? "The load has given the rear wheels grip that the valve, which knows nothing of it, does not use."
                    : "The valve knows nothing of the load; here its setting happens to suit it."));
        }
    }

    private LockUp? At(Pressure knee, double slope, int load, double adhesion) =>
        new BalanceModel(_vehicle.WithRearKnee(knee, slope), _vehicle.LoadCases[load]).FirstLockUp(adhesion);

    private string Used(LockUp? lockUp) => lockUp is null ? "none" : Measure.Percent.Text(lockUp.Efficiency, _units);

    private static string Words(LockUp? lockUp) => lockUp is null
        ? "no wheel locks"
        : lockUp.First switch
        {
            Axle.Front => "the front wheels lock first",
            Axle.Rear => "the rear wheels lock first",
            _ => "all wheels lock together",
        } + FormattableString.Invariant($", at {lockUp.At.BrakingRate:0.00} g");
}
