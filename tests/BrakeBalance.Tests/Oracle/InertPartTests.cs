using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Stops;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using FsCheck.Xunit;
using UnitsNet;

namespace BrakeBalance.Tests.Oracle;

/// <summary>A valve that never acts changes no answer, whoever is asked.</summary>
[Properties(Arbitrary = [typeof(AnyCase), typeof(InertPart)], MaxTest = 200)]
public class InertPartTests
{
    private const double Exact = 1e-4;

    [Property(Replay = "110,111")]
    public void It_changes_no_lock_up_of_the_balance(BrakingCase given, InertPart part)
    {
        LockUp? Of(Vehicle car) => new BalanceModel(car, car.LoadCases[0], given.Speed).FirstLockUp(given.Adhesion);
        Same(given, Agreement.Of(Of(given.Car)), Agreement.Of(Of(part.FitTo(given.Car))));
    }

    // Fewer than of the others: each summary searches the greatest safe knee over all its surfaces.
    [Property(Replay = "120,121", MaxTest = 30)]
    public void It_changes_nothing_in_the_summary(BrakingCase given, InertPart part)
    {
        BalanceSummary Of(Vehicle car) => BalanceSummary.Of(car, [0.3, 0.7], [0.3, given.Adhesion], "light", given.Speed);
        (BalanceSummary without, BalanceSummary with) = (Of(given.Car), Of(part.FitTo(given.Car)));
        foreach ((LoadCaseSummary a, LoadCaseSummary b) in without.LoadCases.Zip(with.LoadCases))
        {
            foreach ((SurfaceSummary one, SurfaceSummary other) in a.LockUps.Zip(b.LockUps))
            {
                Same(given with { Adhesion = one.Adhesion }, Agreement.Of(one.LockUp), Agreement.Of(other.LockUp));
            }

            foreach ((RateSummary one, RateSummary other) in a.Rates.Zip(b.Rates))
            {
                TwoWays.Hold(given, one.Installed is null == other.Installed is null,
                    "a braking rate is reached by one and not by the other");
                TwoWays.Hold(
                    given, one.Installed is null || Agreement.NearPressure(one.Installed.MasterPressure.Pascals,
                        other.Installed!.MasterPressure.Pascals, Exact)
                        || Agreement.Near(one.BrakingRate, Textbook.At(PlainCarReader.Read(given.Car, a.LoadCase),
                            other.Installed.MasterPressure.Pascals, given.MetresPerSecond).BrakingRate, Exact),
                    $"pressure for a braking rate: {one.Installed?.MasterPressure} without, "
                        + $"{other.Installed?.MasterPressure} with the part");
            }
        }
    }

    [Property(Replay = "130,131")]
    public void It_changes_no_judgement_of_a_setting(BrakingCase given, InertPart part)
    {
        if (!CanBeAsked(given.Car, part))
        {
            return;
        }

        Conditions conditions = TwoWays.ConditionsOf(given, 0.08);
        (Vehicle without, Vehicle with) = (given.Car, part.FitTo(given.Car));
        var knee = Pressure.FromBars(100 * given.Choice);
        SettingOutcome one = SettingSearch.Evaluate(without, conditions, knee, 0.4);
        SettingOutcome other = SettingSearch.Evaluate(with, conditions, knee, 0.4);
        TwoWays.Hold(given, Math.Abs(one.RearFirstShare - other.RearFirstShare) < 1e-9 || Ties(given, conditions, knee),
            $"share of rear-first cases {one.RearFirstShare} without, {other.RearFirstShare} with the part");
        TwoWays.Hold(given, Agreement.Near(one.MeanEfficiency, other.MeanEfficiency, Exact),
            $"mean efficiency {one.MeanEfficiency} without, {other.MeanEfficiency} with the part");
    }

    [Property(Replay = "140,141", MaxTest = 60)]
    public void It_changes_nothing_in_the_draws(BrakingCase given, InertPart part)
    {
        if (!CanBeAsked(given.Car, part))
        {
            return;
        }

        // With everything scattered as usual: the same draws must come to the same ends.
        SettingAnswer Of(Vehicle car) =>
            RobustSetting.Find(TwoWays.WithoutScatter(given with { Car = car with { LoadCases = [car.LoadCases[0]] } }) with
            {
                Spread = new ParameterSpread(),
                Surfaces = [new SurfaceCondition { Name = "road", Adhesion = given.Adhesion }],
                StopScatter = 0.03,
                KneeScatter = Pressure.FromBars(1),
            });
        (SettingAnswer without, SettingAnswer with) = (Of(given.Car), Of(part.FitTo(given.Car)));
        TwoWays.Hold(given, without.Variable == with.Variable && without.Draws == with.Draws,
            $"{without.Draws} draws over {without.Variable} without, {with.Draws} over {with.Variable} with the part");
        foreach ((SettingPoint one, SettingPoint other) in without.TradeOff.Append(without.Present).Zip(with.TradeOff.Append(with.Present)))
        {
            TwoWays.Hold(
                given, Math.Abs(one.RearFirst - other.RearFirst) < 3e-3 && Math.Abs(one.MeanEfficiency - other.MeanEfficiency) < 1e-3,
                $"at {one.Knee} {one.FrontForceShare}: rear first {one.RearFirst}, efficiency {one.MeanEfficiency} without; "
                    + $"{other.RearFirst}, {other.MeanEfficiency} with the part {part}");
        }
    }

    [Property(Replay = "150,151")]
    public void It_changes_no_stop(BrakingCase given, InertPart part)
    {
        StopResult Of(Vehicle car)
        {
            StopSetup setup = StopSetup.From(car, car.LoadCases[0], given.Adhesion);
            return StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp, Speed.FromKilometersPerHour(Math.Max(40,
                given.KilometresPerHour)), withTrace: false);
        }

        (StopResult without, StopResult with) = (Of(given.Car), Of(part.FitTo(given.Car)));
        TwoWays.Hold(given, Agreement.Near(without.Distance.Meters, with.Distance.Meters),
            $"distance {without.Distance} without, {with.Distance} with the part {part}");
        foreach (Axle axle in Enum.GetValues<Axle>())
        {
            TwoWays.Hold(given, without.Locks[axle] is null == with.Locks[axle] is null,
                $"{axle} locks with or without the part {part} only");
            TwoWays.Hold(
                given, without.Locks[axle] is not { } one
                    || Math.Abs(one.Time.Seconds - with.Locks[axle]!.Time.Seconds) <= 1e-3 * Math.Max(1, one.Time.Seconds),
                $"{axle} locks after {without.Locks[axle]?.Time} without, {with.Locks[axle]?.Time} with the part {part}");
        }
    }

    [Property(Replay = "160,161")]
    public void It_changes_no_pressure_of_a_threshold_driver(BrakingCase given, InertPart part)
    {
        Agreement.Lock? Of(Vehicle car) =>
            LockPressure.Lowest(StopSetup.From(car, car.LoadCases[0], given.Adhesion).Car, given.Speed) is { } found
                && found.LinePressure <= car.Hydraulics.MaximumPressure
                ? new(found.Axle, found.LinePressure.Pascals)
                : null;
        Same(given, Of(given.Car), Of(part.FitTo(given.Car)));
    }

    // A proportioning valve added where there is none becomes the valve that is set: then another question is asked.
    private static bool CanBeAsked(Vehicle car, InertPart part) => !part.MayBeSet || part.InFront || car.Hydraulics.RearValves.Any(valve =>
        valve is ProportioningValve);

    private static void Same(BrakingCase given, Agreement.Lock? without, Agreement.Lock? with)
    {
        bool near = without is null || with is null
            ? without is null && with is null
            : without.First == with.First && Agreement.NearPressure(without.Pascals, with.Pascals, Exact)
                && (without.Rate is not { } rate || Agreement.Near(rate, with.Rate!.Value, Exact))
                    && (without.Efficiency is not { } efficiency || Agreement.Near(efficiency, with.Efficiency!.Value, Exact));
        if (!near)
        {
            // Both may be right where the question has no sharp answer.
            Agreement.OnFirstLock(given, given.Plain, given.Adhesion, given.MetresPerSecond, without, 2 * Exact);
            Agreement.OnFirstLock(given, given.Plain, given.Adhesion, given.MetresPerSecond, with, 2 * Exact);
        }
    }

    private static bool Ties(BrakingCase given, Conditions conditions, Pressure knee) => given.Car.LoadCases.Any(load =>
    {
        PlainCar car = Textbook.WithRearKnee(PlainCarReader.Read(given.Car, load, 0.92, 1.08), knee.Pascals, 0.4);
        return conditions.Adhesions.Any(adhesion => Agreement.RearMayBeFirst(car, adhesion, 0) && !Agreement.RearMustBeFirst(car,
            adhesion, 0));
    });
}
