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

    public IEnumerable<(string Task, string Answer)> All
    {
        get
        {
            LoadCase light = _vehicle.LoadCases[0], heavy = _vehicle.LoadCases.MaxBy(load => load.Mass)!;
            BalanceModel with = Model(_knee, _slope, light), without = Model(_knee, 1, light);
            LockUp? start = with.FirstLockUp(Dry), slippery = with.FirstLockUp(Conditions.SlipperyAdhesion);
            LockUp? cautious = Model(_lowest, 0, light).FirstLockUp(Dry), laden = Model(_knee, _slope, heavy).FirstLockUp(Dry);
            yield return ("Let everything through:",
                $"on a dry road {KneeStory.Words(without.FirstLockUp(Dry))}. With the valve as at the start {KneeStory.Words(start)}.");
            yield return ("Be too careful:",
                $"set the lowest knee and let nothing more through. Now {KneeStory.Words(cautious)}, with {Used(cautious)} of the road's "
                + $"grip used; at the start it was {Used(start)}."
                + (cautious?.Efficiency < start?.Efficiency ? " The car cannot brake as hard before a wheel slides." : ""));
            yield return ("Go to a slippery road:", slippery is null ? "no wheel locks."
                : $"{KneeStory.Words(slippery)}. There the valve holds "
                    + (KneeStory.HeldBack(with, without, slippery.At) is var held && held > Pressure.Zero
                        ? $"{Measure.LinePressure.Text(held, _units)} back." : "nothing back: the pressure is below the knee."));
            if (heavy.Mass > light.Mass)
            {
                yield return ("Load the car:",
                    $"{KneeStory.Words(laden)}, with {Used(laden)} of the grip used; without the load it was {Used(start)}."
                    + (_vehicle.Hydraulics.SensesLoad ? "" : " The valve knows nothing of the load."));
            }
        }
    }

    private BalanceModel Model(Pressure knee, double slope, LoadCase load) => new(_vehicle.WithRearKnee(knee, slope), load);

    private string Used(LockUp? lockUp) => lockUp is null ? "none" : Measure.Percent.Text(lockUp.Efficiency, _units);
}
