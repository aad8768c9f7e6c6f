using System.Globalization;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Stops;
using BrakeBalance.Summaries;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;
using Xunit.Sdk;

namespace BrakeBalance.Tests.Oracle;

/// <summary>Each way of asking the library which axle locks first, and when, held against the textbook.</summary>
internal static class TwoWays
{
    /// <summary>The state at a pressure, by <see cref="BalanceModel.At"/>.</summary>
    public static void State(BrakingCase given)
    {
        PlainCar car = given.Plain;
        var model = new BalanceModel(given.Car, given.Load, given.Speed);
        double pascals = given.Choice * car.HighestPressure;
        BalancePoint actual = model.At(Pressure.FromPascals(pascals));
        PlainState expected = Textbook.At(car, pascals, given.MetresPerSecond);
        Same(given, "front line pressure", expected.FrontLinePressure, actual.LinePressures.Front.Pascals);
        Same(given, "rear line pressure", expected.RearLinePressure, actual.LinePressures.Rear.Pascals);
        Same(given, "front braking force", expected.FrontForce, actual.BrakingForces.Front.Newtons);
        Same(given, "rear braking force", expected.RearForce, actual.BrakingForces.Rear.Newtons);
        Same(given, "front load", expected.FrontLoad, actual.NormalReactions.Front.Newtons);
        Same(given, "rear load", expected.RearLoad, actual.NormalReactions.Rear.Newtons, 0.01);
        Same(given, "braking rate", expected.BrakingRate, actual.BrakingRate);
        double weight = car.Mass * PlainCar.Gravity;
        Same(given, "greatest rate", (Textbook.MostForce(car, given.Adhesion, given.MetresPerSecond) + expected.OtherForce) / weight,
            model.GreatestRate(given.Adhesion));
    }

    /// <summary>The pressure for a deceleration, by <see cref="BalanceModel.AtRate"/>.</summary>
    public static void Rate(BrakingCase given)
    {
        PlainCar car = given.Plain;
        double wanted = 0.02 + (1.4 * given.Choice);
        BalancePoint? actual = new BalanceModel(given.Car, given.Load, given.Speed).AtRate(wanted);
        SameRate(given, car, wanted, actual?.MasterPressure.Pascals);
    }

    /// <summary>The first lock-up, by <see cref="BalanceModel.FirstLockUp"/>.</summary>
    public static void Balance(BrakingCase given) => Agreement.OnFirstLock(
        given, given.Plain, given.Adhesion, given.MetresPerSecond, Agreement.Of(new BalanceModel(given.Car, given.Load,
            given.Speed).FirstLockUp(given.Adhesion)));

    /// <summary>The first lock-ups and pressures that the summary prints.</summary>
    public static void Summary(BrakingCase given)
    {
        double[] rates = [0.1 + (0.5 * given.Choice), 0.9];
        double[] adhesions = [given.Adhesion, 0.5];
        BalanceSummary summary = BalanceSummary.Of(given.Car, rates, adhesions, null, given.Speed);
        foreach (LoadCaseSummary part in summary.LoadCases)
        {
            PlainCar car = PlainCarReader.Read(given.Car, part.LoadCase);
            (double front, double rear) = Textbook.StaticLoads(car, given.MetresPerSecond);
            Same(given, "static front load", front, part.StaticAxleLoads.Front.Newtons);
            Same(given, "static rear load", rear, part.StaticAxleLoads.Rear.Newtons);
            foreach (SurfaceSummary surface in part.LockUps)
            {
                Agreement.OnFirstLock(given, car, surface.Adhesion, given.MetresPerSecond, Agreement.Of(surface.LockUp));
            }

            foreach (RateSummary rate in part.Rates)
            {
                SameRate(given, car, rate.BrakingRate, rate.Installed?.MasterPressure.Pascals);
            }
        }
    }

    /// <summary>One setting over surfaces and loads, by <see cref="SettingSearch.Sweep"/>, at nominal friction and with a
    /// spread.</summary>
    public static void Setting(BrakingCase given)
    {
        Conditions conditions = ConditionsOf(given, given.Choice < 0.3 ? 0 : 0.08);
        double knee = given.Choice * 100e5;
        double slope = 0.1 + (0.8 * given.Adhesion / 1.5);
        SettingOutcome actual = SettingSearch.Evaluate(given.Car, conditions, Pressure.FromPascals(knee), slope);
        (double share, double mean, double worst) = ByTextbook(given, conditions, knee, slope, actual);
        Same(given, "share of rear-first cases", share, actual.RearFirstShare);
        Same(given, "mean efficiency", mean, actual.MeanEfficiency);
        Same(given, "worst efficiency", worst, actual.WorstEfficiency);
    }

    /// <summary>The greatest safe knee, by <see cref="SettingSearch.Limit"/>: a little less is safe in the textbook too, a
    /// little more is not.</summary>
    public static void GreatestKnee(BrakingCase given)
    {
        Conditions conditions = ConditionsOf(given, 0.08);
        const double slope = 0.4;
        SettingLimit limit = SettingSearch.Limit(given.Car, conditions, slope);
        double highest = given.Car.Hydraulics.MaximumPressure.Pascals;
        bool Everywhere(double knee, IEnumerable<double> adhesions, Func<PlainCar, double, bool> holds) => given.Car.LoadCases.All(load =>
        {
            PlainCar car = Textbook.WithRearKnee(PlainCarReader.Read(given.Car, load, 0.92, 1.08), knee, slope);
            return adhesions.All(adhesion => holds(car, adhesion));
        });

        // The library looks between the adhesions of the conditions too and names the one that binds: a knee must be safe there as well.
        (double lowest, double highestAdhesion) = (conditions.LowestAdhesion, conditions.HighestAdhesion);
        IEnumerable<double> between =
            Enumerable.Range(0, 41).Select(i => lowest + ((highestAdhesion - lowest) * i / 40))
                .Concat(limit.Binding is { } binding ? [binding.Adhesion] : []);
        bool MayBeSafe(double knee) =>
            Everywhere(knee, conditions.Adhesions, (car, adhesion) => !Agreement.RearMustBeFirst(car, adhesion, 0));
        bool MustBeSafe(double knee) => Everywhere(knee, between.Reverse(), (car, adhesion) => !Agreement.RearMayBeFirst(car, adhesion, 0));

        if (limit.Knee?.Pascals is not { } found)
        {
            Hold(given, !MustBeSafe(0), "the library finds no safe knee, but in the textbook 0 bar is safe");
            return;
        }

        double apart = 2e3 + (1e-3 * found);
        Hold(given, MayBeSafe(Math.Max(0, found - apart)),
            $"the library's greatest safe knee {found / 1e5:0.###} bar is not safe in the textbook");
        Hold(given, found >= highest || !MustBeSafe(found + apart),
            $"in the textbook a knee above the library's greatest safe {found / 1e5:0.###} bar is safe too");
    }

    /// <summary>The draws of <see cref="RobustSetting"/> when nothing scatters: probabilities of 0 or 1.</summary>
    public static void Draws(BrakingCase given)
    {
        Vehicle vehicle = given.Car with { LoadCases = [given.Load] };
        SettingAnswer answer = RobustSetting.Find(WithoutScatter(given with { Car = vehicle }));
        PlainCar car = given.Plain;
        SamePoint(given, car, answer.Present);
        for (int i = 0; i < answer.TradeOff.Count; i += 15)
        {
            SettingPoint point = answer.TradeOff[i];
            PlainCar set = point.FrontForceShare is { } share && vehicle.Hydraulics.Split is BalanceBarSplit bar
                ? PlainCarReader.Read(vehicle with
                {
                    Hydraulics = vehicle.Hydraulics with { Split = bar with { FrontForceShare = share } },
                }, given.Load)
                : Textbook.WithRearKnee(car, point.Knee!.Value.Pascals,
                    vehicle.Hydraulics.RearValves.OfType<ProportioningValve>().FirstOrDefault()?.Slope ?? 0.4);
            SamePoint(given, set, point);
        }
    }

    /// <summary>The first lock in a stop whose pressure rises so slowly, with wheels so light, that it is the steady balance at every
    /// moment.</summary>
    public static void Stop(BrakingCase given)
    {
        PlainCar car = given.Plain;
        BrakingCase fast = given with { KilometresPerHour = Math.Max(80, given.KilometresPerHour) };
        (Agreement.Lock? actual, double speed) = SlowStop(fast, car);
        if (actual is not null)
        {
            Agreement.OnFirstLock(given, car, given.Adhesion, speed, actual);
            return;
        }

        bool Locks(double metresPerSecond) => Textbook.FirstLock(car, given.Adhesion, metresPerSecond) is { } found
            && found.At.Pressure < 0.99 * car.HighestPressure;
        Hold(given, !Locks(fast.MetresPerSecond) || !Locks(0.6 * fast.MetresPerSecond),
            "nothing locks in the stop, but in the textbook it does");
    }

    /// <summary>The pressure of first lock-up that a threshold driver goes by, by <see cref="LockPressure.Lowest(BrakedCar,
    /// Speed)"/>.</summary>
    public static void Threshold(BrakingCase given)
    {
        StopSetup setup = StopSetup.From(given.Car, given.Load, given.Adhesion);
        (Pressure LinePressure, Axle Axle)? actual = LockPressure.Lowest(setup.Car, given.Speed);
        Agreement.OnFirstLock(
            given, given.Plain, given.Adhesion, given.MetresPerSecond,
            actual is { } found && found.LinePressure <= given.Car.Hydraulics.MaximumPressure ? new Agreement.Lock(found.Axle,
                found.LinePressure.Pascals) : null);
    }

    /// <summary>A question to the draws in which nothing scatters.</summary>
    public static SettingQuestion WithoutScatter(BrakingCase given) => new()
    {
        Vehicle = given.Car,
        Spread = new ParameterSpread { FrontFriction = 0, RearFriction = 0, CentreOfGravityHeight = 0 },
        Surfaces = [new SurfaceCondition { Name = "road", Adhesion = given.Adhesion, Spread = 0 }],
        States = [new BrakeState { Name = "normal" }],
        StopScatter = 0,
        KneeScatter = Pressure.Zero,
        Speeds = SpeedRange.Only(given.Speed),
        Draws = 1000,
    };

    /// <summary>Surfaces from a slipperier one up to that of a case.</summary>
    public static Conditions ConditionsOf(BrakingCase given, double spread)
    {
        double lowest = Math.Max(0.05, given.Adhesion * (0.3 + (0.5 * given.Choice)));
        return new Conditions
        {
            Speeds = SpeedRange.Only(Speed.Zero),
            LowestAdhesion = lowest,
            HighestAdhesion = Math.Max(given.Adhesion, lowest + 0.1),
            FrictionSpread = new(spread, spread),
            BrakeStates = [new BrakeState { Name = "normal" }],
            AdhesionSteps = 4
        };
    }

    /// <summary>First lock of a slow stop, with the speed at that moment.</summary>
    public static (Agreement.Lock? Lock, double MetresPerSecond) SlowStop(BrakingCase given, PlainCar car)
    {
        double start = given.MetresPerSecond;
        PlainLock? expected = Textbook.FirstLock(car, given.Adhesion, start);
        PlainState at = expected?.At ?? Textbook.At(car, car.HighestPressure, start);

        // The foot takes as long as slows the car by about a fifth: half the braking rate on the way.
        double seconds = 0.2 * start / (0.5 * at.BrakingRate * PlainCar.Gravity);
        var buildUp = new PressureBuildUp
        {
            DeadTime = Duration.Zero,
            AssistLag = Duration.Zero,
            RampRate = PressureChangeRate.FromPascalsPerSecond(Math.Max(at.Pressure, 1e5) / seconds),
        };

        // A slip curve without a peak, so that the wheel stands still when the torque reaches what the road can hold and not before.
        var wheels = new AxleDynamics
        {
            WheelInertia = MassMomentOfInertia.FromKilogramSquareMeters(3e-4),
            SlipCurve = new BurckhardtCurve { Name = "rises to lock", C1 = 1, C2 = 0.5, C3 = 0 },
        };
        StopSetup setup = StopSetup.From(given.Car with { AxleDynamics = new(wheels, wheels) }, given.Load, given.Adhesion);
        StopResult result = StraightStop.Run(setup.Car, new EmergencyDriver { HeldPressure = given.Car.Hydraulics.MaximumPressure },
            buildUp,
            given.Speed, withTrace: false);
        LockEvent? first = new[] { result.Locks.Front, result.Locks.Rear }.OfType<LockEvent>().MinBy(one => one.Time.Seconds);
        var command = new PressureCommand(buildUp, given.Car.Hydraulics.MaximumPressure.Pascals);
        return first is null
            ? (null, 0)
            : (new Agreement.Lock(first.Axle, command.At(first.Time.Seconds), first.BrakingRate), first.Speed.MetersPerSecond);
    }

    public static void Hold(object given, bool condition, FormattableString what) => Hold(given, condition,
        what.ToString(CultureInfo.InvariantCulture));

    public static void Hold(object given, bool condition, string what)
    {
        if (!condition)
        {
            throw new XunitException($"{what}\n{given}");
        }
    }

    public static void Same(object given, string what, double expected, double actual, double absolute = 0) => Hold(
        given, Agreement.Near(expected, actual) || Math.Abs(expected - actual) <= absolute,
            $"{what}: textbook {expected:0.########}, library {actual:0.########}");

    private static void SamePoint(BrakingCase given, PlainCar car, SettingPoint point)
    {
        string where = string.Create(CultureInfo.InvariantCulture,
            $"knee {point.Knee?.Bars:0.####} bar, front share {point.FrontForceShare:0.####}\nset: {car}\nfrom {given}");
        Hold(where, point.RearFirst is 0 or 1, $"probability {point.RearFirst} though nothing scatters");
        Hold(where, point.RearFirst == 1 || !Agreement.RearMustBeFirst(car, given.Adhesion, given.MetresPerSecond),
            "in the textbook the rear locks first");
        Hold(where, point.RearFirst == 0 || Agreement.RearMayBeFirst(car, given.Adhesion, given.MetresPerSecond),
            "in the textbook the rear does not lock first");
        Hold(
            where, Agreement.OnEfficiency(car, given.Adhesion, given.MetresPerSecond, point.MeanEfficiency, out double expected),
            $"efficiency: textbook {expected:0.######}, library {point.MeanEfficiency:0.######}");
    }

    private static void SameRate(BrakingCase given, PlainCar car, double wanted, double? pascals)
    {
        double least = Textbook.At(car, 0, given.MetresPerSecond).BrakingRate;
        double most = Textbook.At(car, car.HighestPressure, given.MetresPerSecond).BrakingRate;
        if (pascals is { } pressure)
        {
            Same(given, "braking rate at the pressure found", wanted, Textbook.At(car, pressure, given.MetresPerSecond).BrakingRate);
        }
        else
        {
            Hold(given, wanted > most * 0.999 || wanted < least * 1.001,
                $"no pressure found for {wanted} g; {least} to {most} g can be had");
        }
    }

    private static (double Share, double Mean, double Worst) ByTextbook(BrakingCase given, Conditions conditions, double knee,
        double slope, SettingOutcome actual)
    {
        (int may, int must, int cases) = (0, 0, 0);
        (double mean, double worst) = (0, 1);
        foreach (LoadCase load in given.Car.LoadCases)
        {
            PlainCar nominal = Textbook.WithRearKnee(PlainCarReader.Read(given.Car, load), knee, slope);
            PlainCar harsh = Textbook.WithRearKnee(PlainCarReader.Read(given.Car, load, 1 - conditions.FrictionSpread.Front,
                1 + conditions.FrictionSpread.Rear), knee, slope);
            foreach (double adhesion in conditions.Adhesions)
            {
                cases++;
                PlainLock? found = Textbook.FirstLock(harsh, adhesion, 0);
                may += found is { RearIsFirst: true } || Agreement.RearMayBeFirst(harsh, adhesion, 0) ? 1 : 0;
                must += found is { RearIsFirst: true } && Agreement.RearMustBeFirst(harsh, adhesion, 0) ? 1 : 0;
                double efficiency = Agreement.EfficiencyOf(nominal, adhesion, 0);
                mean += efficiency / conditions.Adhesions.Count / given.Car.LoadCases.Length;
                worst = Math.Min(worst, efficiency);
            }
        }

        // Where either answer is right, the library's is taken.
        double share = Math.Clamp(actual.RearFirstShare, (double)must / cases, (double)may / cases);
        return (share, mean, worst);
    }
}
